import { studentQuantile } from '../uncertainty/student-t.ts';
import { chiSquareQuantile } from './chi-square.ts';
import { twoSidedTolerance } from './tolerance.ts';

export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** A sample's mean and its standard deviation, which one reading does not have. */
export interface Sample {
  readonly count: number;
  readonly mean: number;
  readonly deviation: number | null;
}

/**
 * Mean and standard deviation of readings.
 *
 * Equation: x̄ = Σx/n; s² = Σ(x − x̄)²/(n − 1).
 * @param readings finite numbers of one unit
 * @returns count, mean and deviation; null without a reading, a deviation of null with one
 * @example sampleOf([30.3, 32.5, 32.5, 32.9, 32.9, 33.8, 34.3, 34.7, 37.4, 40.5])?.deviation // 2.881
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.1 and 1.3.5.6
 */
export function sampleOf(readings: readonly number[]): Sample | null {
  const count = readings.length;
  if (count === 0) return null;
  const mean = readings.reduce((sum, x) => sum + x, 0) / count;
  if (count === 1) return { count, mean, deviation: null };
  const squares = readings.reduce((sum, x) => sum + (x - mean) ** 2, 0);
  return { count, mean, deviation: Math.sqrt(squares / (count - 1)) };
}

/**
 * Interval that holds the mean of all with a confidence.
 *
 * Equation: x̄ ± t·s/√n with t at (1 + γ)/2 and n − 1 degrees of freedom.
 * @param sample readings as they are summed up
 * @param confidence γ, 1, above 0 and below 1
 * @returns ends in the readings' unit; null below two readings
 * @example meanInterval({ count: 9, mean: 1.0056, deviation: 0.0246 }, 0.99)?.low // 0.9781
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.2
 */
export function meanInterval(sample: Sample, confidence: number): Interval | null {
  return about(sample, confidence, 1 / sample.count);
}

/**
 * Interval that holds one further reading with a probability.
 *
 * Equation: x̄ ± t·s·√(1 + 1/n) with t at (1 + γ)/2 and n − 1 degrees of freedom.
 * @param sample readings as they are summed up
 * @param probability γ, 1, above 0 and below 1
 * @returns ends in the readings' unit; null below two readings
 * @example predictionInterval({ count: 9, mean: 1.0056, deviation: 0.0246 }, 0.99)?.high // 1.0926
 * @source W. Q. Meeker, G. J. Hahn, L. A. Escobar, Statistical Intervals, 2nd ed. (2017), 4.7 (from memory)
 */
export function predictionInterval(sample: Sample, probability: number): Interval | null {
  return about(sample, probability, 1 + 1 / sample.count);
}

function about({ count, mean, deviation }: Sample, confidence: number, part: number): Interval | null {
  const t = studentQuantile((1 + confidence) / 2, count - 1).value;
  if (t === null || deviation === null) return null;
  const half = t * deviation * Math.sqrt(part);
  return { low: mean - half, high: mean + half };
}

/**
 * Interval that holds the standard deviation of all with a confidence.
 *
 * Equation: s·√(ν/χ²) with χ² at (1 ± γ)/2 and ν = n − 1 degrees of freedom.
 * @param sample readings as they are summed up
 * @param confidence γ, 1, above 0 and below 1
 * @returns ends in the readings' unit; null below two readings and where all are equal
 * @example deviationInterval({ count: 10, mean: 34.18, deviation: 2.88128 }, 0.95)?.high // 5.260
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.3.1
 */
export function deviationInterval({ count, deviation }: Sample, confidence: number): Interval | null {
  const low = chiSquareQuantile((1 - confidence) / 2, count - 1).value;
  const high = chiSquareQuantile((1 + confidence) / 2, count - 1).value;
  if (low === null || high === null || deviation === null || deviation === 0) return null;
  return { low: deviation * Math.sqrt((count - 1) / high), high: deviation * Math.sqrt((count - 1) / low) };
}

/**
 * Interval that holds a part of all readings with a confidence.
 *
 * Equation: x̄ ± k·s with the exact two-sided factor.
 * @param sample readings as they are summed up
 * @param coverage part of all readings inside, 1, above 0 and below 1
 * @param confidence 1, above 0 and below 1
 * @returns ends in the readings' unit; null below two readings
 * @example toleranceInterval({ count: 10, mean: 34.18, deviation: 2.88128 }, 0.95, 0.95)?.low // 24.40
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.6.3
 */
export function toleranceInterval(
  { count, mean, deviation }: Sample,
  coverage: number,
  confidence: number,
): Interval | null {
  if (deviation === null) return null;
  const k = twoSidedTolerance(count, coverage, confidence).value;
  return k === null ? null : { low: mean - k * deviation, high: mean + k * deviation };
}

/**
 * Middle of readings, of which half lie above and half below.
 *
 * Equation: x of rank (n + 1)/2; the mean of the two in the middle for an even count.
 * @param readings finite numbers of one unit
 * @returns median; null without a reading
 * @example medianOf([3, 1, 2, 10]) // 2.5
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.1
 */
export function medianOf(readings: readonly number[]): number | null {
  const rising = readings.toSorted((a, b) => a - b);
  const low = rising[Math.ceil(rising.length / 2) - 1];
  const high = rising[Math.floor(rising.length / 2)];
  return low === undefined || high === undefined ? null : (low + high) / 2;
}
