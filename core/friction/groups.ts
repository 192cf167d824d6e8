import type { FrictionGroup, FrictionGrouping, FrictionReading } from '../contract/friction.ts';
import { type Interval, meanInterval, sampleOf } from '../statistics/sample.ts';
import { studentQuantile } from '../uncertainty/student-t.ts';
import { groupWords } from './words.ts';

const CONFIDENCE = 0.9;
/** Tightenings below which nothing is said of the next one. */
const LEAST_EVENTS = 3;
/** Tightenings below which no line is laid through them. */
const LEAST_FOR_TREND = 5;
const YEAR_MS = 365.25 * 86_400_000;

const NAME_OF: Readonly<Record<FrictionGrouping, (reading: FrictionReading) => string>> = {
  lubricant: ({ lubricant }) => lubricant,
  batch: ({ lubricant, batch }) => `${lubricant}, ${batch}`,
  size: ({ size }) => size,
  material: ({ material }) => material,
  'stud uses': ({ studUses }) => (studUses === 1 ? '1 use' : `${studUses} uses`),
};

/**
 * Measured nut factors put together, with the number and the spread behind each. Bolts of one tightening share its
 * torque and batch: intervals rest on the means of tightenings, not on the number of bolts.
 *
 * Equation: K̄ = mean of tightenings' means; its interval ± t·s_b/√n; one bolt of the next tightening
 * ± t·√(s_b²·(1 + 1/n) + s_w²·(1 − 1/m̄)) with s_b between means, s_w within, m̄ bolts of a tightening (harmonic mean).
 * @param readings in any order
 * @param by what they are put together by
 * @returns groups, those with most tightenings first; intervals null below three tightenings
 * @example frictionGroups([], 'lubricant') // []
 * @source one-way random effects, balanced or nearly so: S. R. Searle, G. Casella, C. E. McCulloch, Variance Components (1992), 3.2 (from memory)
 */
export function frictionGroups(readings: readonly FrictionReading[], by: FrictionGrouping): FrictionGroup[] {
  return [...Map.groupBy(readings, NAME_OF[by])]
    .map(([name, own]) => groupOf(name, own))
    .sort((a, b) => b.events - a.events || (a.name < b.name ? -1 : 1));
}

interface EventMean {
  readonly at: number;
  readonly mean: number;
  readonly bolts: number;
  readonly squares: number;
}

function groupOf(name: string, readings: readonly FrictionReading[]): FrictionGroup {
  const factors = readings.map(({ nutFactor }) => nutFactor);
  const events = [...Map.groupBy(readings, ({ eventId }) => eventId).values()].map(eventMean);
  const means = sampleOf(events.map(({ mean }) => mean));
  const spare = events.reduce((sum, { bolts }) => sum + bolts - 1, 0);
  const squares = events.reduce((sum, one) => sum + one.squares, 0);
  const within = spare === 0 ? null : Math.sqrt(squares / spare);
  const enough = means !== null && events.length >= LEAST_EVENTS;
  const ofMean = enough ? meanInterval(means, CONFIDENCE) : null;
  const assumed = sampleOf(readings.flatMap((one) => (one.assumed === null ? [] : [one.assumed])));
  const mean = means?.mean ?? Number.NaN;
  const group = {
    name,
    events: events.length,
    joints: new Set(readings.map(({ jointId }) => jointId)).size,
    bolts: readings.length,
    mean,
    within,
    between: enough ? means.deviation : null,
    lowest: Math.min(...factors),
    highest: Math.max(...factors),
    meanInterval: ofMean,
    nextBolt: enough ? nextBolt(means.mean, means.deviation ?? 0, within ?? 0, events) : null,
    assumed: assumed?.mean ?? null,
    loadShare: assumed === null ? null : shareOf(assumed.mean, mean, ofMean),
    trend: trendOf(events, mean),
  };
  return { ...group, words: groupWords(group) };
}

function eventMean(readings: readonly FrictionReading[]): EventMean {
  const mean = readings.reduce((sum, { nutFactor }) => sum + nutFactor, 0) / readings.length;
  return {
    at: Date.parse(readings[0]?.happenedAt ?? ''),
    mean,
    bolts: readings.length,
    squares: readings.reduce((sum, { nutFactor }) => sum + (nutFactor - mean) ** 2, 0),
  };
}

function nextBolt(
  mean: number,
  between: number,
  within: number,
  events: readonly EventMean[],
): Interval | null {
  const count = events.length;
  const t = studentQuantile((1 + CONFIDENCE) / 2, count - 1).value;
  if (t === null) return null;
  const inverse = events.reduce((sum, { bolts }) => sum + 1 / bolts, 0) / count;
  const variance = between ** 2 * (1 + 1 / count) + within ** 2 * (1 - inverse);
  const half = t * Math.sqrt(variance);
  return { low: Math.max(0, mean - half), high: mean + half };
}

/** A friction that was higher than assumed has left less load. */
function shareOf(assumed: number, mean: number, interval: Interval | null) {
  const low = assumed / (interval?.high ?? mean);
  const high = interval === null || interval.low <= 0 ? assumed / mean : assumed / interval.low;
  return { middle: assumed / mean, low, high };
}

/** Least squares through the means of tightenings over time, as part of the mean a year. */
function trendOf(events: readonly EventMean[], mean: number): FrictionGroup['trend'] {
  const count = events.length;
  if (count < LEAST_FOR_TREND) return null;
  const years = events.map(({ at }) => at / YEAR_MS);
  const middle = years.reduce((sum, x) => sum + x, 0) / count;
  const spread = years.reduce((sum, x) => sum + (x - middle) ** 2, 0);
  if (!(spread > 0)) return null;
  const slope = events.reduce((sum, one, k) => sum + ((years[k] ?? 0) - middle) * one.mean, 0) / spread;
  const left = events.reduce(
    (sum, one, k) => sum + (one.mean - mean - slope * ((years[k] ?? 0) - middle)) ** 2,
    0,
  );
  const t = studentQuantile((1 + CONFIDENCE) / 2, count - 2).value;
  if (t === null) return null;
  const half = t * Math.sqrt(left / (count - 2) / spread);
  return { slope: slope / mean, low: (slope - half) / mean, high: (slope + half) / mean };
}
