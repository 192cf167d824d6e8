import type { ChartPoint } from '../contract/joint.ts';

/**
 * Thins a time series for drawing: in each of `width` columns the lowest and the highest point stay, and so do the
 * first, the last, every point with studs that did not turn and every one that was recorded against a refusal.
 *
 * @param points in order of time
 * @param width columns of the drawing, whole, 1 or more
 * @returns points in their order; all of them when they fit two to a column
 * @example downsample([1, 5, 3, 2].map((torque) => ({ torque, highest: torque, notTurned: 0, refused: false })), 1).length
 * // 3: first, highest, last
 * @source lowest and highest of each column: common practice in drawing series
 */
export function downsample(points: readonly ChartPoint[], width: number): ChartPoint[] {
  const columns = Math.max(1, Math.floor(width));
  if (points.length <= 2 * columns) return [...points];
  const kept = new Set<number>([0, points.length - 1]);
  for (let column = 0; column < columns; column++) {
    const from = Math.floor((column * points.length) / columns);
    const to = Math.floor(((column + 1) * points.length) / columns);
    keepExtremes(points, from, to, kept);
  }
  return points.filter((point, index) => kept.has(index) || point.notTurned > 0 || point.refused);
}

/** A value that is no number says nothing about which is lowest or highest and stands back behind one that is. */
function keepExtremes(points: readonly ChartPoint[], from: number, to: number, kept: Set<number>): void {
  let low: number | null = null;
  let high: number | null = null;
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (let index = from; index < to; index++) {
    const { torque, highest } = points[index] ?? { torque: Number.NaN, highest: Number.NaN };
    if (torque < least) {
      low = index;
      least = torque;
    }
    if (highest > most) {
      high = index;
      most = highest;
    }
  }
  if (low !== null) kept.add(low);
  if (high !== null) kept.add(high);
}
