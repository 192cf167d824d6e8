import type { OwnCoverage, ServiceTrend } from '../contract/own-record.ts';
import { driftOf } from './drift.ts';
import { jointExpectation } from './forecast.ts';
import { type PlantOpening, plantOpenings } from './plant.ts';
import { expectedProbability, expectedQuantile } from './worst.ts';

/** An opening with its moment. */
export interface DatedOpening extends PlantOpening {
  readonly at: string;
}

/** Pieces a history is cut into: each is forecast from all before it. */
const PIECES = 12;
/** Openings with a ratio before which nothing is forecast, and forecasts below which nothing is said of them. */
const LEAST_BEFORE = 10;
const LEAST_FORECASTS = 20;
const LOW = 0.05;
const HIGH = 0.95;

/**
 * How forecasts of this plant would have come out: each opening forecast from earlier ones alone, in pieces of the
 * history, and the hardest stud that turned held against its 90 % interval.
 *
 * Equation: share = inside/(inside + below + above); width = upper end/lower end, in the middle.
 * @param openings of the plant in order of time
 * @returns counts, share and width; the share is null below twenty forecasts
 * @example ownCoverage([]).share // null
 * @source prequential check: A. P. Dawid, J. R. Statist. Soc. A 147 (1984) 278 (from memory)
 */
export function ownCoverage(openings: readonly DatedOpening[]): OwnCoverage {
  const known = openings.filter(({ ratios }) => ratios.length > 0);
  const size = Math.max(1, Math.ceil((known.length - LEAST_BEFORE) / PIECES));
  let below = 0;
  let above = 0;
  const widths: number[] = [];
  for (let from = LEAST_BEFORE; from < known.length; from += size) {
    const plant = plantOpenings(known.slice(0, from));
    for (const { joint, traits, ratios } of known.slice(from, from + size)) {
      const { expected } = jointExpectation(plant, joint, traits);
      const probability = expectedProbability(expected, { kind: 'worst', bolts: ratios.length });
      const low = expectedQuantile(probability, expected, LOW);
      const high = expectedQuantile(probability, expected, HIGH);
      const worst = Math.log(Math.max(...ratios));
      if (worst < low) below += 1;
      if (worst > high) above += 1;
      widths.push(Math.exp(high - low));
    }
  }
  const count = widths.length;
  const inside = count - below - above;
  const share = count < LEAST_FORECASTS ? null : inside / count;
  const width = middle(widths);
  return {
    openings: count,
    inside,
    below,
    above,
    share,
    width,
    finding: coverageWords(count, inside, above, share),
  };
}

function coverageWords(count: number, inside: number, above: number, share: number | null): string {
  if (share === null) {
    return `Too few to say how forecasts of this plant come out: ${count} of at least ${LEAST_FORECASTS} openings could be forecast from earlier ones.`;
  }
  const off = Math.sqrt((HIGH - LOW) * (1 - HIGH + LOW) * count);
  const apart = inside - (HIGH - LOW) * count;
  const verdict =
    Math.abs(apart) <= 2 * off
      ? 'that is what 90 % intervals should do'
      : apart < 0
        ? 'fewer than 90 % intervals should hold: take the upper ends as too low'
        : 'more than 90 % intervals should hold: the ends are wider than they need to be';
  return `Of ${count} openings forecast from earlier ones alone, ${inside} lay inside their 90 % interval and ${above} above it; ${verdict}.`;
}

/**
 * Whether breakout of a service moves over the years: the middle of each of its openings in order of time.
 *
 * Equation: see `driftOf`, on ln of the median ratio of each opening.
 * @param openings of the plant in order of time
 * @returns one per service, those that move first; a service with fewer than eight openings is too few to say
 * @example serviceTrends([]) // []
 * @source as of `driftOf`
 */
export function serviceTrends(openings: readonly DatedOpening[]): ServiceTrend[] {
  const known = openings.filter(({ ratios }) => ratios.length > 0);
  const services = Map.groupBy(known, ({ traits }) => traits.service);
  const order = ['rising', 'falling', 'steady', 'too few to say'];
  return [...services]
    .map(([service, own]) => trendOf(service, own))
    .sort(
      (a, b) =>
        order.indexOf(a.state) - order.indexOf(b.state) ||
        b.openings - a.openings ||
        (a.service < b.service ? -1 : 1),
    );
}

function trendOf(service: string, own: readonly DatedOpening[]): ServiceTrend {
  const middles = own.map(({ ratios }) => middle(ratios) ?? Number.NaN);
  const { state, since, seenAt } = driftOf(middles.map(Math.log));
  const moved = since ?? middles.length;
  const before = middle(middles.slice(0, moved));
  const after = since === null ? null : middle(middles.slice(moved));
  return {
    service,
    openings: own.length,
    joints: new Set(own.map(({ joint }) => joint)).size,
    state,
    since: since === null ? null : (own[since]?.at ?? null),
    seenAt: seenAt === null ? null : (own[seenAt]?.at ?? null),
    before,
    after,
    words: trendWords(state, own.length, before, after),
  };
}

function trendWords(
  state: ServiceTrend['state'],
  openings: number,
  before: number | null,
  after: number | null,
): string {
  if (state === 'too few to say') return `Too few to say: ${openings} of at least 8 openings.`;
  if (before === null || after === null) return 'No move is seen among its openings.';
  const to = `from ${before.toFixed(2)} to ${after.toFixed(2)} × the installed torque in the middle`;
  return state === 'rising'
    ? `Joints of this service have become harder to open, ${to}: look for ageing lubricant, corrosion or heat.`
    : `Joints of this service have become easier to open, ${to}: look for lost load or another lubricant.`;
}

function middle(values: readonly number[]): number | null {
  const rising = values.toSorted((a, b) => a - b);
  const low = rising[Math.floor((rising.length - 1) / 2)];
  const high = rising[Math.floor(rising.length / 2)];
  return low === undefined || high === undefined ? null : (low + high) / 2;
}
