import type { CertificateData } from '../../../core/contract/tool.ts';
import { UNITS, type Unit } from '../../../core/units/units.ts';

/** The units the laboratory wrote, so that the page reads like the certificate. */
export function pointUnits({ measured }: CertificateData): { pressureUnit: Unit; torqueUnit: Unit } {
  switch (measured.kind) {
    case 'pressure-torque': {
      const [first] = measured.points;
      return { pressureUnit: first?.pressure.unit ?? 'bar', torqueUnit: first?.torque.unit ?? 'N.m' };
    }
    case 'gauge':
      return { pressureUnit: measured.points[0]?.indicated.unit ?? 'bar', torqueUnit: 'N.m' };
    case 'hand torque':
      return { pressureUnit: 'bar', torqueUnit: measured.points[0]?.set.unit ?? 'N.m' };
  }
}

/** A slope in N·m/Pa shown per the written units. */
export const perUnit = (slope: number, torqueUnit: Unit, pressureUnit: Unit): number =>
  (slope * UNITS[pressureUnit].factor) / UNITS[torqueUnit].factor;
