import type { Plan, PlanningProblem } from './problem.ts';

/**
 * What a plan costs: weighted ends, the last end, and for what is left out more than any place in the campaign would cost.
 *
 * Equation: Σ w·end + f·max end + Σ over unplaced of w·(h + 1) + f·h.
 * @param problem what was to be planned
 * @param plan what came of it
 * @returns cost, weighted steps; lower is better
 * @example planCost({ horizon: 1, operations: [], lags: [], parts: [], sets: [], crews: [], travel: 0, finishWeight: 1 }, { placed: [], unplaced: [] }) // 0
 * @source total weighted completion time; M. L. Pinedo, Scheduling, 5th ed. (2016), 2.1 (from memory)
 */
export function planCost({ operations, horizon, finishWeight }: PlanningProblem, plan: Plan): number {
  const weights = new Map(operations.map(({ key, weight }) => [key, weight]));
  const weightOf = (key: string) => weights.get(key) ?? 0;
  const ends = plan.placed.reduce((sum, { key, end }) => sum + weightOf(key) * end, 0);
  const last = plan.placed.reduce((latest, { end }) => Math.max(latest, end), 0);
  const out = plan.unplaced.reduce(
    (sum, key) => sum + weightOf(key) * (horizon + 1) + finishWeight * horizon,
    0,
  );
  return ends + finishWeight * last + out;
}

/**
 * A cost that no plan can go below.
 *
 * Equation: the largest of Σ w·min(release + least length along its chain, h + 1); of (1/m)·Σ w·C of one machine by Smith's
 * rule + (m − 1)/(2m)·Σ w·p for the m crews that are there at once; and of the sum of the same over groups of sets that
 * share no work; with it f times the longest chain.
 * @param problem what is to be planned
 * @returns bound, weighted steps, at least 0
 * @example lowerBound({ horizon: 1, operations: [], lags: [], parts: [], sets: [], crews: [], travel: 0, finishWeight: 1 }) // 0
 * @source W. L. Eastman, S. Even, I. M. Isaacs, Management Science 11 (1964) 268 (from memory)
 */
export function lowerBound(problem: PlanningProblem): number {
  const { operations, horizon, finishWeight } = problem;
  const steps = operations.map(({ options }) => Math.min(...options.map((option) => option.steps)));
  const ends = earliestEnds(problem, steps);
  const possible = operations.map((_, index) => Number.isFinite(ends[index] ?? Number.POSITIVE_INFINITY));
  const chained = operations.reduce(
    (sum, { weight }, index) => sum + weight * Math.min(ends[index] ?? 0, horizon + 1),
    0,
  );
  const last = Math.min(horizon, Math.max(0, ...ends.filter((end) => Number.isFinite(end))));
  const work = operations
    .map((operation, index) => ({ operation, weight: operation.weight, length: steps[index] ?? 0 }))
    .filter((_, index) => possible[index]);
  const people = pooledBound(work, mostAtOnce(problem), horizon);
  const tools = setPools(problem, work).reduce(
    (sum, pool) => sum + pooledBound(pool.work, pool.sets, horizon),
    0,
  );
  const pooled = Math.max(people, tools);
  return Math.max(chained, pooled) + finishWeight * last;
}

/** First step each could end at if nobody else were there; infinite where no set or no crew can do it. */
function earliestEnds({ operations, lags }: PlanningProblem, steps: readonly number[]): number[] {
  const ends = operations.map(({ window, crews }, index) =>
    crews.length === 0 ? Number.POSITIVE_INFINITY : window.from + (steps[index] ?? Number.POSITIVE_INFINITY),
  );
  // Lags without a ring settle within as many rounds as there are operations; a ring is stopped there.
  for (let round = 0; round < operations.length; round += 1) {
    let moved = false;
    for (const { before, after, steps: lag } of lags) {
      const end = (ends[before] ?? 0) + lag + (steps[after] ?? 0);
      if (end > (ends[after] ?? 0)) {
        ends[after] = end;
        moved = true;
      }
    }
    if (!moved) break;
  }
  return ends;
}

interface Work {
  readonly operation: PlanningProblem['operations'][number];
  readonly weight: number;
  readonly length: number;
}

/** Weighted ends of work that m things alike share, each with one piece of it at a time. */
function pooledBound(work: readonly Work[], machines: number, horizon: number): number {
  let clock = 0;
  let single = 0;
  let own = 0;
  let longest = 0;
  for (const { weight, length } of work.toSorted((a, b) => a.length / a.weight - b.length / b.weight)) {
    clock += length;
    single += weight * clock;
    own += weight * length;
    longest = Math.max(longest, length);
  }
  // Where everything fits, leaving one out costs more than putting it behind all others; where not, this says nothing.
  if (machines === 0 || clock / machines + longest > horizon) return 0;
  return single / machines + ((machines - 1) / (2 * machines)) * own;
}

/** Most crews that are there at one time. */
function mostAtOnce({ crews }: PlanningProblem): number {
  const turns = crews
    .flatMap(({ works }) =>
      works.flatMap(({ from, until }) => [
        { at: from, by: 1 },
        { at: until, by: -1 },
      ]),
    )
    .sort((a, b) => a.at - b.at || a.by - b.by);
  let now = 0;
  let most = 0;
  for (const { by } of turns) {
    now += by;
    most = Math.max(most, now);
  }
  return most;
}

/** Sets that some work may choose between belong together; groups that share no work stand each for itself. */
function setPools({ sets }: PlanningProblem, work: readonly Work[]) {
  const root = sets.map((_, set) => set);
  const find = (set: number): number => {
    let at = set;
    while ((root[at] ?? at) !== at) at = root[at] ?? at;
    return at;
  };
  for (const { operation } of work) {
    const [first] = operation.options;
    for (const { set } of operation.options) if (first !== undefined) root[find(set)] = find(first.set);
  }
  const pools = Map.groupBy(work, ({ operation }) => find(operation.options[0]?.set ?? 0));
  return [...pools].map(([pool, own]) => {
    const members = sets.filter((_, set) => find(set) === pool);
    // A set without a part can be anywhere at once.
    const bounded = members.every(({ parts }) => parts.length > 0);
    return { work: own, sets: bounded ? members.length : 0 };
  });
}
