import { expect, test } from 'vitest';
import { planCampaign } from '../../core/planning/plan-campaign.ts';
import type { PlanningProblem } from '../../core/planning/problem.ts';
import { verifyPlan } from '../../core/planning/verify-plan.ts';

/**
 * The job shop of six jobs on six machines of H. Fisher and G. L. Thompson (in Industrial Scheduling, 1963), as the
 * OR-Library has it under ft06 (data from memory): machine and time of each operation. Its shortest schedule is 55.
 */
const FT06 = [
  [2, 1, 0, 3, 1, 6, 3, 7, 5, 3, 4, 6],
  [1, 8, 2, 5, 4, 10, 5, 10, 0, 10, 3, 4],
  [2, 5, 3, 4, 5, 8, 0, 9, 1, 1, 4, 7],
  [1, 5, 0, 5, 2, 5, 3, 3, 4, 8, 5, 9],
  [2, 9, 1, 3, 4, 5, 5, 4, 0, 3, 3, 1],
  [1, 3, 3, 3, 5, 9, 0, 10, 4, 4, 2, 1],
];
const OPTIMUM = 55;
const HORIZON = 300;
const SMALL = 1e-9;

function shop(): PlanningProblem {
  const machines = 6;
  const all = { from: 0, until: HORIZON };
  const operations = FT06.flatMap((row, job) =>
    Array.from({ length: machines }, (_, place) => {
      const machine = row[2 * place] ?? 0;
      const steps = row[2 * place + 1] ?? 0;
      return {
        key: `${job}.${place}`,
        name: `${job}.${place}`,
        window: all,
        weight: SMALL,
        area: 0,
        options: [{ set: machine, steps, until: HORIZON }],
        crews: [{ crew: machine, until: HORIZON }],
        locked: null,
      };
    }),
  );
  const places = Array.from({ length: machines }, (_, machine) => machine);
  return {
    horizon: HORIZON,
    operations,
    lags: operations.flatMap((_, index) =>
      index % machines === 0 ? [] : [{ before: index - 1, after: index, steps: 0, why: 'order of the job' }],
    ),
    parts: places.map((machine) => ({ name: `machine ${machine}`, free: [all] })),
    sets: places.map((machine) => ({ name: `machine ${machine}`, parts: [machine] })),
    crews: places.map((machine) => ({ name: `crew ${machine}`, works: [all] })),
    travel: 0,
    finishWeight: 1,
  };
}

test('the job shop of Fisher and Thompson is solved to its published optimum of 55', () => {
  const asked = shop();
  const run = planCampaign(asked, { seed: 3, tries: 30_000 });
  let next = run.next();
  while (!next.done) next = run.next();
  const { plan } = next.value;
  expect(verifyPlan(asked, plan)).toEqual([]);
  expect(plan.unplaced).toEqual([]);
  expect(Math.max(...plan.placed.map(({ end }) => end))).toBe(OPTIMUM);
});
