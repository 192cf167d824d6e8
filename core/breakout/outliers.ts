import { medianOf } from '../statistics/sample.ts';

/** Readings a middle and a spread can be told from without the one that stands apart. */
const NEEDED = 5;
/** Modified z-score above which a reading is looked at. */
const LIMIT = 3.5;
/** Median absolute deviation over standard deviation of a normal sample. */
const CONSISTENT = 0.6745;
/** Bolts that differ by less than this part do not differ. */
const LEAST_APART = 0.05;

/** A reading that stands apart from the others of its opening. */
export interface ReadingOutlier {
  readonly index: number;
  /** Modified z-score. */
  readonly score: number;
  readonly reason: string;
}

/**
 * Readings that stand apart from the others of one opening, on ln R.
 *
 * Equation: M = 0.6745·(x − median)/median|x − median|, apart when |M| > 3.5.
 * @param ratios R of each bolt, 1, above 0; null for one that was not read or did not turn
 * @returns places with reason; none below five readings, and none where most are equal but for one small step
 * @example readingOutliers([1, 1.02, 0.98, 1.01, 0.99, 2])[0]?.index // 5
 * @source B. Iglewicz and D. C. Hoaglin, How to Detect and Handle Outliers (1993), as in NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17
 */
export function readingOutliers(ratios: readonly (number | null)[]): ReadingOutlier[] {
  const logs = ratios.map((ratio) => (ratio !== null && ratio > 0 ? Math.log(ratio) : null));
  const known = logs.filter((x) => x !== null);
  const middle = medianOf(known);
  if (middle === null || known.length < NEEDED) return [];
  // Where most readings are equal the median deviation is nothing; a step of the scale then stands for it.
  const spread = Math.max(
    medianOf(known.map((x) => Math.abs(x - middle))) ?? 0,
    (LEAST_APART * CONSISTENT) / LIMIT,
  );
  return logs.flatMap((x, index) => {
    if (x === null) return [];
    const score = (CONSISTENT * (x - middle)) / spread;
    if (Math.abs(score) <= LIMIT) return [];
    const times = Math.exp(x - middle).toFixed(2);
    const reason =
      score > 0
        ? `${times} × the middle of this opening: galled, corroded or bent, or a wrong reading`
        : `${times} × the middle of this opening: lost load, a stud that is cracked or was never tight, or a wrong reading`;
    return [{ index, score, reason }];
  });
}
