import type { Dial } from '../contract/setting.ts';
import { fromSI, toSI, type Unit } from '../units/units.ts';

/** What the rounding needs to know of a gauge. */
export interface GaugeScale {
  /** Unit printed on the gauge's face. */
  readonly unit: Unit;
  /** Pa */
  readonly scaleMax: number;
  /** Distance between two marks, Pa. */
  readonly graduation: number;
}

/** Part of the scale in which a gauge is read well; outside it is a warning. Common practice: 20 to 90 %. */
export const READABLE = { low: 0.2, high: 0.9 } as const;

/**
 * Rounds a pressure to the nearest mark of the gauge, but never to a mark above a limit the pressure itself keeps.
 *
 * Equation: p = n·g with n = round(p/g), or floor(limit/g) when that is lower.
 * @param pressure wanted, Pa, at least 0
 * @param gauge unit on its face and graduation
 * @param ceiling largest pressure allowed, Pa; a pressure already above it is rounded to nearest and refused elsewhere
 * @returns number on the face and the pressure it stands for
 * @example roundToMark(259.52e5, { unit: 'bar', scaleMax: 1e8, graduation: 1e6 }).value // 260
 * @source nearest mark is this program's default
 */
export function roundToMark(
  pressure: number,
  gauge: GaugeScale,
  ceiling: number = Number.POSITIVE_INFINITY,
): Dial {
  const graduation = fromSI(gauge.graduation, gauge.unit);
  const marks = fromSI(pressure, gauge.unit) / graduation;
  const nearest = Math.round(marks);
  // A hair of slack: 700 bar over 10 bar marks must count as 70 marks whatever the last bit says.
  const highest = Math.floor(fromSI(ceiling, gauge.unit) / graduation + 1e-9);
  const keepsLimit = pressure <= ceiling * (1 + 1e-12);
  const value = withoutNoise((keepsLimit ? Math.min(nearest, highest) : nearest) * graduation);
  return { value, unit: gauge.unit, pressure: toSI(value, gauge.unit) };
}

/** A multiple of 0.1 is printed with its last bits wrong; a whole number never is. */
function withoutNoise(value: number): number {
  return Number.isInteger(value) && Math.abs(value) < 1e12 ? value : Number(value.toPrecision(12));
}

/**
 * Where on the scale a pressure lies: below or above the readable part, beyond the scale, or well in it.
 *
 * @param pressure p, Pa, at least 0
 * @param gauge scale maximum, Pa
 * @returns low below 20 %, high above 90 %, beyond above the maximum
 * @example scalePlace(260e5, { unit: 'bar', scaleMax: 700e5, graduation: 10e5 }) // 'readable'
 * @source READABLE: common practice
 */
export function scalePlace(pressure: number, gauge: GaugeScale): 'low' | 'readable' | 'high' | 'beyond' {
  const share = pressure / gauge.scaleMax;
  if (share > 1 + 1e-12) return 'beyond';
  if (share < READABLE.low) return 'low';
  return share > READABLE.high ? 'high' : 'readable';
}
