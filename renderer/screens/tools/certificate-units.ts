import type { CertificateData } from '../../../core/contract/tool.ts';
import { UNITS, type Unit } from '../../../core/units/units.ts';

/** The units the laboratory wrote, so that the page reads like the certificate. */
export function pointUnits(data: CertificateData): { pressureUnit: Unit; torqueUnit: Unit } {
  const first = data.measured.kind === 'pressure-torque' ? data.measured.points[0] : undefined;
  return { pressureUnit: first?.pressure.unit ?? 'bar', torqueUnit: first?.torque.unit ?? 'N.m' };
}

/** A slope in N·m/Pa shown per the written units. */
export const perUnit = (slope: number, torqueUnit: Unit, pressureUnit: Unit): number =>
  (slope * UNITS[pressureUnit].factor) / UNITS[torqueUnit].factor;
