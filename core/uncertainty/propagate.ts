import { compute, noSolution, type Outcome, positive, whole, within } from '../findings/outcome.ts';
import { type Distribution, summarise } from './distribution.ts';
import { GENERATOR, type Shape, samplerOf, uniformSource } from './draw.ts';

/** An input quantity with its distribution. */
export interface RandomInput {
  readonly name: string;
  readonly mean: number | null;
  /** Standard uncertainty, at least 0. */
  readonly u: number | null;
  readonly shape: Shape;
}

/**
 * Distribution of a result by propagating the distributions of its independent inputs.
 *
 * Equation: y = f(x1 … xn), every x drawn anew in each of M trials.
 * @param inputs input quantities in the order the model takes them
 * @param model the relation on plain numbers
 * @param draws M, whole, 1000 to 1,000,000
 * @param seed whole number of 32 bits; the same seed gives the same distribution
 * @returns distribution; no solution when the model gives a value that is not finite
 * @example propagate([{ name: 'x', mean: 0, u: 1, shape: 'normal' }], ([x = 0]) => x, 100000, 1).value?.deviation // 1.00
 * @source JCGM 101:2008 (GUM Supplement 1), section 7
 */
export function propagate(
  inputs: readonly RandomInput[],
  model: (values: readonly number[]) => number,
  draws: number,
  seed: number,
): Outcome<Distribution> {
  const checked = compute(
    {
      draws: whole('M', 'number of draws', draws, [1000, 1_000_000], 'choose 100,000'),
      seed: whole(
        'seed',
        'seed of the generator',
        seed,
        [-(2 ** 31), 2 ** 31 - 1],
        'choose any whole number',
      ),
      ...Object.fromEntries(inputs.flatMap(checksOf)),
    },
    () => true,
  );
  if (checked.value === null) return checked;
  const samplers = inputs.map(({ mean, u, shape }) => samplerOf(mean ?? 0, u ?? 0, shape));
  const uniform = uniformSource(seed);
  const values = new Float64Array(draws);
  const drawn = new Array<number>(samplers.length).fill(0);
  for (let trial = 0; trial < draws; trial++) {
    for (let index = 0; index < samplers.length; index++) drawn[index] = samplers[index]?.(uniform()) ?? 0;
    const value = model(drawn);
    if (!Number.isFinite(value)) {
      return noSolution(
        'y',
        'result of the model',
        'an input reaches a value the relation is not defined for',
      );
    }
    values[trial] = value;
  }
  const distribution = summarise(values, seed, GENERATOR);
  return Number.isFinite(distribution.deviation)
    ? { value: distribution, missing: [] }
    : noSolution('y', 'result of the model', 'values too large to be squared: check the units');
}

function checksOf({ name, mean, u, shape }: RandomInput, index: number) {
  const range = [-Number.MAX_VALUE, Number.MAX_VALUE] as const;
  return [
    [
      `mean${index}`,
      shape === 'lognormal'
        ? positive('x', `mean of ${name}`, mean, 'measure it')
        : within('x', `mean of ${name}`, mean, range, 'measure it'),
    ],
    [`u${index}`, within('u', `standard uncertainty of ${name}`, u, [0, Number.MAX_VALUE], 'evaluate it')],
  ] as const;
}
