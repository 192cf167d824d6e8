import type { Operation, Placed, Plan, PlanningProblem, Span } from './problem.ts';

/**
 * Holds a plan against everything that was asked of it. Written from the problem alone, so that a fault of whatever made
 * the plan is not a fault of this.
 *
 * @param problem what was to be planned
 * @param plan what came of it
 * @returns every fault in words; none for a plan that keeps everything
 * @example verifyPlan({ horizon: 1, operations: [], lags: [], parts: [], sets: [], crews: [], travel: 0, finishWeight: 0 }, { placed: [], unplaced: [] }) // []
 * @source rules of this program's planning page
 */
export function verifyPlan(problem: PlanningProblem, plan: Plan): string[] {
  const byKey = new Map(plan.placed.map((one) => [one.key, one]));
  return [
    ...countFaults(problem, plan),
    ...plan.placed.flatMap((one) => placeFaults(problem, one)),
    ...problem.operations.flatMap((operation) => lockFaults(operation, byKey.get(operation.key))),
    ...lagFaults(problem, byKey),
    ...clashes(problem, plan.placed),
  ];
}

function countFaults({ operations }: PlanningProblem, { placed, unplaced }: Plan): string[] {
  const known = new Set(operations.map(({ key }) => key));
  const told = [...placed.map(({ key }) => key), ...unplaced];
  return [
    ...operations
      .filter(({ key }) => told.filter((each) => each === key).length !== 1)
      .map(
        ({ name, key }) => `${name} stands ${told.filter((each) => each === key).length} times in the plan`,
      ),
    ...told.filter((key) => !known.has(key)).map((key) => `${key} was not asked for`),
  ];
}

const inside = (spans: readonly Span[], { start, end }: Placed) =>
  spans.some(({ from, until }) => start >= from && end <= until);

function placeFaults(problem: PlanningProblem, one: Placed): string[] {
  const operation = problem.operations.find(({ key }) => key === one.key);
  if (operation === undefined) return [];
  const { name, window } = operation;
  const option = operation.options.find(({ set }) => set === one.set);
  const crew = operation.crews.find((each) => each.crew === one.crew);
  const parts = problem.sets[one.set]?.parts ?? [];
  return [
    ...(option === undefined ? [`${name} has a set that can not do it`] : []),
    ...(crew === undefined ? [`${name} has a crew that may not do it`] : []),
    ...(option !== undefined && one.end - one.start !== option.steps ? [`${name} has another length`] : []),
    ...(option !== undefined && one.end > option.until ? [`${name} ends after its set is in date`] : []),
    ...(crew !== undefined && one.end > crew.until ? [`${name} ends after its crew may do it`] : []),
    ...(one.start < window.from || one.end > window.until || one.start < 0 || one.end > problem.horizon
      ? [`${name} lies outside its window`]
      : []),
    ...(inside(problem.crews[one.crew]?.works ?? [], one)
      ? []
      : [`${name} lies outside a shift of its crew`]),
    ...parts
      .filter((part) => !inside(problem.parts[part]?.free ?? [], one))
      .map((part) => `${name} uses ${problem.parts[part]?.name} while it is not free`),
  ];
}

function lockFaults({ name, locked }: Operation, placed: Placed | undefined): string[] {
  if (locked === null || placed === undefined) return [];
  const kept = placed.set === locked.set && placed.crew === locked.crew && placed.start === locked.start;
  return kept ? [] : [`${name} is fixed and was moved`];
}

function lagFaults({ lags, operations }: PlanningProblem, byKey: ReadonlyMap<string, Placed>): string[] {
  return lags.flatMap(({ before, after, steps, why }) => {
    const late = operations[after];
    const early = operations[before];
    const placed = byKey.get(late?.key ?? '');
    if (placed === undefined) return [];
    const first = byKey.get(early?.key ?? '');
    if (first === undefined) return [`${late?.name} is planned without ${early?.name} (${why})`];
    return placed.start >= first.end + steps
      ? []
      : [`${late?.name} begins too soon after ${early?.name} (${why})`];
  });
}

/** One part, or one crew, in two places. */
function clashes(problem: PlanningProblem, placed: readonly Placed[]): string[] {
  const areaOf = new Map(problem.operations.map(({ key, area }) => [key, area]));
  const nameOf = new Map(problem.operations.map(({ key, name }) => [key, name]));
  const partUses = new Map<number, Placed[]>();
  const crewUses = new Map<number, Placed[]>();
  const note = (uses: Map<number, Placed[]>, thing: number, one: Placed) =>
    uses.set(thing, [...(uses.get(thing) ?? []), one]);
  for (const one of placed) {
    for (const part of problem.sets[one.set]?.parts ?? []) note(partUses, part, one);
    note(crewUses, one.crew, one);
  }
  const named: [string, Placed[]][] = [
    ...[...partUses].map(([part, own]): [string, Placed[]] => [problem.parts[part]?.name ?? '', own]),
    ...[...crewUses].map(([crew, own]): [string, Placed[]] => [`crew ${problem.crews[crew]?.name}`, own]),
  ];
  return named.flatMap(([thing, own]) => {
    const rising = own.toSorted((a, b) => a.start - b.start);
    return rising.slice(1).flatMap((next, index) => {
      const before = rising[index];
      if (before === undefined) return [];
      const travel = areaOf.get(before.key) === areaOf.get(next.key) ? 0 : problem.travel;
      return next.start >= before.end + travel
        ? []
        : [`${thing} is at ${nameOf.get(before.key)} and ${nameOf.get(next.key)} at once`];
    });
  });
}
