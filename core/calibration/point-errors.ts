import type { JudgedPoint } from './decision.ts';
import type { IntendedLine } from './delivered-error.ts';
import type { TorquePoint } from './line.ts';

/** Error of one certified point against the line settings were made by. */
export interface PointError extends JudgedPoint {
  /** Pa */
  readonly pressure: number;
}

/**
 * Errors of a certificate's points against the line that settings were made by until then.
 *
 * Equation: e = (T − Ti(p))/Ti(p); U(e) = U·T/Ti, U as a fraction of the measured torque.
 * @param points as measured, Pa and N·m
 * @param intended line settings were made by, SI
 * @param expanded expanded uncertainty of the reference, fraction of torque, 1, at least 0; null when not stated
 * @returns one error per point, to be decided on; null where the line gives no torque to compare with
 * @example pointErrors([{ pressure: 3e7, torque: 414, direction: 'up' }], { intercept: 0, slope: 1.5e-5 }, 0.01)[0]?.error // -0.08
 * @source sign as a delivered error, see `decision.ts` for ISO 6789; JCGM 100:2008 (GUM), 5.1.6
 */
export function pointErrors(
  points: readonly TorquePoint[],
  intended: IntendedLine,
  expanded: number | null,
): PointError[] {
  return points.map(({ pressure, torque }) => {
    const aim = intended.intercept + intended.slope * pressure;
    if (!(aim > 0)) return { pressure, error: null, expanded: null };
    return {
      pressure,
      error: (torque - aim) / aim,
      expanded: expanded === null ? null : (expanded * torque) / aim,
    };
  });
}
