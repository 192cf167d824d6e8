import { Temporal } from 'temporal-polyfill';
import type { ToolRuleData } from '../contract/check.ts';

/**
 * A calendar date some days or months later, drawn out to the end of its month where the site counts so. A month
 * without that day ends on its last.
 *
 * Equation: date + days, or date + months in the Gregorian calendar.
 * @param from calendar date YYYY-MM-DD
 * @param span days or months, whole, at least 0
 * @param dueAt whether the date counts to the day or to the end of its month
 * @returns calendar date YYYY-MM-DD
 * @example laterBy('2026-01-31', { months: 1 }) // '2026-02-28'
 * @source Gregorian calendar
 */
export function laterBy(
  from: string,
  span: { readonly days: number } | { readonly months: number },
  dueAt: ToolRuleData['dueAt'] = 'exact day',
): string {
  const date = Temporal.PlainDate.from(from).add(span);
  return (dueAt === 'exact day' ? date : date.with({ day: date.daysInMonth })).toString();
}

/**
 * Days from one calendar date to another.
 *
 * Equation: n = to − from, in days of the calendar.
 * @param from calendar date YYYY-MM-DD
 * @param to calendar date YYYY-MM-DD
 * @returns whole days, negative when `to` lies before `from`
 * @example daysTo('2026-02-28', '2026-03-01') // 1
 * @source Gregorian calendar
 */
export function daysTo(from: string, to: string): number {
  return Temporal.PlainDate.from(from).until(Temporal.PlainDate.from(to), { largestUnit: 'days' }).days;
}
