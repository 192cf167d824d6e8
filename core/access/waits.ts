/** Wrong secrets in a row that cost nothing but the time to type them. */
const FREE_TRIES = 5;

const FIRST_WAIT_S = 30;
const LONGEST_WAIT_S = 3600;

/** A name left alone for so long starts afresh. */
const FORGOTTEN_AFTER_S = 24 * 3600;

/** All names together: so many wrong secrets within this time, then everybody waits until it has passed. */
const OF_ALL = { tries: 40, within: 600 } as const;

/** What is kept of wrong secrets: how many, and a moment: of the last in a row, or of the first of all names. */
export interface WrongSecrets {
  readonly count: number;
  /** s since 1970. */
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

/**
 * Moment from which any name is looked at again, after too many wrong secrets of all names together.
 *
 * Equation: first wrong secret of the ten minutes + 600 s, once there are forty.
 * @param wrong how many since the first of them, and its moment; null when there are none
 * @param now moment of the try, s since 1970, any
 * @returns s since 1970; null when a try is looked at now
 * @example nextTryOfAll({ count: 40, last: 1000 }, 1200) // 1600 s
 * @source rule of this program
 */
export function nextTryOfAll(wrong: WrongSecrets | null, now: number): number | null {
  if (wrong === null || wrong.count < OF_ALL.tries) return null;
  const from = wrong.last + OF_ALL.within;
  return now < wrong.last || from <= now ? null : from;
}

/**
 * What is kept after one more wrong secret of any name.
 *
 * @param wrong what was kept before; null when nothing was
 * @param now moment of the try, s since 1970, any
 * @returns the count, and the moment of the first that is counted
 * @example afterWrongOfAll({ count: 40, last: 1000 }, 1600).count // 1
 * @source rule of this program
 */
export function afterWrongOfAll(wrong: WrongSecrets | null, now: number): WrongSecrets {
  const fresh = wrong === null || now < wrong.last || now - wrong.last >= OF_ALL.within;
  return fresh ? { count: 1, last: now } : { count: wrong.count + 1, last: wrong.last };
}
