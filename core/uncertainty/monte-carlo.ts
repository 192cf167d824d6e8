import { compute, type Outcome, type RelationInput, whole, within } from '../findings/outcome.ts';
import type { LoadContributor } from './budget.ts';
import { type Distribution, summarise } from './distribution.ts';
import { GENERATOR, type Shape, samplerOf, uniformSource } from './draw.ts';

/** A contributor of the load with the shape of its distribution. */
export interface ShapedContributor extends LoadContributor {
  readonly shape: Shape;
}

/** Largest relative standard uncertainty by shape that keeps every drawn factor clear of zero. */
const MOST: Readonly<Record<Shape, number>> = { normal: 0.2, uniform: 0.5, lognormal: 1 };

export interface SimulationInput {
  /** F0 = T0/(K0·D), N: the load without any error. */
  readonly nominal: number | null;
  readonly contributors: readonly ShapedContributor[];
  /** Whole, 1000 to 1,000,000; 100,000 serve a 95 % interval well. */
  readonly draws: number;
  /** Whole number of 32 bits; the same seed gives the same loads. */
  readonly seed: number;
  /** 1 for a single bolt; N for the mean load of a joint of N bolts. */
  readonly bolts: number;
}

/** Simulated load of a bolt, or mean load of a joint, N unless said. */
export interface Simulation extends Distribution {
  readonly subject: 'single bolt' | 'joint mean';
  /** 95 % interval relative to the nominal load. */
  readonly relativeInterval: readonly [number, number];
}

/**
 * Spread of the bolt load by propagating distributions. Friction stands in the denominator: the load is skewed.
 *
 * Equation: F = F0·Π(1 + εT)/Π(1 + εK); common ε drawn once per trial, per-bolt ε once per bolt.
 * @param input nominal load, shaped contributors, draws, seed, number of bolts
 * @returns moments, 95 % interval and the sorted loads
 * @example simulateLoad({ nominal: 100e3, contributors: [{ name: 'K', of: 'nut factor', relative: 0.1, scope: 'per
 * bolt', basis: '', degreesOfFreedom: null, shape: 'normal' }], draws: 100000, seed: 1, bolts: 1
 * }).value?.relativeInterval // [-0.16, 0.25]
 * @source JCGM 101:2008 (GUM Supplement 1), section 7
 */
export function simulateLoad(input: SimulationInput): Outcome<Simulation> {
  const { seed, bolts } = input;
  const checked = compute(inputsOf(input), (v) => v.nominal);
  if (checked.value === null) return checked;
  const nominal = checked.value;
  const distribution = summarise(drawLoads(input, nominal), seed, GENERATOR);
  const [lower, upper] = distribution.interval;
  return {
    value: {
      ...distribution,
      subject: bolts === 1 ? 'single bolt' : 'joint mean',
      relativeInterval: [lower / nominal - 1, upper / nominal - 1],
    },
    missing: [],
  };
}

function inputsOf({ nominal, contributors, draws, seed, bolts }: SimulationInput) {
  return {
    nominal: within(
      'F0',
      'bolt load without error, N',
      nominal,
      [0.001, 1e9],
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

function drawLoads({ contributors, draws, seed, bolts }: SimulationInput, nominal: number): Float64Array {
  const uniform = uniformSource(seed);
  const common = productOf(contributors, 'common', uniform);
  const perBolt = productOf(contributors, 'per bolt', uniform);
  const loads = new Float64Array(draws);
  for (let trial = 0; trial < draws; trial++) {
    const shared = common();
    let sum = 0;
    for (let bolt = 0; bolt < bolts; bolt++) sum += perBolt();
    loads[trial] = (nominal * shared * sum) / bolts;
  }
  return loads;
}

/** Draws the factor that the contributors of one scope put on the load. */
function productOf(
  contributors: readonly ShapedContributor[],
  scope: LoadContributor['scope'],
  uniform: () => number,
): () => number {
  const parts = contributors
    .filter((one) => one.scope === scope && one.relative !== 0)
    .map(({ relative, shape, of }) => ({
      sample: samplerOf(1, relative ?? 0, shape),
      divides: of === 'nut factor',
    }));
  return () => {
    let value = 1;
    for (const { sample, divides } of parts) {
      const drawn = sample(uniform());
      value = divides ? value / drawn : value * drawn;
    }
    return value;
  };
}
