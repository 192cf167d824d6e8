import type { Operation, Plan, PlanningProblem } from '../../core/planning/problem.ts';
import { uniformSource } from '../../core/uncertainty/draw.ts';

const HORIZON = 100;

export const operation = (key: string, changes: Partial<Operation> = {}): Operation => ({
  key,
  name: key,
  window: { from: 0, until: HORIZON },
  weight: 1,
  area: 0,
  options: [{ set: 0, steps: 3, until: HORIZON }],
  crews: [{ crew: 0, until: HORIZON }],
  locked: null,
  ...changes,
});

export const problem = (
  operations: readonly Operation[],
  changes: Partial<PlanningProblem> = {},
): PlanningProblem => ({
  horizon: HORIZON,
  operations,
  lags: [],
  parts: [{ name: 'W-1', free: [{ from: 0, until: HORIZON }] }],
  sets: [{ name: 'Set 1', parts: [0] }],
  crews: [{ name: 'Day', works: [{ from: 0, until: HORIZON }] }],
  travel: 0,
  finishWeight: 0,
  ...changes,
});

/** A small problem with windows, shifts, shared parts, travel and lags, drawn from a seed. */
export function drawn(seed: number, count: number, horizon: number): PlanningProblem {
  const uniform = uniformSource(seed);
  for (let warm = 0; warm < 40; warm += 1) uniform();
  const whole = (least: number, most: number) => least + Math.floor(uniform() * (most - least + 1));
  const shared = uniform() < 0.5;
  const parts = [
    { name: 'W-1', free: [{ from: 0, until: horizon }] },
    { name: 'K-1', free: [{ from: 0, until: whole(Math.ceil(horizon / 2), horizon) }] },
    { name: 'W-2', free: [{ from: whole(0, 2), until: horizon }] },
  ];
  const night = whole(Math.ceil(horizon / 2), horizon);
  const operations = Array.from({ length: count }, (_, index) => {
    const from = whole(0, 2);
    const both = uniform() < 0.6;
    const options = [{ set: 0, steps: whole(1, 3), until: horizon }];
    if (both) options.push({ set: 1, steps: whole(1, 3), until: whole(horizon - 2, horizon) });
    return operation(`O${index}`, {
      window: { from, until: horizon },
      weight: whole(1, 4),
      area: whole(0, 1),
      options,
      crews:
        uniform() < 0.5 ? [{ crew: 0, until: horizon }] : [0, 1].map((crew) => ({ crew, until: horizon })),
    });
  });
  return {
    horizon,
    operations,
    lags: count > 2 && uniform() < 0.7 ? [{ before: 0, after: 1, steps: whole(0, 2), why: 'dwell' }] : [],
    parts,
    sets: [
      { name: 'Set 1', parts: [0, 1] },
      { name: 'Set 2', parts: shared ? [2, 1] : [2] },
    ],
    crews: [
      { name: 'Day', works: [{ from: 0, until: night }] },
      { name: 'Night', works: [{ from: 1, until: horizon }] },
    ],
    travel: whole(0, 1),
    finishWeight: whole(0, 2),
  };
}

/** Every plan there is, by trying all starts, sets and crews of every operation, those left out among them. */
export function* allPlans({
  operations,
  horizon,
}: Pick<PlanningProblem, 'operations' | 'horizon'>): Generator<Plan> {
  const [first, ...rest] = operations;
  if (first === undefined) {
    yield { placed: [], unplaced: [] };
    return;
  }
  for (const plan of allPlans({ operations: rest, horizon })) {
    yield { placed: plan.placed, unplaced: [...plan.unplaced, first.key] };
    for (const { set, steps } of first.options) {
      for (const { crew } of first.crews) {
        for (let start = 0; start + steps <= horizon; start += 1) {
          const placed = { key: first.key, set, crew, start, end: start + steps };
          yield { placed: [...plan.placed, placed], unplaced: plan.unplaced };
        }
      }
    }
  }
}
