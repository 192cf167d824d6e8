import { jointExpectation } from '../../core/breakout/forecast.ts';
import type { Expected } from '../../core/breakout/model.ts';
import { plantOpenings } from '../../core/breakout/plant.ts';
import { COMMON_PRIOR } from '../../core/breakout/prior.ts';
import { type About, expectedProbability, expectedQuantile } from '../../core/breakout/worst.ts';
import { type NextOpening, randomOf, simulatePlant } from './plants.ts';

interface Hits {
  readonly openings: number;
  readonly below: number;
  readonly above: number;
}

/** How forecasts of many invented plants came out. */
export interface Coverage {
  readonly plants: number;
  /** Next openings by what the worst bolt took against its 90 % interval. */
  readonly worst: Hits;
  /** The same for every single bolt. */
  readonly bolts: Hits;
  /** The worst bolt again, by how many openings of its own the joint had. */
  readonly byOwn: Readonly<Record<string, Hits>>;
  /** Mean width of the 90 % interval of the worst bolt on ln R: as forecast, with the truth of the service known, and without any history. */
  readonly width: { readonly forecast: number; readonly knowing: number; readonly nothing: number };
}

/** Part that lay inside. */
export const inside = ({ openings, below, above }: Hits) => 1 - (below + above) / openings;

const NONE: Hits = { openings: 0, below: 0, above: 0 };
const add = (hits: Hits, value: number, [low, high]: readonly [number, number]): Hits => ({
  openings: hits.openings + 1,
  below: hits.below + (value < low ? 1 : 0),
  above: hits.above + (value > high ? 1 : 0),
});

function interval(expected: Expected, about: About): readonly [number, number] {
  const probability = expectedProbability(expected, about);
  return [expectedQuantile(probability, expected, 0.05), expectedQuantile(probability, expected, 0.95)];
}

const widthOf = ([low, high]: readonly [number, number]) => high - low;

/**
 * Forecasts the next opening of joints of each plant from what its register knows, and holds what then happened against
 * it. `most` joints of each plant are looked at, drawn by lot.
 */
export function coverageOf(plants: number, firstSeed: number, most: number): Coverage {
  let worst = NONE;
  let bolts = NONE;
  const byOwn: Record<string, Hits> = {};
  const width = { forecast: 0, knowing: 0, nothing: 0 };
  for (let seed = firstSeed; seed < firstSeed + plants; seed++) {
    const { past, next } = simulatePlant(seed);
    const known = plantOpenings(past);
    for (const opening of drawn(next, most, seed)) {
      const logs = opening.ratios.map(Math.log);
      const { expected, evidence } = jointExpectation(known, opening.joint, opening.traits);
      const about = { kind: 'worst', bolts: opening.bolts } as const;
      const ends = interval(expected, about);
      const most = Math.max(...logs);
      worst = add(worst, most, ends);
      const own = evidence.ownOpenings === 0 ? 'none' : evidence.ownOpenings === 1 ? 'one' : 'two or more';
      byOwn[own] = add(byOwn[own] ?? NONE, most, ends);
      const single = interval(expected, { kind: 'one bolt' });
      for (const log of logs) bolts = add(bolts, log, single);
      width.forecast += widthOf(ends);
      width.knowing += widthOf(interval(knowing(opening), about));
      width.nothing += widthOf(interval(withoutHistory(), about));
    }
  }
  return {
    plants,
    worst,
    bolts,
    byOwn,
    width: {
      forecast: width.forecast / worst.openings,
      knowing: width.knowing / worst.openings,
      nothing: width.nothing / worst.openings,
    },
  };
}

function drawn(next: readonly NextOpening[], most: number, seed: number): NextOpening[] {
  const random = randomOf(seed + LOT);
  const left = [...next];
  while (left.length > most) left.splice(random.whole(0, left.length - 1), 1);
  return left;
}

const LOT = 100_000;
/** So many readings leave no doubt about σ². */
const CERTAIN = 1e6;

/** Expectation of somebody who knows the truth of the service, but not of the joint. */
function knowing({ truth: { mean, joints, openings, bolts } }: NextOpening): Expected {
  const level = (joints ** 2 + openings ** 2) / bolts ** 2;
  return { shape: CERTAIN, parts: [{ weight: 1, centre: mean, level, scale: CERTAIN * bolts ** 2 }] };
}

const NOTHING_KNOWN = plantOpenings([]).classOf({
  service: '',
  band: 'not known',
  lubricant: null,
  years: null,
});

function withoutHistory(): Expected {
  const { fit } = NOTHING_KNOWN;
  const [first] = fit.parts;
  if (first === undefined) throw new Error('the prior has no part');
  // One middling part is enough for a width.
  return {
    shape: COMMON_PRIOR.shape,
    parts: [{ weight: 1, centre: first.mean, level: 2, scale: first.scale }],
  };
}
