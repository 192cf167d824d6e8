import { addDays, daysBetween } from './calendar.ts';
import { LAPSED_WRENCH, WEAK_WRENCH } from './faults.ts';

/** A tool out of the tool room, in days before today; `back` null while it is still away. */
export interface Absence {
  readonly tool: string;
  readonly left: number;
  readonly back: number | null;
}

/** Gauge that was found reading high, and what was done with it since, in days before today. */
export const HIGH_GAUGE = 'G-03';
export const HIGH_GAUGE_DAYS = {
  found: 150,
  opened: 149,
  decided: 147,
  closed: 146,
  checked: 145,
  back: 144,
};

/** Trips to the laboratory; each newest calibration of these tools lies within its own. */
export const AT_LABORATORY: readonly Absence[] = [
  { tool: 'W-01', left: 64, back: 57 },
  { tool: 'G-01', left: 50, back: 41 },
  { tool: 'W-08', left: 34, back: 27 },
  { tool: WEAK_WRENCH, left: 23, back: 16 },
  { tool: 'T-02', left: 6, back: null },
  { tool: LAPSED_WRENCH, left: 1, back: null },
];

const ABSENT: readonly Absence[] = [
  ...AT_LABORATORY,
  { tool: HIGH_GAUGE, left: HIGH_GAUGE_DAYS.opened, back: HIGH_GAUGE_DAYS.back },
];

/** Whether nobody could work with the tool on that day. */
export function isAbsent(tool: string, date: string, today: string): boolean {
  const ago = daysBetween(date, today);
  return ABSENT.some((one) => one.tool === tool && ago <= one.left && ago >= (one.back ?? 0));
}

/** Months after which the invented site takes a hose out of use, counted from the day it was made. */
export const HOSE_AGE_MONTHS = 72;
/** A little before the rule's own end, so that no job on the last days meets it. */
const HOSE_DAYS = 2180;
const UNPACKED_AFTER = 10;

/** Whether a hose was made by then and not past its age. */
export function isInUse(madeOn: string | null, date: string): boolean {
  return madeOn !== null && addDays(madeOn, UNPACKED_AFTER) <= date && date < addDays(madeOn, HOSE_DAYS);
}
