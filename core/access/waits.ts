/** Wrong secrets in a row that cost nothing but the time to type them. */
const FREE_TRIES = 5;

const FIRST_WAIT_S = 30;
const LONGEST_WAIT_S = 3600;

/** A name left alone for so long starts afresh. */
const FORGOTTEN_AFTER_S = 24 * 3600;

/** All names together: so many wrong secrets within this time, then everybody waits until it has passed. */
export const EVERYBODY = { tries: 40, within: 600 } as const;

/** What is kept of wrong secrets: how many in a row, and when the last one was. */
export interface WrongSecrets {
  readonly count: number;
  /** Moment of the last one, s since 1970. */
  readonly last: number;
}

/**
 * Wait after wrong secrets in a row.
 *
 * Equation: 0 below five; then 30 s · 2^(n − 5), at most an hour.
 * @param count n, wrong secrets in a row, 1, whole, at least 0
 * @returns seconds until the next try is looked at
 * @example waitAfter(7) // 120 s
 * @source rule of this program; growing waits are common practice
 */
export function waitAfter(count: number): number {
  if (count < FREE_TRIES) return 0;
  return Math.min(LONGEST_WAIT_S, FIRST_WAIT_S * 2 ** Math.min(count - FREE_TRIES, 20));
}

/**
 * Moment from which a name is looked at again. A clock that was set back does not make a wait longer than it is.
 *
 * Equation: last wrong secret + wait.
 * @param wrong what is kept of the name; null when nothing is
 * @param now moment of the try, s since 1970, any
 * @returns s since 1970; null when a try is looked at now
 * @example nextTry({ count: 5, last: 1000 }, 1010) // 1030 s
 * @source rule of this program
 */
export function nextTry(wrong: WrongSecrets | null, now: number): number | null {
  if (wrong === null) return null;
  const from = Math.min(wrong.last, now) + waitAfter(wrong.count);
  return from > now ? from : null;
}

/**
 * What is kept after one more wrong secret of a name.
 *
 * @param wrong what was kept before; null when nothing was
 * @param now moment of the try, s since 1970, any
 * @returns the count with this one, and its moment
 * @example afterWrong({ count: 4, last: 1000 }, 1010).count // 5
 * @source rule of this program
 */
export function afterWrong(wrong: WrongSecrets | null, now: number): WrongSecrets {
  const fresh = wrong === null || now - wrong.last > FORGOTTEN_AFTER_S;
  return { count: (fresh ? 0 : wrong.count) + 1, last: now };
}
