import type { Thread } from '../bolting/thread.ts';
import type { Opening } from '../contract/forecast.ts';
import { medianOf } from '../statistics/sample.ts';
import { showQuantity } from '../text/number.ts';
import type { OpeningTraits } from './classes.ts';
import { meaningOf } from './clean.ts';
import { readingOutliers } from './outliers.ts';
import { type RecordedOpening, ratiosOf, yearsBetween } from './recorded.ts';
import { type InstalledFriction, residualBetween } from './residual.ts';

/** What a joint's own data say of its loosening; nulls are not known. */
export interface LooseningFacts {
  readonly clean: number | null;
  /** Half width of "near" on ln R. */
  readonly near: number;
  readonly thread: Thread | null;
  readonly friction: InstalledFriction | null;
  /** F that a torque gives, N; null while thread or friction are not known. */
  readonly loadOf: (torque: number) => number | null;
  /** Largest of the least loads that the joint's data ask for, N per bolt. */
  readonly least: { readonly load: number; readonly name: string } | null;
}

/** What the openings like it say. */
export interface LikeOpenings {
  /** Ratio that 95 of 100 bolts stay under. */
  readonly highRatio: number;
  readonly highBasis: string;
  /** Probability that the middle of an opening stays at or under a ratio; null while too few are known. */
  readonly middleAtMost: ((ratio: number) => number) | null;
}

/** A whole opening stands apart beyond this at either end. */
const APART = 0.005;

/**
 * An opening with what it says: ratios, readings that stand apart, the clean value of this joint, and the load that may
 * have been left.
 *
 * @param recorded opening as recorded
 * @param tag tag of the joint
 * @param traits what the joint is
 * @param facts what the joint's data say of its loosening
 * @param like what the openings like it say
 * @returns opening for the chart and the table beside it
 * @example openingView({ eventId: '', jointId: '', boltSet: 0, happenedAt: '', readings: [], installed: null, openedSince: false, lubricant: null, batch: null, studUses: 0 }, 'J', { service: '', band: 'not known', lubricant: null, years: null }, { clean: null, near: 0.1, thread: null, friction: null, loadOf: () => null, least: null }, { highRatio: 2.5, highBasis: '', middleAtMost: null }).standing // 'not known'
 * @source each part names its own
 */
export function openingView(
  recorded: RecordedOpening,
  tag: string,
  traits: OpeningTraits,
  facts: LooseningFacts,
  like: LikeOpenings,
): Opening {
  const { ratios, why } = ratiosOf(recorded);
  const { readings, installed } = recorded;
  const turned = ratios.map((ratio, index) => (readings[index]?.outcome === 'turned' ? ratio : null));
  const known = turned.filter((ratio) => ratio !== null);
  const median = medianOf(known);
  const outliers = new Map(readingOutliers(turned).map(({ index, reason }) => [index, reason]));
  const torque = medianOf(
    readings.flatMap((one) =>
      one.outcome === 'turned' && one.torque !== null && one.torque > 0 ? [one.torque] : [],
    ),
  );
  const residual = residualOf(recorded, torque, facts, like);
  return {
    eventId: recorded.eventId,
    jointId: recorded.jointId,
    tag,
    happenedAt: recorded.happenedAt,
    installed:
      installed === null || installed.torque === null ? null : { ...installed, torque: installed.torque },
    whyNoRatio: why,
    years: installed === null ? null : yearsBetween(installed.happenedAt, recorded.happenedAt),
    service: traits.service,
    band: traits.band,
    lubricant: recorded.lubricant ?? traits.lubricant,
    batch: recorded.batch,
    studUses: recorded.studUses,
    readings: readings.map(({ bolt, outcome, torque: read }, index) => ({
      bolt,
      outcome,
      torque: read,
      ratio: ratios[index] ?? null,
      outlier:
        outliers.get(index) ??
        (outcome === 'turned'
          ? null
          : outcome === 'cut'
            ? 'cut: its breakout torque is not known'
            : 'would not turn: what was read is the least it takes'),
    })),
    median,
    lowest: known.length === 0 ? null : Math.min(...known),
    highest: known.length === 0 ? null : Math.max(...known),
    turned: readings.filter(({ outcome }) => outcome === 'turned').length,
    notTurned: readings.filter(({ outcome }) => outcome !== 'turned').length,
    cleanRatio: facts.clean,
    ...(median === null
      ? { standing: 'not known' as const, meaning: why ?? 'No stud turned: there is no ratio.' }
      : meaningOf(median, facts.clean, facts.near)),
    residual,
    ...againstLeast(residual, facts.least),
    outlier: apart(median, like.middleAtMost),
  };
}

function residualOf(
  { installed }: RecordedOpening,
  torque: number | null,
  { thread, friction, near, loadOf }: LooseningFacts,
  { highRatio, highBasis }: LikeOpenings,
): Opening['residual'] {
  const on = installed?.torque ?? null;
  if (thread === null || friction === null || torque === null || on === null || on <= 0) return null;
  const between = residualBetween(torque, thread, friction, near, highRatio).value;
  const load = loadOf(on);
  if (between === null || load === null) return null;
  const [least, most] = between.friction;
  return {
    low: between.low,
    high: between.high,
    installed: load,
    basis: `One torque can’t tell friction from load: friction is taken between ${least.toFixed(2)} and ${most.toFixed(2)} times what it was when installed, the upper from ${highBasis}.`,
  };
}

function againstLeast(
  residual: Opening['residual'],
  least: LooseningFacts['least'],
): Pick<Opening, 'belowLeast' | 'belowLeastBasis'> {
  if (least === null) {
    return { belowLeast: 'not known', belowLeastBasis: 'No least load is known for this joint.' };
  }
  const asked = `${least.name}: ${showQuantity(least.load, 'kN')} per bolt`;
  if (residual === null) {
    return { belowLeast: 'not known', belowLeastBasis: `${asked}; the load that was left is not known.` };
  }
  if (residual.high < least.load)
    return { belowLeast: 'yes', belowLeastBasis: `${asked}; the whole interval is below it.` };
  if (residual.low < least.load)
    return { belowLeast: 'possible', belowLeastBasis: `${asked}; it lies within the interval.` };
  return { belowLeast: 'no', belowLeastBasis: `${asked}; the whole interval is above it.` };
}

function apart(median: number | null, atMost: LikeOpenings['middleAtMost']): string | null {
  if (median === null || atMost === null) return null;
  const p = atMost(median);
  if (p > 1 - APART) return 'The whole opening took more than 99.5 of 100 of the like do.';
  return p < APART ? 'The whole opening took less than 99.5 of 100 of the like do.' : null;
}
