import { Temporal } from 'temporal-polyfill';

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** 2026-03-16 → 16 Mar 2026: the month as a word, so that day and month can't be mixed up. */
export function day(date: string): string {
  const { day: number, month, year } = Temporal.PlainDate.from(date);
  return `${number} ${MONTHS[month - 1]} ${year}`;
}

/** A moment in the site's time zone. */
export function moment(instant: string, timeZone: string): string {
  const local = Temporal.Instant.from(instant).toZonedDateTimeISO(timeZone);
  return `${day(local.toPlainDate().toString())} ${local.toPlainTime().toString({ smallestUnit: 'minute' })}`;
}

export function dayOf(instant: string, timeZone: string): string {
  return day(Temporal.Instant.from(instant).toZonedDateTimeISO(timeZone).toPlainDate().toString());
}

/** "2026-03-16T07:42" typed at the site → the same moment with the site's offset on that date. */
export function withOffset(local: string, timeZone: string): string {
  return Temporal.PlainDateTime.from(local)
    .toZonedDateTime(timeZone)
    .toString({ timeZoneName: 'never', smallestUnit: 'second' });
}

/** A moment written with the site's offset, to the second. */
export function atSite(instant: string, timeZone: string): string {
  return Temporal.Instant.from(instant)
    .toZonedDateTimeISO(timeZone)
    .toString({ timeZoneName: 'never', smallestUnit: 'second' });
}

/** Now as a moment with the site's offset, to the second: acts within one minute keep their order. */
export function nowAtSite(timeZone: string): string {
  return Temporal.Now.zonedDateTimeISO(timeZone).toString({ timeZoneName: 'never', smallestUnit: 'second' });
}

/** Now in the site's time zone, as a date-and-time field wants it. */
export function nowLocal(timeZone: string): string {
  return Temporal.Now.plainDateTimeISO(timeZone).toString({ smallestUnit: 'minute' });
}

export function span(starts: string, ends: string): string {
  return starts === ends ? day(starts) : `${day(starts)} to ${day(ends)}`;
}
