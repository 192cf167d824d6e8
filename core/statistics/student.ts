import incompleteBeta from '@stdlib/math-base-special-betainc';

/**
 * Probability that a Student t variable lies at or below a value.
 *
 * Equation: P = 1 − ½·I(ν/(ν + t²); ν/2, ½) for t ≥ 0; symmetric below.
 * @param t any number, infinite ones included
 * @param degreesOfFreedom ν, 1, above 0
 * @returns probability
 * @example studentProbability(2.306, 8) // 0.975
 * @source M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions (1964), 26.7.1 (from memory)
 */
export function studentProbability(t: number, degreesOfFreedom: number): number {
  if (!Number.isFinite(t)) return t > 0 ? 1 : 0;
  const tail = incompleteBeta(degreesOfFreedom / (degreesOfFreedom + t * t), degreesOfFreedom / 2, 0.5) / 2;
  return t >= 0 ? 1 - tail : tail;
}
