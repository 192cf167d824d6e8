/** Progress of one pass as the crew recorded it. */
export interface PassProgress {
  readonly name: string;
  /** Bolt numbers in the order they have to be turned. */
  readonly order: readonly number[];
  /** Bolts done in this pass, as recorded. */
  readonly done: readonly number[];
}

/** Where to go on, or why that can't be said. */
export interface Continuation {
  readonly state: 'go on' | 'finished' | 'record unclear';
  /** Pass to go on with, counted from 0; null when finished or unclear. */
  readonly pass: number | null;
  readonly passName: string | null;
  readonly next: number | null;
  /** Bolts of this pass still to be turned, in order. */
  readonly remaining: readonly number[];
  /** Bolts passed over: earlier in the order than one that is done. */
  readonly skipped: readonly number[];
  /** What is wrong with the record, in words. */
  readonly problems: readonly string[];
}

/**
 * Where a crew left off: the first pass that is not complete and its next bolt. A bolt that was passed over comes
 * before those behind it.
 *
 * Equation: next = first bolt of the order that is not done, in the first pass that is not complete.
 * @param passes every pass of the plan in order, with the bolts done
 * @returns pass, next bolt and remaining bolts; unclear when the record contradicts the order
 * @example continueFrom([{ name: 'Full', order: [1, 3, 2, 4], done: [1, 3] }]).next // 2
 * @source rule of this program
 */
export function continueFrom(passes: readonly PassProgress[]): Continuation {
  const problems = passes.flatMap(problemsOf).concat(outOfTurn(passes));
  const nothing = { pass: null, passName: null, next: null, remaining: [], skipped: [], problems };
  if (problems.length > 0 || passes.length === 0) return { ...nothing, state: 'record unclear' };
  const index = passes.findIndex(({ order, done }) => done.length < order.length);
  const pass = passes[index];
  if (pass === undefined) return { ...nothing, state: 'finished' };
  const done = new Set(pass.done);
  const remaining = pass.order.filter((bolt) => !done.has(bolt));
  const farthest = pass.order.findLastIndex((bolt) => done.has(bolt));
  return {
    state: 'go on',
    pass: index,
    passName: pass.name,
    next: remaining[0] ?? null,
    remaining,
    skipped: pass.order.slice(0, farthest + 1).filter((bolt) => !done.has(bolt)),
    problems: [],
  };
}

function problemsOf({ name, order, done }: PassProgress): string[] {
  const known = new Set(order);
  const strange = done.filter((bolt) => !known.has(bolt));
  const seen = new Set<number>();
  const twice = done.filter((bolt) => seen.size === seen.add(bolt).size);
  return [
    ...(order.length === 0 ? [`${name}: no order`] : []),
    ...(known.size < order.length ? [`${name}: order names a bolt twice`] : []),
    ...(strange.length > 0 ? [`${name}: bolts ${strange.join(', ')} are not in the order`] : []),
    ...(twice.length > 0 ? [`${name}: bolts ${[...new Set(twice)].join(', ')} recorded twice`] : []),
  ];
}

/** A later pass with bolts done while an earlier one is open can't be told from a slip of the pen. */
function outOfTurn(passes: readonly PassProgress[]): string[] {
  const open = passes.findIndex(({ order, done }) => done.length < order.length);
  if (open < 0) return [];
  return passes
    .slice(open + 1)
    .filter(({ done }) => done.length > 0)
    .map(({ name }) => `${name}: bolts recorded although ${passes[open]?.name} is not complete`);
}
