/** Shortest wait between the last full pass and the pass after a dwell, s. */
export const LEAST_DWELL = 4 * 3600;

/** Whether the pass after the dwell is due. */
export interface DwellState {
  readonly state: 'waiting' | 'due' | 'not known';
  /** Wait still to go, s; 0 once due, null when not known. */
  readonly remaining: number | null;
  /** Moment it is due, UTC; null when not known. */
  readonly dueAt: string | null;
  readonly reason: string;
}

/**
 * Whether the joint has rested long enough for the pass after the dwell.
 *
 * Equation: due when t(now) − t(last full pass) ≥ wait.
 * @param lastFullPass moment of the last full pass with its offset; null is not known
 * @param now moment of asking with its offset
 * @param wait s, at least 4 h unless the site's procedure says otherwise
 * @returns state with the time still to wait
 * @example dwellState('2026-03-16T07:00:00+01:00', '2026-03-16T09:00:00Z', LEAST_DWELL).remaining // 3600 s
 * @source ASME PCC-1-2013, section 12 and Table 2 (from memory)
 */
export function dwellState(lastFullPass: string | null, now: string, wait: number): DwellState {
  const from = lastFullPass === null ? Number.NaN : moment(lastFullPass);
  const at = moment(now);
  if (!Number.isFinite(from)) return unknown('moment of the last full pass not recorded');
  if (!Number.isFinite(at)) return unknown('moment of asking can not be read');
  if (!(wait >= 0) || !Number.isFinite(from + wait * 1000)) return unknown('wait is not a time');
  if (at < from) return unknown('the last full pass lies in the future: check both clocks');
  const remaining = Math.max(0, (from + wait * 1000 - at) / 1000);
  return {
    state: remaining > 0 ? 'waiting' : 'due',
    remaining,
    dueAt: new Date(from + wait * 1000).toISOString(),
    reason: remaining > 0 ? 'the gasket is still settling' : 'wait is over',
  };
}

/** A moment without its offset would be read in the time zone of whichever machine computes. */
function moment(text: string): number {
  return /T.*(Z|[+-]\d{2}:\d{2})$/.test(text) ? Date.parse(text) : Number.NaN;
}

function unknown(reason: string): DwellState {
  return { state: 'not known', remaining: null, dueAt: null, reason };
}
