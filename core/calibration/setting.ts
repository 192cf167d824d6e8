import type { CertificateLineView } from '../contract/tool.ts';

/**
 * Pressure that gives a torque, by the certificate's line, before rounding to the gauge.
 *
 * Equation: p = (T − a)/b.
 * @param line certificate line, SI
 * @param torque wanted torque, N·m
 * @returns pressure, Pa; never below zero
 * @example pressureForTorque(line, 383.441) // 25952384 Pa
 * @source JCGM 100:2008 (GUM), Annex H.3
 */
export function pressureForTorque(
  line: Pick<CertificateLineView, 'intercept' | 'slope'>,
  torque: number,
): number {
  return Math.max(0, (torque - line.intercept) / line.slope);
}

/** Lowest and highest certified pressure, Pa. */
export function certifiedRange(line: Pick<CertificateLineView, 'points'>): {
  lowest: number;
  highest: number;
} {
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (const { pressure } of line.points) {
    if (pressure < lowest) lowest = pressure;
    if (pressure > highest) highest = pressure;
  }
  return { lowest, highest };
}
