import gammaProbability from '@stdlib/math-base-special-gammainc';
import gammaQuantile from '@stdlib/math-base-special-gammaincinv';
import { compute, type Outcome, positive, within } from '../findings/outcome.ts';

const COUNT = 'count the readings behind the value';

/**
 * Value a chi-square variable lies below with a probability.
 *
 * Equation: χ² with P(ν/2, χ²/2) = p; P is the lower regularised gamma function.
 * @param probability p, 1, above 0 and below 1
 * @param degreesOfFreedom ν, 1, above 0; it need not be whole
 * @returns χ²
 * @example chiSquareQuantile(0.95, 10).value // 18.307
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.6.6 and 1.3.6.7.4
 */
export function chiSquareQuantile(
  probability: number | null,
  degreesOfFreedom: number | null,
): Outcome<number> {
  return compute(
    {
      p: within('p', 'probability', probability, [1e-12, 1 - 1e-12], 'choose it between 0 and 1'),
      nu: positive('ν', 'degrees of freedom', degreesOfFreedom, COUNT),
    },
    ({ p, nu }) => 2 * gammaQuantile(p, nu / 2),
  );
}

/**
 * Probability that a chi-square variable lies at or below a value.
 *
 * Equation: P(ν/2, χ²/2), the lower regularised gamma function.
 * @param value χ², 1, at least 0
 * @param degreesOfFreedom ν, 1, above 0
 * @returns probability
 * @example chiSquareProbability(18.307, 10) // 0.95
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.6.6
 */
export function chiSquareProbability(value: number, degreesOfFreedom: number): number {
  return value <= 0 ? 0 : gammaProbability(value / 2, degreesOfFreedom / 2);
}
