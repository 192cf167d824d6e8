import type { DueState } from '../contract/check.ts';
import { daysTo } from './calendar.ts';

/** A thing that lapses, as it stands on a day. */
export interface Due {
  readonly what: string;
  readonly state: DueState;
  /** Last good day, YYYY-MM-DD; null when it is counted by use alone or not known. */
  readonly on: string | null;
  /** Uses left; null when it is not counted by use. */
  readonly usesLeft: number | null;
  /** Rule that makes it due, and what is missing when it is not known. */
  readonly reason: string;
  /** Whether a setting is refused when it is overdue; otherwise it is warned of. */
  readonly refuses: boolean;
}

/** Share of the uses left below which a thing counts as due soon: a choice of this program. */
const NOTICE_USES = 0.1;

/** Day things are held against, and how far ahead they count as due soon. */
export interface DueDay {
  readonly on: string;
  readonly noticeDays: number;
}

/** What a thing is counted by; null for neither. */
interface Counted {
  readonly lastDay: string | null;
  readonly usesLeft: number | null;
  /** Uses the rule allows in all; null when it is not counted by use. */
  readonly uses: number | null;
}

/**
 * State of a thing by its last good day and the uses it has left.
 *
 * @param counted last good day, uses left and uses allowed
 * @param day day it is asked for and days of notice
 * @returns overdue, due soon, in date, or not known when it is counted by nothing known
 * @example dueStateOf({ lastDay: '2026-03-15', usesLeft: null, uses: null }, { on: '2026-03-16', noticeDays: 30 })
 * // 'overdue'
 * @source due soon below a tenth of the uses: rule of this program
 */
export function dueStateOf({ lastDay, usesLeft, uses }: Counted, { on, noticeDays }: DueDay): DueState {
  if (lastDay !== null && on > lastDay) return 'overdue';
  if (usesLeft !== null && usesLeft <= 0) return 'overdue';
  // A count that the rule asks for and nobody has keeps the rest from being called in date.
  if (lastDay === null && usesLeft === null) return 'not known';
  if (uses !== null && usesLeft === null) return 'not known';
  const soonByUse = usesLeft !== null && uses !== null && usesLeft <= uses * NOTICE_USES;
  const soonByDay = lastDay !== null && daysTo(on, lastDay) <= noticeDays;
  return soonByUse || soonByDay ? 'due soon' : 'in date';
}
