import { type Calendar, calendarOf } from './calendar.ts';
import type { Operation, Placed, Plan, PlanningProblem } from './problem.ts';

/** Set and crew an operation is held to; the others take those with which they end first. */
export type Choices = ReadonlyMap<number, { readonly set: number; readonly crew: number }>;

const FREE: Choices = new Map();

/**
 * Plan made by placing one operation after the other where it ends first, each after what it waits for. What is fixed is
 * placed before all, and what it waits for early enough for it; something fixed that can't be kept is left out, not moved.
 *
 * @param problem what is to be planned
 * @param order places of all operations in the order they are tried, whole, at least 0, each once
 * @param choices by the place of an operation; none by default
 * @returns plan; what finds no room, or waits for what found none, is left out
 * @example listSchedule({ horizon: 1, operations: [], lags: [], parts: [], sets: [], crews: [], travel: 0, finishWeight: 0 }, []).placed // []
 * @source serial schedule generation; R. Kolisch, European J. Operational Research 90 (1996) 320 (from memory)
 */
export function listSchedule(
  problem: PlanningProblem,
  order: readonly number[],
  choices: Choices = FREE,
): Plan {
  // Each round leaves out at least one fixed operation more, so it comes to an end.
  for (let out: ReadonlySet<number> = new Set(); ; ) {
    const { plan, broken } = attempt(problem, order, choices, out);
    if (broken.size === 0) return plan;
    out = new Set([...out, ...broken]);
  }
}

interface Attempt {
  readonly plan: Plan;
  /** Fixed operations that could not be kept where they are. */
  readonly broken: ReadonlySet<number>;
}

function attempt(
  problem: PlanningProblem,
  order: readonly number[],
  choices: Choices,
  out: ReadonlySet<number>,
): Attempt {
  const { operations, lags, parts, crews, travel } = problem;
  const partCalendars = parts.map(({ free }) => calendarOf(free, travel));
  const crewCalendars = crews.map(({ works }) => calendarOf(works, travel));
  const waits = Map.groupBy(lags, ({ after }) => after);
  const latest = latestEnds(problem, out);
  const placed = new Map<number, Placed>();
  const broken = new Set<number>();

  const calendarsOf = (set: number, crew: number) => [
    ...(problem.sets[set]?.parts ?? []).flatMap((part) => partCalendars[part] ?? []),
    ...[crewCalendars[crew]].filter((calendar) => calendar !== undefined),
  ];
  const take = (index: number, { area }: Operation, one: Placed) => {
    for (const calendar of calendarsOf(one.set, one.crew)) calendar.take(one.start, one.end, area);
    placed.set(index, one);
  };

  for (const { index, operation, one } of locksOf(problem, out)) {
    const last = Math.min(operation.window.until, problem.horizon);
    const room =
      one.start >= operation.window.from &&
      one.end <= last &&
      calendarsOf(one.set, one.crew).every(
        (calendar) => calendar.fit(one.start, one.end - one.start, one.end, operation.area) === one.start,
      );
    if (room) take(index, operation, one);
    else broken.add(index);
  }

  const tried = new Set<number>();
  const place = (index: number): void => {
    if (tried.has(index)) return;
    tried.add(index);
    const operation = operations[index];
    if (operation === undefined || out.has(index)) return;
    let release = operation.window.from;
    for (const { before, steps } of waits.get(index) ?? []) {
      place(before);
      const earlier = placed.get(before);
      if (earlier === undefined) {
        if (placed.delete(index)) broken.add(index);
        return;
      }
      release = Math.max(release, earlier.end + steps);
    }
    const fixed = placed.get(index);
    if (fixed !== undefined) {
      if (fixed.start < release) broken.add(index);
      return;
    }
    const until = Math.min(operation.window.until, latest[index] ?? Number.POSITIVE_INFINITY);
    const asked = held({ ...operation, window: { from: release, until } }, choices.get(index));
    const found = firstEnd(problem, asked, release, partCalendars, crewCalendars);
    if (found !== null) take(index, operation, found);
  };
  for (const index of order) place(index);
  const plan = {
    placed: operations.flatMap((_, index) => placed.get(index) ?? []),
    unplaced: operations.flatMap(({ key }, index) => (placed.has(index) ? [] : [key])),
  };
  return { plan, broken };
}

/** What is fixed, the earliest first. */
function locksOf({ operations }: PlanningProblem, out: ReadonlySet<number>) {
  return operations
    .flatMap((operation, index) => {
      const { locked, options, crews, key } = operation;
      const option = options.find(({ set }) => set === locked?.set);
      const known = crews.some(({ crew }) => crew === locked?.crew);
      if (locked === null || option === undefined || !known || out.has(index)) return [];
      return [{ index, operation, one: { key, ...locked, end: locked.start + option.steps } }];
    })
    .sort((a, b) => a.one.start - b.one.start || a.index - b.index);
}

/** Step by which each has to end so that what is fixed behind it can stay; infinite where nothing is. */
function latestEnds(problem: PlanningProblem, out: ReadonlySet<number>): number[] {
  const { operations, lags } = problem;
  const latest = operations.map(() => Number.POSITIVE_INFINITY);
  const lengths = operations.map(({ options }) => Math.min(...options.map(({ steps }) => steps)));
  for (const { index, one } of locksOf(problem, out)) {
    latest[index] = one.end;
    lengths[index] = one.end - one.start;
  }
  for (let round = 0; round < operations.length; round += 1) {
    let moved = false;
    for (const { before, after, steps } of lags) {
      const end = (latest[after] ?? Number.POSITIVE_INFINITY) - (lengths[after] ?? 0) - steps;
      if (end < (latest[before] ?? Number.POSITIVE_INFINITY)) {
        latest[before] = end;
        moved = true;
      }
    }
    if (!moved) break;
  }
  return latest;
}

function held(
  operation: Operation,
  choice: { readonly set: number; readonly crew: number } | undefined,
): Operation {
  if (choice === undefined) return operation;
  return {
    ...operation,
    options: operation.options.filter(({ set }) => set === choice.set),
    crews: operation.crews.filter(({ crew }) => crew === choice.crew),
  };
}

/** Set and crew with which it ends first; the first named of those that end together. */
function firstEnd(
  problem: PlanningProblem,
  { key, area, window, options, crews }: Operation,
  release: number,
  partCalendars: readonly Calendar[],
  crewCalendars: readonly Calendar[],
): Placed | null {
  let best: Placed | null = null;
  for (const { set, steps, until } of options) {
    const parts = (problem.sets[set]?.parts ?? []).flatMap((part) => partCalendars[part] ?? []);
    for (const option of crews) {
      const crew = crewCalendars[option.crew];
      if (crew === undefined) continue;
      const last = Math.min(
        window.until,
        until,
        option.until,
        problem.horizon,
        (best?.end ?? Number.POSITIVE_INFINITY) - 1,
      );
      const start = together([...parts, crew], release, steps, last, area);
      if (start !== null) best = { key, set, crew: option.crew, start, end: start + steps };
    }
  }
  return best;
}

/** First start at which all of them have room. */
function together(
  calendars: readonly Calendar[],
  from: number,
  length: number,
  until: number,
  area: number,
): number | null {
  let start = from;
  for (let settled = false; !settled; ) {
    settled = true;
    for (const calendar of calendars) {
      const next = calendar.fit(start, length, until, area);
      if (next === null) return null;
      if (next > start) {
        start = next;
        settled = false;
      }
    }
  }
  return start;
}
