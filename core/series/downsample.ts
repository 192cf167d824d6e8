import type { ChartPoint } from '../contract/joint.ts';

/**
 * Thins a time series for drawing: in each of `width` columns the lowest and the highest point stay, and so do the
 * first, the last and every point with studs that did not turn.
 *
 * @param points in order of time
 * @param width columns of the drawing, whole, 1 or more
 * @returns points in their order; all of them when they fit two to a column
 * @example downsample([1, 5, 3, 2].map((torque) => ({ torque, highest: torque, notTurned: 0 })), 1).length // 3: first,
 * highest, last
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
  points.forEach((point, index) => {
    if (point.notTurned > 0) kept.add(index);
  });
  return points.filter((_, index) => kept.has(index));
}

function keepExtremes(points: readonly ChartPoint[], from: number, to: number, kept: Set<number>): void {
  let low = from;
  let high = from;
  for (let index = from; index < to; index++) {
    if ((points[index]?.torque ?? 0) < (points[low]?.torque ?? 0)) low = index;
    if ((points[index]?.highest ?? 0) > (points[high]?.highest ?? 0)) high = index;
  }
  kept.add(low);
  kept.add(high);
}
