import { type Calendar, calendarOf } from './calendar.ts';
import type { Operation, Placed, Plan, PlanningProblem } from './problem.ts';

/** Set and crew an operation is held to; the others take those with which they end first. */
export type Choices = ReadonlyMap<number, { readonly set: number; readonly crew: number }>;

const FREE: Choices = new Map();

/**
 * Plan made by placing one operation after the other where it ends first, each after what it waits for; what is fixed is
 * placed before all.
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
  const { operations, lags, parts, crews, travel } = problem;
  const partCalendars = parts.map(({ free }) => calendarOf(free, travel));
  const crewCalendars = crews.map(({ works }) => calendarOf(works, travel));
  const waits = Map.groupBy(lags, ({ after }) => after);
  const placed = new Map<number, Placed>();

  const take = (index: number, { area }: Operation, one: Placed) => {
    for (const part of problem.sets[one.set]?.parts ?? [])
      partCalendars[part]?.take(one.start, one.end, area);
    crewCalendars[one.crew]?.take(one.start, one.end, area);
    placed.set(index, one);
  };

  operations.forEach((operation, index) => {
    const { locked, options, key } = operation;
    const option = options.find(({ set }) => set === locked?.set);
    if (locked === null || option === undefined) return;
    take(index, operation, { key, ...locked, end: locked.start + option.steps });
  });

  const tried = new Set<number>();
  const place = (index: number): void => {
    if (tried.has(index)) return;
    tried.add(index);
    const operation = operations[index];
    if (operation === undefined) return;
    let release = operation.window.from;
    for (const { before, steps } of waits.get(index) ?? []) {
      place(before);
      const earlier = placed.get(before);
      if (earlier === undefined) {
        placed.delete(index);
        return;
      }
      release = Math.max(release, earlier.end + steps);
    }
    if (placed.has(index)) return;
    const found = firstEnd(
      problem,
      held(operation, choices.get(index)),
      release,
      partCalendars,
      crewCalendars,
    );
    if (found !== null) take(index, operation, found);
  };
  for (const index of order) place(index);
  return {
    placed: operations.flatMap((_, index) => placed.get(index) ?? []),
    unplaced: operations.flatMap(({ key }, index) => (placed.has(index) ? [] : [key])),
  };
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
