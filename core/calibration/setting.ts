import type { CertificateLineView } from '../contract/tool.ts';

/**
 * Pressure that gives a torque, by the certificate's line, before rounding to the gauge.
 *
 * Equation: p = (T − a)/b.
 * @param line certificate line, SI
 * @param torque wanted torque, N·m, at least 0
 * @returns pressure, Pa; never below zero
 * @example pressureForTorque({ intercept: -6, slope: 1.5e-5 }, 384) // 260e5 Pa
 * @source JCGM 100:2008 (GUM), Annex H.3
 */
export function pressureForTorque(
  line: Pick<CertificateLineView, 'intercept' | 'slope'>,
  torque: number,
): number {
  return Math.max(0, (torque - line.intercept) / line.slope);
}

/**
 * Pressures between which a certificate has points.
 *
 * @param line certificate line with its points, Pa; at least one
 * @returns lowest and highest certified pressure, Pa
 * @example certifiedRange({ points: [{ pressure: 7e6 }, { pressure: 69e6 }] }).highest // 69e6 Pa
 * @source ISO/IEC 17025:2017, 7.8.4: a certificate speaks for the points it lists
 */
export function certifiedRange(line: { readonly points: readonly { readonly pressure: number }[] }): {
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
