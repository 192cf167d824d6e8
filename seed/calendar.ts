const DAY = 86_400_000;

/** Calendar date a number of days later (or earlier), YYYY-MM-DD. */
export function addDays(date: string, days: number): string {
  return new Date(Date.parse(`${date}T00:00:00Z`) + days * DAY).toISOString().slice(0, 10);
}

/** Same day a number of years later; 29 February becomes 1 March in a common year. */
export function addYears(date: string, years: number): string {
  const moment = new Date(`${date}T00:00:00Z`);
  moment.setUTCFullYear(moment.getUTCFullYear() + years);
  return moment.toISOString().slice(0, 10);
}

/** Days from one calendar date to another. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / DAY);
}

/** A moment by the site's clock, with the offset that holds there on that day. */
export function siteMoment(date: string, minuteOfDay: number, timeZone: string): string {
  const two = (value: number) => String(value).padStart(2, '0');
  const time = `${two(Math.floor(minuteOfDay / 60))}:${two(minuteOfDay % 60)}:00`;
  return `${date}T${time}${offsetAtNoon(date, timeZone)}`;
}

/** Clocks change at night, so the offset at noon holds through the working day. */
function offsetAtNoon(date: string, timeZone: string): string {
  const parts = new Intl.DateTimeFormat('en', { timeZone, timeZoneName: 'longOffset' }).formatToParts(
    new Date(`${date}T12:00:00Z`),
  );
  const name = parts.find(({ type }) => type === 'timeZoneName')?.value ?? 'GMT';
  return name === 'GMT' ? '+00:00' : name.replace('GMT', '');
}
