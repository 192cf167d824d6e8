import { compute, noSolution, type Outcome, within } from '../findings/outcome.ts';

/** One comparison of a check: what was meant and what the reference showed, both N·m or both Pa. */
export interface Compared {
  /** Where it was made: pressure on the gauge, Pa, or the set torque, N·m. */
  readonly at: number;
  readonly intended: number;
  readonly reference: number;
}

/** Error at a place by a check's comparisons. */
export interface ComparedError {
  /** (reference − intended)/intended */
  readonly error: number;
  readonly how: 'between two comparisons' | 'nearest comparison';
  /** Places between which the check compared. */
  readonly lowest: number;
  readonly highest: number;
}

/**
 * Error at a place by the comparisons of a check: on a straight line between two of them, and that of the nearest one
 * outside their range. Comparisons at one place are averaged.
 *
 * Equation: e = (reference − intended)/intended, linear in the place.
 * @param comparisons each with an intended value above 0
 * @param at pressure on the gauge, Pa, or torque, N·m; at least 0; null when not recorded
 * @returns the error with the range it was compared in
 * @example errorByComparisons([{ at: 2e7, intended: 300, reference: 276 }], 3e7).value?.error // -0.08
 * @source JCGM 200:2012 (VIM), 2.16; linear between points: rule of this program
 */
export function errorByComparisons(
  comparisons: readonly Compared[],
  at: number | null,
): Outcome<ComparedError> {
  const points = averaged(comparisons);
  const [first] = points;
  const last = points.at(-1);
  if (first === undefined || last === undefined) {
    return noSolution('n', 'comparisons', 'the check has none with an intended value above zero');
  }
  return compute(
    { at: within('p', 'pressure of the event', at, [0, 1e12], 'take it from the event’s record') },
    (v) => {
      const range = { lowest: first.at, highest: last.at };
      if (v.at <= first.at || v.at >= last.at) {
        const nearest = v.at <= first.at ? first : last;
        const exact = v.at === nearest.at && points.length > 1;
        return {
          error: nearest.error,
          how: exact ? ('between two comparisons' as const) : ('nearest comparison' as const),
          ...range,
        };
      }
      return { error: between(points, v.at), how: 'between two comparisons' as const, ...range };
    },
  );
}

interface ErrorPoint {
  readonly at: number;
  readonly error: number;
}

function averaged(comparisons: readonly Compared[]): ErrorPoint[] {
  const groups = new Map<number, number[]>();
  for (const { at, intended, reference } of comparisons) {
    if (!(intended > 0)) continue;
    groups.set(at, [...(groups.get(at) ?? []), (reference - intended) / intended]);
  }
  return [...groups]
    .map(([at, errors]) => ({ at, error: errors.reduce((sum, one) => sum + one, 0) / errors.length }))
    .sort((a, b) => a.at - b.at);
}

function between(points: readonly ErrorPoint[], at: number): number {
  for (let index = 1; index < points.length; index += 1) {
    const low = points[index - 1];
    const high = points[index];
    if (low === undefined || high === undefined || at > high.at) continue;
    return low.error + ((at - low.at) / (high.at - low.at)) * (high.error - low.error);
  }
  return points.at(-1)?.error ?? 0;
}
