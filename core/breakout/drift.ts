import { studentProbability } from '../statistics/student.ts';
import { normalQuantile } from '../uncertainty/normal.ts';

/** Half of the shift that is looked for, in deviations of one opening, and the sum that tells of it. */
const SLACK = 0.5;
const LIMIT = 5;
/** Openings before which nothing is said. */
const LEAST = 8;
const FARTHEST = 6;

/** Whether middles of openings move over time. */
export interface Drift {
  readonly state: 'rising' | 'falling' | 'steady' | 'too few to say';
  /** Place of the opening that told of it, and of the first that belongs to the move; counted from 0. */
  readonly seenAt: number | null;
  readonly since: number | null;
}

/**
 * Looks for a move in a series: each value is held against all before it, and what is left is summed up.
 *
 * Equation: z = Φ⁻¹(T_{n−2}(√((n − 1)/n)·(x − x̄)/s)); S⁺ ← max(0, S⁺ + z − ½), S⁻ likewise; a move at S > 5.
 * @param values ln of the middle of each opening, in order of time, any numbers
 * @returns state with the places; 'too few to say' below eight values, steady where all are equal
 * @example driftOf([0, 0.1, -0.1, 0.05, 0, -0.05, 0.1, 0, 0.9, 1, 0.9, 1.1]).state // 'rising'
 * @source D. M. Hawkins, self-starting cusum, The Statistician 36 (1987) 299 (from memory); NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.3, for k = ½ and h = 5
 */
export function driftOf(values: readonly number[]): Drift {
  if (values.length < LEAST) return { state: 'too few to say', seenAt: null, since: null };
  let mean = 0;
  let squares = 0;
  let up = 0;
  let down = 0;
  let upFrom = 0;
  let downFrom = 0;
  for (const [index, value] of values.entries()) {
    if (index >= 2 && squares > 0) {
      const z = scoreOf(value, index, mean, Math.sqrt(squares / (index - 1)));
      if (up === 0) upFrom = index;
      if (down === 0) downFrom = index;
      up = Math.max(0, up + z - SLACK);
      down = Math.max(0, down - z - SLACK);
      if (up > LIMIT) return { state: 'rising', seenAt: index, since: upFrom };
      if (down > LIMIT) return { state: 'falling', seenAt: index, since: downFrom };
    }
    const apart = value - mean;
    mean += apart / (index + 1);
    squares += apart * (value - mean);
  }
  return { state: 'steady', seenAt: null, since: null };
}

/** Normal score of a value against `before` earlier ones. */
function scoreOf(value: number, before: number, mean: number, deviation: number): number {
  const t = (Math.sqrt(before / (before + 1)) * (value - mean)) / deviation;
  const z = normalQuantile(studentProbability(t, before - 1));
  return Math.min(FARTHEST, Math.max(-FARTHEST, z));
}
