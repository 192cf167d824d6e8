import type { Spread, Sufficiency } from '../contract/forecast.ts';
import type { OpeningTraits } from './classes.ts';
import { type Expected, expectedOpening } from './model.ts';
import type { OpeningClass, PlantOpenings } from './plant.ts';
import { type About, expectedProbability, expectedQuantile } from './worst.ts';

/** Breakout of a joint's next opening, as ratios to the installed torque. */
export interface RatioForecast {
  readonly oneBolt: Spread;
  readonly worstBolt: Spread;
  readonly middle: Spread;
  /** Chance that the worst bolt takes more than a ratio. */
  readonly worstAbove: (ratio: number) => number;
  readonly oneAtMost: (ratio: number) => number;
  readonly worstAtMost: (ratio: number) => number;
}

/** What a forecast rests on. */
export interface ForecastEvidence {
  readonly sufficiency: Sufficiency;
  readonly ownOpenings: number;
  readonly ownReadings: number;
  readonly classJoints: number;
  readonly classOpenings: number;
  readonly classReadings: number;
  readonly effective: number;
}

/** 5 % and 95 %. */
const LOW = 0.05;
const HIGH = 0.95;

/**
 * Breakout ratios of the next opening of a joint with so many bolts.
 *
 * Equation: quantiles of the posterior predictive distribution of ln R, and of the largest of N.
 * @param expected what is expected of the next opening
 * @param bolts N, whole, at least 1
 * @returns 5, 50 and 95 % points for one bolt, the worst bolt and the middle, and the chances behind them
 * @example ratioForecast({ shape: 500, parts: [{ weight: 1, centre: 0, level: 1, scale: 500 }] }, 1).oneBolt.median // 1
 * @source see `expectedProbability`
 */
export function ratioForecast(expected: Expected, bolts: number): RatioForecast {
  const spread = (about: About): readonly [Spread, (ratio: number) => number] => {
    const probability = expectedProbability(expected, about);
    const at = (p: number) => Math.exp(expectedQuantile(probability, expected, p));
    const atMost = (ratio: number) => (ratio > 0 ? clamp(probability(Math.log(ratio))) : 0);
    return [{ low: at(LOW), median: at(0.5), high: at(HIGH) }, atMost];
  };
  const [oneBolt, oneAtMost] = spread({ kind: 'one bolt' });
  const [worstBolt, worstAtMost] = spread({ kind: 'worst', bolts });
  const [middle] = spread({ kind: 'middle' });
  return {
    oneBolt,
    worstBolt,
    middle,
    oneAtMost,
    worstAtMost,
    worstAbove: (ratio) => 1 - worstAtMost(ratio),
  };
}

const clamp = (p: number) => Math.min(1, Math.max(0, p));

/** The part of a forecast that a list of many joints shows. */
export interface ShortForecast {
  readonly median: number;
  readonly worst: number;
  readonly worstAbove: (ratio: number) => number;
}

/**
 * Middle of one bolt and 95 % of the worst, for lists of many joints.
 *
 * Equation: as of `ratioForecast`.
 * @param expected what is expected of the next opening
 * @param bolts N, whole, at least 1
 * @returns ratios and the chance that the worst bolt takes more than one
 * @example shortForecast({ shape: 500, parts: [{ weight: 1, centre: 0, level: 1, scale: 500 }] }, 1).median // 1
 * @source as of `ratioForecast`
 */
export function shortForecast(expected: Expected, bolts: number): ShortForecast {
  const one = expectedProbability(expected, { kind: 'one bolt' });
  const worst = expectedProbability(expected, { kind: 'worst', bolts });
  return {
    median: Math.exp(expectedQuantile(one, expected, 0.5)),
    worst: Math.exp(expectedQuantile(worst, expected, HIGH)),
    worstAbove: (ratio) => (ratio > 0 ? 1 - clamp(worst(Math.log(ratio))) : 1),
  };
}

/** Independent readings below which a class says too little, and above which it says enough; ten is this program's choice. */
const LEAST_EFFECTIVE = 3;
const ENOUGH_EFFECTIVE = 10;
const LEAST_JOINTS = 2;

/**
 * What is expected of the next opening of a joint, with what that rests on.
 *
 * @param plant openings of the plant
 * @param joint joint, by the name its openings carry
 * @param traits what the joint is, and for how long it will have been in service
 * @returns class, expectation and evidence; without an opening the expectation is common practice
 * @example jointExpectation(plantOpenings([]), 'J', { service: '', band: 'not known', lubricant: null, years: null }).evidence.sufficiency // 'too few to say'
 * @source see `fitClass` and `expectedOpening`
 */
export function jointExpectation(
  plant: PlantOpenings,
  joint: string,
  traits: OpeningTraits,
): { readonly of: OpeningClass; readonly expected: Expected; readonly evidence: ForecastEvidence } {
  const of = plant.classOf(traits);
  const own = of.byJoint.get(joint) ?? [];
  const { effective } = of.scatter;
  const { jointCount, openingCount, readingCount } = of.fit;
  return {
    of,
    expected: expectedOpening(of.fit, own),
    evidence: {
      sufficiency:
        effective < LEAST_EFFECTIVE || (jointCount < LEAST_JOINTS && own.length < LEAST_JOINTS)
          ? 'too few to say'
          : effective < ENOUGH_EFFECTIVE
            ? 'few'
            : 'enough',
      ownOpenings: own.length,
      ownReadings: own.reduce((sum, { count }) => sum + count, 0),
      classJoints: jointCount,
      classOpenings: openingCount,
      classReadings: readingCount,
      effective,
    },
  };
}
