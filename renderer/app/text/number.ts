import { fromSI, UNITS, type Unit } from '../../../core/units/units.ts';

const THIN = '\u202f';

/** Groups the whole part by threes with a thin space; four digits are grouped too, so that columns agree. */
function grouped(digits: string): string {
  const [whole = '', fraction] = digits.split('.');
  const spaced = whole.replace(/\B(?=(\d{3})+$)/g, THIN).replace('-', '−');
  return fraction === undefined ? spaced : `${spaced}.${fraction}`;
}

/** Four significant digits and never more than three decimals; whole digits are always shown. */
export function sensible(value: number, significant = 4): string {
  if (value === 0) return '0';
  const magnitude = Math.floor(Math.log10(Math.abs(value)));
  const decimals = Math.min(3, Math.max(0, significant - 1 - magnitude));
  return grouped(value.toFixed(decimals));
}

/** A number as it stands, with the digits it was given: for what is dialled and what was typed. */
export function exact(value: number): string {
  return grouped(String(Number(value.toPrecision(10))));
}

/** Every digit that is kept, for the working. */
export function full(value: number): string {
  const magnitude = Math.abs(value);
  if (magnitude !== 0 && (magnitude < 1e-4 || magnitude >= 1e9)) {
    const [mantissa = '', exponent = '0'] = value.toExponential(4).split('e');
    return `${mantissa.replace('-', '−')} × 10^${exponent.replace('+', '').replace('-', '−')}`;
  }
  return grouped(String(Number(value.toPrecision(6))));
}

export const unitLabel = (unit: Unit): string => UNITS[unit].label;

/** A share is never known to a hundredth of a percent. */
const digitsOf = (unit: Unit): number => (unit === 'percent' ? 3 : 4);

/** SI number in a unit, without its label. */
export const inUnit = (si: number, unit: Unit, significant = digitsOf(unit)): string =>
  sensible(fromSI(si, unit), significant);

export function withUnit(si: number, unit: Unit, significant = digitsOf(unit)): string {
  return `${inUnit(si, unit, significant)} ${unitLabel(unit)}`.trim();
}

/** A limit or rating, which is round by nature: "700 bar", not "700.0 bar". */
export function roundly(si: number, unit: Unit): string {
  return `${exact(Number(fromSI(si, unit).toPrecision(4)))} ${unitLabel(unit)}`.trim();
}

export const count = (value: number): string => grouped(String(value));

/** "1 joint", "320 joints". */
export const counted = (value: number, noun: string): string =>
  `${count(value)} ${noun}${value === 1 ? '' : 's'}`;
