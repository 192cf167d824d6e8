import { toSI, type Unit } from './units.ts';

/** A value as a person typed it, beside the SI number the calculations use. */
export interface Entered {
  /** The typed text, digits kept. */
  readonly text: string;
  readonly unit: Unit;
  readonly si: number;
}

export type DecimalSign = '.' | ',';

export type ParsedNumber =
  | { ok: true; value: number }
  | { ok: false; reason: 'empty' | 'not_a_number' | 'other_decimal_sign' };

const PLAIN = /^[+-]?(\d+(\.\d*)?|\.\d+)(e[+-]?\d{1,3})?$/i;
const FRACTION = /^(\d+)\s*\/\s*(\d+)$/;
const MIXED = /^(\d+)(?:\s*-\s*|\s+)(\d+)\s*\/\s*(\d+)$/;

/**
 * Reads a number as typed: decimal (`12.5`), fraction (`7/8`) or mixed fraction (`1-7/16`). Thousands separators are
 * refused because a comma or point could be either.
 *
 * @param text what was typed
 * @param decimalSign the sign agreed for this input; the other one is refused, never guessed
 * @returns the number, or why the text is none
 * @example parseNumber('1-7/16', '.').value // 1.4375
 * @source exact fractions; rule of this program for signs and separators
 */
export function parseNumber(text: string, decimalSign: DecimalSign): ParsedNumber {
  const trimmed = text.trim().replace(/^−/, '-');
  if (trimmed === '') return { ok: false, reason: 'empty' };
  const mixed = MIXED.exec(trimmed);
  if (mixed) return quotient(Number(mixed[1]), Number(mixed[2]), Number(mixed[3]));
  const fraction = FRACTION.exec(trimmed);
  if (fraction) return quotient(0, Number(fraction[1]), Number(fraction[2]));
  const other = decimalSign === '.' ? ',' : '.';
  if (trimmed.includes(other)) return { ok: false, reason: 'other_decimal_sign' };
  const plain = decimalSign === ',' ? trimmed.replace(',', '.') : trimmed;
  if (!PLAIN.test(plain)) return { ok: false, reason: 'not_a_number' };
  const value = Number(plain);
  return Number.isFinite(value) ? { ok: true, value } : { ok: false, reason: 'not_a_number' };
}

function quotient(whole: number, numerator: number, denominator: number): ParsedNumber {
  if (denominator === 0) return { ok: false, reason: 'not_a_number' };
  return { ok: true, value: whole + numerator / denominator };
}

/**
 * Builds the stored form of a typed value, or null when it can't be read as a number.
 *
 * @param text as typed; kept verbatim
 * @param unit unit it was typed in
 * @param decimalSign sign of the person’s locale
 * @returns text, unit and SI value, or null when the text is no number
 * @example enter('1-7/16', 'in')?.si // 0.0365125 m
 * @source NIST SP 811 (2008), Appendix B
 */
export function enter(text: string, unit: Unit, decimalSign: DecimalSign = '.'): Entered | null {
  const parsed = parseNumber(text, decimalSign);
  return parsed.ok ? { text: text.trim(), unit, si: toSI(parsed.value, unit) } : null;
}
