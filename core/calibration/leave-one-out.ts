import { compute, type Outcome, within } from '../findings/outcome.ts';
import { outlierLimit } from '../uncertainty/student-t.ts';
import { type LinePoint, weightedLine } from './weighted-line.ts';

/** How a point stands against the line through all the others. */
export interface DeletedResidual {
  readonly index: number;
  /** Distance from the line fitted without the point; null when the others lie at one abscissa and give no line. */
  readonly residual: number | null;
  /** Its standard uncertainty, from the scatter of the others; null as above. */
  readonly uncertainty: number | null;
  /**
   * Residual over uncertainty, externally studentised; null without a line, and when the others lie exactly on theirs, so
   * that no scatter is known to hold the point against.
   */
  readonly studentised: number | null;
  readonly outlying: boolean;
}

export interface LeaveOneOut {
  readonly points: readonly DeletedResidual[];
  /** Index of the point farthest out; null when none can be judged. */
  readonly farthest: number | null;
  /** Largest size of a studentised residual; null as above. */
  readonly largest: number | null;
  /** What all points of a good certificate stay under together. */
  readonly limit: number;
}

/** Parts of the largest ordinate below which a difference is rounding. */
const ROUNDING = 1e-12;

/**
 * Fits the line without each point in turn and tells how far the point lies from it.
 *
 * Equation: d = r/(1 − h); s₍ᵢ₎² = ((n − 2)·s² − w·r²/(1 − h))/(n − 3); u(d) = s₍ᵢ₎/√(w·(1 − h)); t = d/u(d) against
 * Student's t at α/(2n), ν = n − 3.
 * @param points at least 4, weighted as in `weightedLine`
 * @param risk α, 1, from 0.0001 to 0.5: chance of calling a point of a good certificate an outlier
 * @returns every point's deleted residual and which lies farthest out
 * @example leaveOneOut([[0, 0.1], [1, 0.9], [2, 2.1], [3, 2.9], [4, 9]].map(([x, y]) => ({ x, y, u: null })), 0.05).value?.farthest // 4
 * @source R. D. Cook and S. Weisberg, Residuals and Influence in Regression (1982), 2.2.1 and 2.2.2 (from memory)
 */
export function leaveOneOut(points: readonly LinePoint[], risk: number): Outcome<LeaveOneOut> {
  const enough = compute(
    { n: within('n', 'number of points', points.length, [4, 1000], 'measure at least four points') },
    ({ n }) => n,
  );
  if (enough.value === null) return enough;
  const line = weightedLine(points);
  if (line.value === null) return line;
  const limit = outlierLimit(enough.value, risk);
  if (limit.value === null) return limit;
  const { leverages, weights, weighting } = line.value;
  // Without the one point that states no uncertainty the others must not turn to weights of their own.
  const used = weighting === 'equal' ? points.map((point) => ({ ...point, u: null })) : points;
  const judged = used.map((point, index) => {
    const others = used.filter((_, i) => i !== index);
    const place = { index, weight: weights[index] ?? 1, free: 1 - (leverages[index] ?? 0) };
    return judge(place, point, others, limit.value);
  });
  const farthest = judged.reduce<DeletedResidual | null>(
    (most, one) => (size(one) > size(most) ? one : most),
    null,
  );
  return {
    value: {
      points: judged,
      farthest: farthest?.index ?? null,
      largest: farthest === null || farthest.studentised === null ? null : Math.abs(farthest.studentised),
      limit: limit.value,
    },
    missing: [],
  };
}

/** Where a point stands in the fit of all: its weight, and the part of its fitted value that is not its own. */
interface Place {
  readonly index: number;
  readonly weight: number;
  readonly free: number;
}

function judge(
  { index, weight, free }: Place,
  point: LinePoint,
  others: readonly LinePoint[],
  limit: number,
): DeletedResidual {
  const line = weightedLine(others).value;
  // A point that alone decides its fitted value leaves no line behind when it goes.
  if (line === null || free < 1e-9) {
    return { index, residual: null, uncertainty: null, studentised: null, outlying: false };
  }
  const residual = point.y - (line.intercept + line.slope * point.x);
  // The others' scatter is of a point of their mean weight; this one's own weight decides how far it may lie.
  const variance = (line.residualDeviation ** 2 * (others.length + 1 - weight)) / others.length;
  const uncertainty = Math.sqrt(variance / (weight * free));
  const rounding = ROUNDING * Math.max(...others.map(({ y }) => Math.abs(y)), Math.abs(point.y));
  if (line.residualDeviation <= rounding) {
    // The others lie on their line to the last digit: any distance from it stands out, and none has a size.
    return { index, residual, uncertainty, studentised: null, outlying: Math.abs(residual) > 1e3 * rounding };
  }
  const studentised = residual / uncertainty;
  return { index, residual, uncertainty, studentised, outlying: Math.abs(studentised) > limit };
}

function size(point: DeletedResidual | null): number {
  if (point === null) return 0;
  if (point.studentised !== null) return Math.abs(point.studentised);
  return point.outlying ? Number.POSITIVE_INFINITY : 0;
}
