import { uniformSource } from '../uncertainty/draw.ts';
import { type Choices, listSchedule } from './list-schedule.ts';
import { lowerBound, planCost } from './objective.ts';
import type { Plan, PlanningProblem } from './problem.ts';

export interface PlanProgress {
  readonly done: number;
  readonly of: number;
  readonly cost: number;
}

export interface PlannedCampaign {
  readonly plan: Plan;
  readonly cost: number;
  /** No plan costs less. */
  readonly bound: number;
  /** How far the cost may lie above the best one: cost/bound − 1; null where the bound is 0. */
  readonly gap: number | null;
}

/**
 * Plans a campaign: a list schedule by weight and length, then changes of the order that are kept where the plan does not
 * become worse. It ends after so many tries and never by the clock: the same problem and seed give the same plan.
 *
 * @param problem what is to be planned
 * @param options seed, whole; tries, whole, at least 0
 * @returns generator that tells how far it is after every try, and the plan at its end
 * @example planCampaign({ horizon: 1, operations: [], lags: [], parts: [], sets: [], crews: [], travel: 0, finishWeight: 0 }, { seed: 1, tries: 0 }).next().done // true
 * @source order-based local search on serial schedules; R. Kolisch, S. Hartmann, in Project Scheduling (1999), chapter 7 (from memory)
 */
export function* planCampaign(
  problem: PlanningProblem,
  { seed, tries }: { readonly seed: number; readonly tries: number },
): Generator<PlanProgress, PlannedCampaign, void> {
  const bound = lowerBound(problem);
  const uniform = uniformSource(seed);
  let order = firstOrder(problem);
  let choices: Choices = new Map();
  const plan = listSchedule(problem, order);
  let cost = planCost(problem, plan);
  let best = { plan, cost };
  for (let done = 1; done <= tries; done += 1) {
    const next = uniform() < ORDER_MOVES ? changed(order, uniform) : order;
    const nextChoices = next === order ? chosen(problem, choices, uniform) : choices;
    const nextPlan = listSchedule(problem, next, nextChoices);
    const nextCost = planCost(problem, nextPlan);
    // A worse plan is taken now and then, the less the longer it has gone on: that leads out of dead ends.
    const heat = WARMTH * cost * (1 - done / tries);
    if (nextCost <= cost || uniform() < Math.exp((cost - nextCost) / Math.max(heat, Number.MIN_VALUE))) {
      order = next;
      choices = nextChoices;
      cost = nextCost;
    }
    if (nextCost < best.cost) best = { plan: nextPlan, cost: nextCost };
    yield { done, of: tries, cost: best.cost };
  }
  return { ...best, bound, gap: bound > 0 ? best.cost / bound - 1 : null };
}

/** Part of the tries that change the order; the others hold one operation to a set and crew, or free it. */
const ORDER_MOVES = 0.7;

function chosen({ operations }: PlanningProblem, choices: Choices, uniform: () => number): Choices {
  const index = Math.floor(uniform() * operations.length);
  const operation = operations[index];
  const next = new Map(choices);
  if (operation === undefined || next.delete(index)) return next;
  const option = operation.options[Math.floor(uniform() * operation.options.length)];
  const crew = operation.crews[Math.floor(uniform() * operation.crews.length)];
  if (option !== undefined && crew !== undefined) next.set(index, { set: option.set, crew: crew.crew });
  return next;
}

/** Part of the cost by which a worse plan may lie above at first. */
const WARMTH = 0.004;

/** Heavy and short ones first, those that have to end soon before others. */
function firstOrder({ operations }: PlanningProblem): number[] {
  const keys = operations.map(({ weight, options, window }) => {
    const steps = Math.min(...options.map((option) => option.steps));
    return { ratio: steps / weight, until: window.until };
  });
  const apart = (a: number, b: number) => (a === b ? 0 : a < b ? -1 : 1);
  return operations
    .map((_, index) => index)
    .sort(
      (a, b) =>
        apart(keys[a]?.ratio ?? 0, keys[b]?.ratio ?? 0) ||
        apart(keys[a]?.until ?? 0, keys[b]?.until ?? 0) ||
        a - b,
    );
}

/** One operation is moved to another place in the order, or two change places. */
function changed(order: readonly number[], uniform: () => number): number[] {
  const next = [...order];
  const pick = () => Math.floor(uniform() * next.length);
  const [from, to] = [pick(), pick()];
  if (uniform() < 0.5) {
    const [moved] = next.splice(from, 1);
    if (moved !== undefined) next.splice(to, 0, moved);
    return next;
  }
  const [a, b] = [next[from], next[to]];
  if (a !== undefined && b !== undefined) {
    next[from] = b;
    next[to] = a;
  }
  return next;
}
