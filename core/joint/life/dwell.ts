import type { ClassRuleData } from '../../contract/life.ts';
import { type DwellState, dwellState, LEAST_DWELL } from '../../sequence/dwell.ts';
import { momentOf, type Standing } from './standing.ts';

/**
 * How long a tightened joint still rests before the pass after the dwell.
 *
 * Equation: due when t(now) − t(last full pass) ≥ wait; wait at least 4 h, longer where the class says so.
 * @param standing its tightenings; the last full pass ends with the newest of them
 * @param rule rule of its class; null for the least wait
 * @param now moment of asking with its offset
 * @returns state with the time still to wait and the moment it is due
 * @example dwellOf({ tightened: [{ at: '2026-03-16T07:00:00Z' }] }, null, '2026-03-16T08:00:00Z').remaining // 10800 s
 * @source ASME PCC-1-2013, section 12 (from memory)
 */
export function dwellOf(
  { tightened }: Pick<Standing, 'tightened'>,
  rule: ClassRuleData | null,
  now: string,
): DwellState {
  const ends = tightened.map(({ at }) => at).toSorted((a, b) => momentOf(a) - momentOf(b));
  const wait = rule === null ? LEAST_DWELL : rule.retightening.dwell * 3600;
  return dwellState(ends.at(-1) ?? null, now, Math.max(wait, LEAST_DWELL));
}
