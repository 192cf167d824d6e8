import type { CertificateLineView } from '../contract/tool.ts';

type Line = Pick<CertificateLineView, 'intercept' | 'slope'>;

/**
 * Torque a wrench delivers at a pressure, by its certificate's line.
 *
 * Equation: T = a + b·p.
 * @param line certificate line, SI
 * @param pressurePa pressure, Pa, at least 0
 * @returns torque, N·m; never below zero
 * @example torqueAtPressure({ intercept: -6, slope: 1.5e-5 }, 260e5) // 384 N·m
 * @source JCGM 100:2008 (GUM), Annex H.3
 */
export function torqueAtPressure(line: Line, pressurePa: number): number {
  return Math.max(0, line.intercept + line.slope * pressurePa);
}
