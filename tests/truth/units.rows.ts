import { fromSI, toSI, type Unit } from '../../core/units/units.ts';
import { rowsOf, type TruthRow } from './row.ts';

/** Unit, unit it is turned into, and the printed factor. */
const FACTORS: readonly (readonly [Unit, Unit, string])[] = [
  ['in', 'm', '0.0254'],
  ['lbf', 'N', '4.448222'],
  ['lbf.ft', 'N.m', '1.355818'],
  ['lbf.in', 'N.m', '0.1129848'],
  ['deg', 'rad', '0.01745329'],
];

const sp811 = rowsOf('sp-811', 'published table cell');

export const UNIT_ROWS: readonly TruthRow[] = [
  ...FACTORS.map(([from, to, printed]) =>
    sp811('Appendix B.8 and B.9', `1 ${from} in ${to}`, printed, () => fromSI(toSI(1, from), to)),
  ),
  sp811('Appendix B.8 and B.9', '1 psi in kPa', '6.894757', () => toSI(1, 'psi') / 1000),
  sp811('Appendix B.8 and B.9', '1 ksi in kPa', '6894.757', () => toSI(1, 'ksi') / 1000),
  sp811('Appendix B.8 and B.9', '1 bar in kPa', '100', () => toSI(1, 'bar') / 1000),
];
