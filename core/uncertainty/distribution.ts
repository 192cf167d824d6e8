import { compute, type Outcome, within } from '../findings/outcome.ts';

/** A simulated quantity in its own unit. */
export interface Distribution {
  readonly draws: number;
  readonly seed: number;
  readonly generator: string;
  readonly mean: number;
  readonly median: number;
  readonly deviation: number;
  /** Third standardised moment; positive when the tail reaches up. */
  readonly skewness: number;
  /** 95 % interval, 2.5 % left out at each end. */
  readonly interval: readonly [number, number];
  /** Values in rising order, for probabilities. */
  readonly sorted: Float64Array;
}

/**
 * Moments and 95 % interval of simulated values.
 *
 * Equation: s² = Σ(x − x̄)²/(M − 1); skewness = (Σ(x − x̄)³/M)/(Σ(x − x̄)²/M)^1.5.
 * @param values at least two finite values; they are sorted in place
 * @param seed seed they were drawn with, whole
 * @param generator what drew them
 * @returns summary
 * @example summarise(Float64Array.of(1, 2, 3), 1, 'by hand').mean // 2
 * @source JCGM 101:2008 (GUM Supplement 1), 7.6 and 7.7
 */
export function summarise(values: Float64Array, seed: number, generator: string): Distribution {
  const sorted = values.sort();
  return {
    draws: sorted.length,
    seed,
    generator,
    ...moments(sorted),
    median: quantileOf(sorted, 0.5),
    interval: [quantileOf(sorted, 0.025), quantileOf(sorted, 0.975)],
    sorted,
  };
}

function moments(values: Float64Array): Pick<Distribution, 'mean' | 'deviation' | 'skewness'> {
  const n = values.length;
  let sum = 0;
  for (const value of values) sum += value;
  const mean = sum / n;
  let squares = 0;
  for (const value of values) squares += (value - mean) ** 2;
  const deviation = Math.sqrt(squares / (n - 1));
  // Equal values differ from their mean by rounding alone; that has no skewness.
  if (deviation <= Math.abs(mean) * 1e-12) return { mean, deviation, skewness: 0 };
  const spread = Math.sqrt(squares / n);
  let cubes = 0;
  for (const value of values) cubes += ((value - mean) / spread) ** 3;
  return { mean, deviation, skewness: cubes / n };
}

/** Value that a share `p` of rising `values` lies at or below, between neighbours on a straight line. */
function quantileOf(values: Float64Array, p: number): number {
  const position = p * (values.length - 1);
  const below = Math.floor(position);
  const lower = values[below] ?? 0;
  const upper = values[Math.min(below + 1, values.length - 1)] ?? lower;
  return lower + (position - below) * (upper - lower);
}

/** Share of simulated values on the good side of a limit. */
export interface SimulatedShare {
  readonly probability: number;
  /** Standard uncertainty of the probability from the number of draws. */
  readonly uncertainty: number;
}

/**
 * Share of simulated values on the good side of a limit.
 *
 * Equation: P = number of values at or on the good side/M; u(P)² = P·(1 − P)/M.
 * @param distribution simulated values
 * @param limit in their unit, finite
 * @param side which side passes; a value at the limit passes
 * @returns share with its uncertainty
 * @example shareKeeping({ sorted: Float64Array.of(1, 2, 3, 4) }, 3, 'at most').value?.probability // 0.75
 * @source JCGM 101:2008 (GUM Supplement 1), 7.7
 */
export function shareKeeping(
  distribution: Pick<Distribution, 'sorted'>,
  limit: number | null,
  side: 'at least' | 'at most',
): Outcome<SimulatedShare> {
  const range = [-Number.MAX_VALUE, Number.MAX_VALUE] as const;
  return compute({ limit: within('L', 'limit', limit, range, 'enter the limit') }, (v) => {
    const n = distribution.sorted.length;
    const below = countBelow(distribution.sorted, v.limit, side === 'at most');
    const probability = side === 'at most' ? below / n : 1 - below / n;
    return { probability, uncertainty: Math.sqrt((probability * (1 - probability)) / n) };
  });
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
