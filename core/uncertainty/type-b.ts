import { compute, type Outcome, positive, within } from '../findings/outcome.ts';

/** What is known about a limit: nothing more than its ends, a peak in the middle, or a swing between the ends. */
export type LimitShape = 'rectangular' | 'triangular' | 'arcsine';

const DIVISOR: Readonly<Record<LimitShape, number>> = {
  rectangular: Math.sqrt(3),
  triangular: Math.sqrt(6),
  arcsine: Math.SQRT2,
};

/**
 * Standard uncertainty of a quantity known by its limits.
 *
 * Equation: u = a/√3 rectangular, a/√6 triangular, a/√2 arcsine.
 * @param halfWidth a, in the quantity's unit, at least 0
 * @param shape what is known about the limits
 * @returns u in the quantity's unit
 * @example fromLimits(7, 'rectangular').value // 4.04: class 1.0 of a 700 bar gauge
 * @source JCGM 100:2008 (GUM), 4.3.7 and 4.3.9
 */
export function fromLimits(halfWidth: number | null, shape: LimitShape): Outcome<number> {
  return compute(
    { a: within('a', 'half width', halfWidth, [0, Number.MAX_VALUE], 'take it from the class or tolerance') },
    ({ a }) => a / DIVISOR[shape],
  );
}

/**
 * Standard uncertainty behind an expanded one.
 *
 * Equation: u = U/k.
 * @param expanded U, in the quantity's unit, at least 0
 * @param coverage k, 1, as the certificate states it, above 0
 * @returns u in the quantity's unit
 * @example fromExpanded(10, 2).value // 5
 * @source JCGM 100:2008 (GUM), 4.3.3
 */
export function fromExpanded(expanded: number | null, coverage: number | null): Outcome<number> {
  return compute(
    {
      U: within('U', 'expanded uncertainty', expanded, [0, Number.MAX_VALUE], 'take it from the certificate'),
      k: positive('k', 'coverage factor', coverage, 'take it from the certificate; it is often 2'),
    },
    ({ U, k }) => U / k,
  );
}
