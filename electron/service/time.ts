import { Temporal } from 'temporal-polyfill';

/** The same moment in UTC with milliseconds, so that text order is time order. */
export function toUtc(instant: string): string {
  return new Date(instant).toISOString();
}

/** Calendar date of a moment at the site: this decides whether a certificate is valid on that day. */
export function dateAtSite(instant: string, timeZone: string): string {
  return Temporal.Instant.from(instant).toZonedDateTimeISO(timeZone).toPlainDate().toString();
}

/** Calendar date at the site now. */
export function todayAt({ clock, site }: Now): string {
  return dateAtSite(clock().toISOString(), site.timeZone);
}

interface Now {
  readonly clock: () => Date;
  readonly site: { readonly timeZone: string };
}

/** First moment of a calendar date at the site, in UTC. */
export function startOfDay(date: string, timeZone: string): string {
  const start = Temporal.PlainDate.from(date).toZonedDateTime(timeZone);
  return new Date(start.epochMilliseconds).toISOString();
}

/** First moment after a calendar date at the site, in UTC. */
export function endOfDay(date: string, timeZone: string): string {
  return startOfDay(Temporal.PlainDate.from(date).add({ days: 1 }).toString(), timeZone);
}

/**
 * A moment from a date, or a date and time of day, as they are written at the site; of a date alone its first moment or
 * the first after it. Null for anything else.
 */
export function momentAtSite(text: string, timeZone: string, edge: 'start' | 'end'): string | null {
  const written = /^(\d{4}-\d{2}-\d{2})(?:[ T](\d{2}:\d{2}))?$/.exec(text.trim());
  if (written === null) return null;
  const [, date = '', time] = written;
  try {
    const day = Temporal.PlainDate.from(date);
    const local = time === undefined ? undefined : Temporal.PlainTime.from(time);
    const from = local === undefined && edge === 'end' ? day.add({ days: 1 }) : day;
    const zoned = from.toPlainDateTime(local).toZonedDateTime(timeZone);
    return atSite(new Date(zoned.epochMilliseconds), timeZone);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** A moment written with the site's offset. */
export function atSite(moment: Date, timeZone: string): string {
  const zoned = Temporal.Instant.fromEpochMilliseconds(moment.getTime()).toZonedDateTimeISO(timeZone);
  return zoned.toString({ timeZoneName: 'never', smallestUnit: 'second' });
}

export function isTimeZone(name: string): boolean {
  try {
    Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(name);
    return true;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}
