/** Digits kept in frozen results: engines differ in the last bits of sin, exp and pow. */
export const FROZEN_DIGITS = 12;

/**
 * Rounds to significant digits.
 *
 * Equation: nearest decimal number with `digits` significant digits.
 * @param x any number; zero and non-finite numbers come back unchanged
 * @param digits 1 to 17
 * @returns x to that many digits; what is not finite stays as it is
 * @example roundSignificant(259.52384, 4) // 259.5
 * @source decimal rounding as in NIST SP 811 (2008), Appendix B.7
 */
export function roundSignificant(x: number, digits: number): number {
  if (!Number.isFinite(x) || x === 0) return x;
  return Number(x.toPrecision(digits));
}

/**
 * Copies a value with every number in it rounded to the frozen digits, at any depth.
 *
 * @param value plain data: numbers, strings, arrays, objects
 * @returns a copy with every number rounded to 12 significant digits
 * @example freeze({ torque: 0.1 + 0.2 }).torque === 0.3 // true
 * @source rule of this program: engines differ in the last bits of transcendental functions
 */
export function freeze<T>(value: T): T {
  return frozen(value) as T;
}

function frozen(value: unknown): unknown {
  if (typeof value === 'number') return roundSignificant(value, FROZEN_DIGITS);
  if (Array.isArray(value)) return value.map(frozen);
  if (value !== null && typeof value === 'object') {
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, frozen(inner)]));
  }
  return value;
}
