import cdf from '@stdlib/stats-base-dists-normal-cdf';
import quantile from '@stdlib/stats-base-dists-normal-quantile';

/**
 * Probability that a standard normal variable lies at or below a value.
 *
 * Equation: Φ(z).
 * @param z any number, infinite ones included
 * @returns probability, 0 to 1
 * @example normalProbability(1.96) // 0.9750
 * @source normal distribution; JCGM 100:2008 (GUM), Annex G, for its use
 */
export function normalProbability(z: number): number {
  return cdf(z, 0, 1);
}

/**
 * Value a standard normal variable lies below with a probability.
 *
 * Equation: Φ⁻¹(p).
 * @param p probability, above 0 and below 1; 0 and 1 give ∓∞
 * @returns z
 * @example normalQuantile(0.975) // 1.95996
 * @source normal distribution; JCGM 100:2008 (GUM), Annex G, for its use
 */
export function normalQuantile(p: number): number {
  return quantile(p, 0, 1);
}
