import { Temporal } from 'temporal-polyfill';

export interface CalendarDay {
  /** YYYY-MM-DD */
  readonly date: string;
  readonly number: number;
  /** False for the days of the neighbouring months that fill the first and last week. */
  readonly inMonth: boolean;
}

export interface CalendarWeek {
  /** Number of the week by ISO 8601: the first week holds the year's first Thursday. */
  readonly number: number;
  readonly days: readonly CalendarDay[];
}

const DAYS_IN_A_WEEK = 7;

/** Weeks of a month from Monday to Sunday, filled up with the neighbouring days. `month` is YYYY-MM. */
export function weeksOf(month: string): CalendarWeek[] {
  const first = Temporal.PlainYearMonth.from(month).toPlainDate({ day: 1 });
  const weeks: CalendarWeek[] = [];
  let monday = first.subtract({ days: first.dayOfWeek - 1 });
  while (Temporal.PlainDate.compare(monday, first.add({ months: 1 })) < 0) {
    const start = monday;
    weeks.push({
      number: start.weekOfYear ?? 0,
      days: Array.from({ length: DAYS_IN_A_WEEK }, (_, at) => {
        const date = start.add({ days: at });
        return { date: date.toString(), number: date.day, inMonth: date.month === first.month };
      }),
    });
    monday = monday.add({ days: DAYS_IN_A_WEEK });
  }
  return weeks;
}

export const monthOf = (date: string): string => Temporal.PlainDate.from(date).toPlainYearMonth().toString();

export const monthAfter = (month: string, months: number): string =>
  Temporal.PlainYearMonth.from(month).add({ months }).toString();

/** Days from one date to the last day of a month, not below zero. */
export function daysToEndOf(month: string, from: string): number {
  const { year, month: number, daysInMonth } = Temporal.PlainYearMonth.from(month);
  const last = Temporal.PlainDate.from({ year, month: number, day: daysInMonth });
  return Math.max(0, Temporal.PlainDate.from(from).until(last).days);
}

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/** 2026-03 → March 2026. */
export function monthWords(month: string): string {
  const { year, month: number } = Temporal.PlainYearMonth.from(month);
  return `${MONTHS[number - 1]} ${year}`;
}
