import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { compute, type Outcome, positive, type RelationInput, whole, within } from '../findings/outcome.ts';
import type { LoadContributor } from './budget.ts';
import { normalQuantile } from './normal.ts';

/**
 * Shape of one contributor. A lognormal one never turns negative; a uniform one has hard ends at ±√3·u; a normal one is
 * cut at ±4.5·u (seven in a million), so that no drawn nut factor comes near zero.
 */
export type Shape = 'normal' | 'lognormal' | 'uniform';

export interface ShapedContributor extends LoadContributor {
  readonly shape: Shape;
}

/** Tail left out at each end of a normal contributor: Φ(−4.5). */
const CUT = 3.4e-6;

/** Largest relative standard uncertainty by shape that keeps every drawn factor clear of zero. */
const MOST: Readonly<Record<Shape, number>> = { normal: 0.2, uniform: 0.5, lognormal: 1 };

export interface SimulationInput {
  /** F0 = T0/(K0·D), N: the load without any error. */
  readonly nominal: number | null;
  readonly contributors: readonly ShapedContributor[];
  /** Whole, 1000 to 1,000,000; 100,000 serve a 95 % interval well. */
  readonly draws: number;
  /** Any whole number; the same seed gives the same loads. */
  readonly seed: number;
  /** 1 for a single bolt; N for the mean load of a joint of N bolts. */
  readonly bolts: number;
}

/** Simulated load of a bolt, or mean load of a joint, N unless said. */
export interface Simulation {
  readonly subject: 'single bolt' | 'joint mean';
  readonly draws: number;
  readonly seed: number;
  readonly generator: 'xoroshiro128+, inverse transform';
  readonly mean: number;
  readonly median: number;
  readonly deviation: number;
  /** Third standardised moment; positive when the tail reaches up. */
  readonly skewness: number;
  /** 95 % interval, 2.5 % left out at each end. */
  readonly interval: readonly [number, number];
  /** The same relative to the nominal load. */
  readonly relativeInterval: readonly [number, number];
  /** Loads in rising order, for probabilities. */
  readonly sorted: Float64Array;
}

/**
 * Spread of the bolt load by propagating distributions.
 *
 * Equation: F = F0·Π(1 + εT)/Π(1 + εK); common ε drawn once per trial, per-bolt ε once per bolt.
 * @param input nominal load, shaped contributors, draws, seed, number of bolts
 * @returns moments, 95 % interval and the sorted loads
 * @example simulateLoad({ nominal: 100e3, contributors, draws: 100000, seed: 1, bolts: 1 }).value?.relativeInterval // [-0.16, 0.25]
 * @source JCGM 101:2008 (GUM Supplement 1), section 7
 */
export function simulateLoad(input: SimulationInput): Outcome<Simulation> {
  const { contributors, draws, seed, bolts } = input;
  const checked = compute(inputsOf(input), (v) => v.nominal);
  if (checked.value === null) return checked;
  const nominal = checked.value;
  const loads = drawLoads(nominal, contributors, draws, seed, bolts).sort();
  const { mean, deviation, skewness } = moments(loads);
  const interval = [quantileOf(loads, 0.025), quantileOf(loads, 0.975)] as const;
  return {
    value: {
      subject: bolts === 1 ? 'single bolt' : 'joint mean',
      draws,
      seed,
      generator: 'xoroshiro128+, inverse transform',
      mean,
      median: quantileOf(loads, 0.5),
      deviation,
      skewness,
      interval,
      relativeInterval: [interval[0] / nominal - 1, interval[1] / nominal - 1],
      sorted: loads,
    },
    missing: [],
  };
}

function inputsOf({ nominal, contributors, draws, seed, bolts }: SimulationInput) {
  return {
    nominal: positive(
      'F0',
      'bolt load without error, N',
      nominal,
      'choose a target or a torque and friction',
    ),
    draws: whole('M', 'number of draws', draws, [1000, 1_000_000], 'choose 100,000'),
    seed: whole('seed', 'seed of the generator', seed, [-(2 ** 31), 2 ** 31 - 1], 'choose any whole number'),
    bolts: whole('N', 'number of bolts', bolts, [1, 400], 'count the bolts'),
    ...Object.fromEntries(contributors.map((one, index) => [`u${index}`, relativeInput(one)])),
  };
}

function relativeInput({ name, relative, shape, basis }: ShapedContributor): RelationInput {
  return within(
    'u/x',
    `relative standard uncertainty of ${name}, ${shape}`,
    relative,
    [0, MOST[shape]],
    `evaluate it: ${basis}; above ${MOST[shape]} take the lognormal shape`,
  );
}

/** Turns a uniform number on (0, 1) into the factor a contributor multiplies or divides the load with. */
function factorOf({ relative, shape }: ShapedContributor): (uniform: number) => number {
  const u = relative ?? 0;
  if (shape === 'uniform') return (uniform) => 1 + u * Math.sqrt(3) * (2 * uniform - 1);
  if (shape === 'normal') return (uniform) => 1 + u * normalQuantile(CUT + (1 - 2 * CUT) * uniform);
  // Mean 1 and standard deviation u.
  const variance = Math.log1p(u * u);
  const spread = Math.sqrt(variance);
  return (uniform) => Math.exp(spread * normalQuantile(uniform) - variance / 2);
}

function drawLoads(
  nominal: number,
  contributors: readonly ShapedContributor[],
  draws: number,
  seed: number,
  bolts: number,
): Float64Array {
  const generator = xoroshiro128plus(seed);
  // Zero would be an infinite quantile; the smallest step above it stands for it.
  const uniform = () => uniformFloat64(generator) || 2 ** -53;
  const product = (scope: LoadContributor['scope']) => {
    const parts = contributors
      .filter((one) => one.scope === scope && one.relative !== 0)
      .map((one) => ({ factor: factorOf(one), divides: one.of === 'nut factor' }));
    return () => {
      let value = 1;
      for (const { factor, divides } of parts) {
        const drawn = factor(uniform());
        value = divides ? value / drawn : value * drawn;
      }
      return value;
    };
  };
  const common = product('common');
  const perBolt = product('per bolt');
  const loads = new Float64Array(draws);
  for (let trial = 0; trial < draws; trial++) {
    const shared = common();
    let sum = 0;
    for (let bolt = 0; bolt < bolts; bolt++) sum += perBolt();
    loads[trial] = (nominal * shared * sum) / bolts;
  }
  return loads;
}

function moments(values: Float64Array): Pick<Simulation, 'mean' | 'deviation' | 'skewness'> {
  const n = values.length;
  let sum = 0;
  for (const value of values) sum += value;
  const mean = sum / n;
  let second = 0;
  let third = 0;
  for (const value of values) {
    const distance = value - mean;
    second += distance * distance;
    third += distance * distance * distance;
  }
  const deviation = Math.sqrt(second / (n - 1));
  const rounding = Math.abs(mean) * 1e-12;
  return { mean, deviation, skewness: deviation <= rounding ? 0 : third / n / (second / n) ** 1.5 };
}

/** Value that a share `p` of rising `values` lies at or below, between neighbours on a straight line. */
function quantileOf(values: Float64Array, p: number): number {
  const position = p * (values.length - 1);
  const below = Math.floor(position);
  const lower = values[below] ?? 0;
  const upper = values[Math.min(below + 1, values.length - 1)] ?? lower;
  return lower + (position - below) * (upper - lower);
}

/**
 * Share of simulated loads on one side of a limit.
 *
 * Equation: P = number of loads at or on the good side of the limit/M.
 * @param simulation result of `simulateLoad`
 * @param limit N, at least 0
 * @param side which side passes
 * @returns probability and its standard uncertainty from the number of draws
 * @example simulatedProbability(simulation, 120e3, 'at most').value?.probability
 * @source JCGM 101:2008 (GUM Supplement 1), section 7.7
 */
export function simulatedProbability(
  simulation: Pick<Simulation, 'sorted' | 'subject'>,
  limit: number | null,
  side: 'at least' | 'at most',
): Outcome<{
  readonly subject: Simulation['subject'];
  readonly probability: number;
  readonly uncertainty: number;
}> {
  return compute(
    { limit: within('Flimit', 'limit of the load, N', limit, [0, 1e9], 'enter the limit') },
    (v) => {
      const n = simulation.sorted.length;
      const below = countBelow(simulation.sorted, v.limit, side === 'at most');
      const probability = side === 'at most' ? below / n : 1 - below / n;
      return {
        subject: simulation.subject,
        probability,
        uncertainty: Math.sqrt((probability * (1 - probability)) / n),
      };
    },
  );
}

/** Number of rising values below the limit, those at it counted when `inclusive`. */
function countBelow(values: Float64Array, limit: number, inclusive: boolean): number {
  let low = 0;
  let high = values.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const value = values[middle] ?? 0;
    if (value < limit || (inclusive && value === limit)) low = middle + 1;
    else high = middle;
  }
  return low;
}
