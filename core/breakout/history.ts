import type { ChartPoint } from '../contract/joint.ts';
import { showQuantity } from '../text/number.ts';

/**
 * One sentence about a joint's torques over time: the newest breakout against the tightening before it.
 *
 * Equation: R = T_breakout / T_installed, with the median and the largest reading.
 * @param points torques in N·m, in order of time
 * @returns a sentence; says what is missing when there is too little to compare
 * @example chartFinding([]) // 'No torque has been recorded for this joint.'
 * @source median and largest reading against the torque before; common practice
 */
export function chartFinding(points: readonly ChartPoint[]): string {
  if (points.length === 0) return 'No torque has been recorded for this joint.';
  const breakout = points.findLast((point) => point.kind === 'breakout');
  if (breakout === undefined) {
    const last = points.at(-1);
    return last === undefined
      ? 'No torque has been recorded for this joint.'
      : `Tightened to ${showQuantity(last.torque, 'N.m', 3)}; no breakout has been recorded yet.`;
  }
  const before = points
    .slice(0, points.indexOf(breakout))
    .findLast((point) => point.kind === 'tightening' && point.torque > 0);
  return before === undefined ? breakoutAlone(breakout) : comparison(before, breakout);
}

function breakoutAlone(breakout: ChartPoint): string {
  return `Broke out at ${showQuantity(breakout.torque, 'N.m', 3)} in the median; the torque it was tightened with is not known, so the two can't be compared.${notTurned(breakout)}`;
}

function comparison(before: ChartPoint, breakout: ChartPoint): string {
  const ratio = breakout.torque / before.torque;
  const highest = breakout.highest / before.torque;
  const studs = breakout.readings === 1 ? 'one reading' : `${breakout.readings} readings`;
  return `The last breakout took ${ratio.toFixed(2)} × the installed torque in the median of ${studs} and ${most(highest, breakout)}.${notTurned(breakout)}`;
}

/** What a stud that was cut or would not turn would have taken is not known: what was read is the least. */
function most(highest: number, { notTurned: stuck }: ChartPoint): string {
  return stuck === 0 ? `${highest.toFixed(2)} × at most` : `at least ${highest.toFixed(2)} × for the worst`;
}

function notTurned(breakout: ChartPoint): string {
  if (breakout.notTurned === 0) return '';
  return breakout.notTurned === 1
    ? ' One stud was cut or would not turn.'
    : ` ${breakout.notTurned} studs were cut or would not turn.`;
}
