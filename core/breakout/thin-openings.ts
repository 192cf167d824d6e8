import type { Opening } from '../contract/forecast.ts';

/**
 * Thins openings for drawing: in each of `width` columns the lowest and the highest ratio stay, and so do the first, the
 * last and every opening that stands apart, had studs that did not turn, or may have run below its least load.
 *
 * @param openings in order of time
 * @param width columns of the drawing, whole, 1 or more
 * @returns openings in their order; all of them when they fit two to a column
 * @example thinOpenings([], 10).length // 0
 * @source lowest and highest of each column: common practice in drawing series
 */
export function thinOpenings(openings: readonly Opening[], width: number): Opening[] {
  const columns = Math.max(1, Math.floor(width));
  if (openings.length <= 2 * columns) return [...openings];
  const kept = new Set([0, openings.length - 1]);
  for (let column = 0; column < columns; column++) {
    const from = Math.floor((column * openings.length) / columns);
    const to = Math.floor(((column + 1) * openings.length) / columns);
    let low = from;
    let high = from;
    for (let index = from; index < to; index++) {
      if (
        at(openings[index]?.lowest, Number.POSITIVE_INFINITY) <
        at(openings[low]?.lowest, Number.POSITIVE_INFINITY)
      )
        low = index;
      if (at(openings[index]?.highest, 0) > at(openings[high]?.highest, 0)) high = index;
    }
    kept.add(low);
    kept.add(high);
  }
  openings.forEach(({ notTurned, outlier, belowLeast, readings }, index) => {
    const apart = notTurned > 0 || outlier !== null || belowLeast === 'yes';
    if (apart || readings.some((reading) => reading.outlier !== null)) kept.add(index);
  });
  return openings.filter((_, index) => kept.has(index));
}

const at = (value: number | null | undefined, none: number) => value ?? none;
