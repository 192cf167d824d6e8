import { fromSI, UNITS, type Unit } from '../units/units.ts';

const THIN_SPACE = '\u2009';
const ZERO = 0x30;
const POINT = 0x2e;

/**
 * Writes an SI number in a unit for reading: thousands parted by a thin space, no trailing zeros.
 *
 * @param si number in the quantity’s SI unit, any finite value
 * @param unit unit to show
 * @param digits significant digits, whole, 1 to 12
 * @returns number and unit; “not known” for what is not finite
 * @example showQuantity(540, 'N.m') // '540 N·m'
 * @source ISO 80000-1:2009, 7.3, for the thin space
 */
export function showQuantity(si: number, unit: Unit, digits = 4): string {
  return `${showNumber(fromSI(si, unit), digits)} ${UNITS[unit].label}`.trim();
}

/**
 * Writes a number with at most this many significant digits; whole digits are never cut off.
 *
 * @param value in any unit, any value
 * @param digits significant digits, whole, 1 to 12
 * @returns text; “not known” for what is not finite
 * @example showNumber(0.123456, 3) // '0.123'
 * @source ISO 80000-1:2009, 7.3, for the thin space
 */
export function showNumber(value: number, digits = 4): string {
  if (!Number.isFinite(value)) return 'not known';
  const magnitude = value === 0 ? 0 : Math.floor(Math.log10(Math.abs(value))) + 1;
  const decimals = Math.min(12, Math.max(0, digits - magnitude));
  const text = grouped(decimals === 0 ? Math.abs(value).toFixed(0) : plainDecimal(Math.abs(value), decimals));
  return value < 0 && text !== '0' ? `−${text}` : text;
}

function plainDecimal(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  let end = text.length;
  while (text.charCodeAt(end - 1) === ZERO) end -= 1;
  return text.slice(0, text.charCodeAt(end - 1) === POINT ? end - 1 : end);
}

function grouped(text: string): string {
  const point = text.indexOf('.');
  const whole = point < 0 ? text.length : point;
  // From 1e21 up there is an exponent instead of digits to part.
  if (whole <= 3 || text.includes('e')) return text;
  let end = whole;
  let parted = text.slice(whole);
  for (; end > 3; end -= 3) parted = THIN_SPACE + text.slice(end - 3, end) + parted;
  return text.slice(0, end) + parted;
}

/**
 * Writes a typed value as it was typed, with its unit.
 *
 * @param entered text and unit as stored
 * @returns text with the unit’s label
 * @example showEntered({ text: '1-7/16', unit: 'in' }) // '1-7/16 in'
 * @source rule of this program
 */
export function showEntered(entered: { readonly text: string; readonly unit: Unit }): string {
  return `${entered.text} ${UNITS[entered.unit].label}`.trim();
}
