interface Doubt {
  /** What it multiplies the rate of a joint by. */
  readonly factor: number;
  readonly words: string;
}

/** Where the factors come from, said wherever they are used. */
export const FACTOR_BASIS =
  'Assumption of this program: no public source gives these factors. They only order the list, and a plant with leaks enough on record can do better.';

/** What the register knows of a joint's present assembly that speaks for a leak. */
export const DOUBTS = {
  'nothing recorded': { factor: 2, words: 'nothing is recorded of how it was assembled' },
  unfinished: { factor: 3, words: 'not every stud was tightened' },
  'nuts turned': { factor: 2, words: 'it is not confirmed that the nuts stood still in the last round' },
  'no setting': { factor: 1.5, words: 'it was tightened without an issued setting' },
  'tools in doubt': { factor: 1.5, words: 'something stood against its tools when it was tightened' },
  'tool in a case': { factor: 3, words: 'a tool of its tightening is in an open out-of-tolerance case' },
  'many cycles': { factor: 2, words: 'more thermal cycles since it was made up than the limit given' },
  'deviation open': { factor: 2, words: 'work out of order waits for a decision' },
} as const satisfies Readonly<Record<string, Doubt>>;
export type DoubtName = keyof typeof DOUBTS;

/** Doubts of one joint have causes in common, so their product is held. */
const MOST = 10;

/**
 * What the doubts about a joint multiply its leak rate by.
 *
 * Equation: f = min(Π fi, 10).
 * @param doubts names, each once
 * @returns factor, 1 without doubts, at most 10
 * @example doubtFactor(['unfinished', 'no setting']) // 4.5
 * @source FACTOR_BASIS: assumption of this program
 */
export function doubtFactor(doubts: readonly DoubtName[]): number {
  return Math.min(
    doubts.reduce((product, doubt) => product * DOUBTS[doubt].factor, 1),
    MOST,
  );
}
