import quantile from '@stdlib/stats-base-dists-t-quantile';
import { compute, type Outcome, positive, within } from '../findings/outcome.ts';

/**
 * Value a Student t variable lies below with a probability.
 *
 * Equation: t with P(T ≤ t) = p at ν degrees of freedom.
 * @param probability p, 1, above 0 and below 1
 * @param degreesOfFreedom ν, 1, above 0; it need not be whole
 * @returns t
 * @example studentQuantile(0.975, 8).value // 2.306
 * @source JCGM 100:2008 (GUM), Annex G.3
 */
export function studentQuantile(
  probability: number | null,
  degreesOfFreedom: number | null,
): Outcome<number> {
  return compute(
    {
      p: within('p', 'probability', probability, [1e-9, 1 - 1e-9], 'choose it between 0 and 1'),
      nu: positive('ν', 'degrees of freedom', degreesOfFreedom, 'count the readings behind the value'),
    },
    ({ p, nu }) => quantile(p, nu),
  );
}

/**
 * Largest studentised residual that n points without an outlier stay under, all of them together.
 *
 * Equation: t with P(|T| > t) = α/n at ν = n − 3 degrees of freedom, after Bonferroni.
 * @param count n, number of points, whole, at least 4
 * @param risk α, 1, above 0 and below 1: chance of calling a good certificate's point an outlier
 * @returns critical value
 * @example outlierLimit(10, 0.05).value // 4.029
 * @source Student's t at α/(2n), R. D. Cook and S. Weisberg, Residuals and Influence in Regression (1982), 2.2.2 (from
 * memory)
 */
export function outlierLimit(count: number, risk: number): Outcome<number> {
  const checked = compute(
    {
      n: within('n', 'number of points', count, [4, 1000], 'measure at least four points'),
      risk: within('α', 'risk of a false alarm', risk, [1e-4, 0.5], 'choose 0.05'),
    },
    (v) => ({ p: 1 - v.risk / (2 * v.n), nu: v.n - 3 }),
  );
  return checked.value === null ? checked : studentQuantile(checked.value.p, checked.value.nu);
}
