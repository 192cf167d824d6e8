import { fromSI, UNITS, type Unit } from '../units/units.ts';

const THIN_SPACE = '\u2009';

/**
 * Writes an SI number in a unit for reading: thousands parted by a thin space, no trailing zeros.
 *
 * @param si number in SI
 * @param unit unit to show
 * @param digits significant digits, 1 to 12
 * @example showQuantity(5400, 'N.m') // '5 400 N·m'
 */
export function showQuantity(si: number, unit: Unit, digits = 4): string {
  return `${showNumber(fromSI(si, unit), digits)} ${UNITS[unit].label}`.trim();
}

/** Writes a number with at most this many significant digits; whole digits are never cut off. */
export function showNumber(value: number, digits = 4): string {
  if (!Number.isFinite(value)) return 'not known';
  const magnitude = value === 0 ? 0 : Math.floor(Math.log10(Math.abs(value))) + 1;
  const decimals = Math.min(12, Math.max(0, digits - magnitude));
  const [whole = '0', fraction = ''] = Math.abs(value).toFixed(decimals).split('.');
  const grouped = whole.length > 3 ? whole.replace(/\B(?=(\d{3})+(?!\d))/g, THIN_SPACE) : whole;
  const kept = fraction.replace(/0+$/, '');
  const text = kept === '' ? grouped : `${grouped}.${kept}`;
  return value < 0 && text !== '0' ? `−${text}` : text;
}

/** A typed value as it was typed, with its unit. */
export function showEntered(entered: { readonly text: string; readonly unit: Unit }): string {
  return `${entered.text} ${UNITS[entered.unit].label}`.trim();
}
