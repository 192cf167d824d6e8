import { describe, expect, test } from 'vitest';
import { calendarOf } from '../../core/planning/calendar.ts';
import { listSchedule } from '../../core/planning/list-schedule.ts';
import { lowerBound, planCost } from '../../core/planning/objective.ts';
import { planCampaign } from '../../core/planning/plan-campaign.ts';
import type { Placed, Plan, PlanningProblem } from '../../core/planning/problem.ts';
import { verifyPlan } from '../../core/planning/verify-plan.ts';
import { allPlans, drawn, operation, problem } from './planning-problems.ts';

function planned(asked: PlanningProblem, tries: number, seed = 1) {
  const run = planCampaign(asked, { seed, tries });
  for (let next = run.next(); ; next = run.next()) if (next.done) return next.value;
}

const at = (key: string, start: number, changes: Partial<Placed> = {}): Placed => ({
  key,
  set: 0,
  crew: 0,
  start,
  end: start + 3,
  ...changes,
});
const plan = (...placed: Placed[]): Plan => ({ placed, unplaced: [] });

describe('the verifier', () => {
  const two = problem([operation('A'), operation('B')]);

  test('passes a plan that keeps everything', () => {
    expect(verifyPlan(two, plan(at('A', 0), at('B', 3)))).toEqual([]);
    expect(verifyPlan(two, { placed: [at('A', 0)], unplaced: ['B'] })).toEqual([]);
  });

  test.each<[string, PlanningProblem, Plan, RegExp]>([
    ['a part in two places', two, plan(at('A', 0), at('B', 2)), /W-1 is at A and B at once/],
    ['an operation left out in silence', two, plan(at('A', 0)), /B stands 0 times/],
    ['an operation twice', two, plan(at('A', 0), at('A', 3), at('B', 6)), /A stands 2 times/],
    ['one nobody asked for', two, plan(at('A', 0), at('B', 3), at('C', 9)), /C was not asked for/],
    ['another length', two, plan(at('A', 0, { end: 2 }), at('B', 3)), /A has another length/],
    ['a set that can not do it', two, plan(at('A', 0, { set: 1 }), at('B', 3)), /A has a set that can not/],
    [
      'a crew that may not do it',
      two,
      plan(at('A', 0, { crew: 1 }), at('B', 3)),
      /A has a crew that may not/,
    ],
    [
      'work outside its window',
      problem([operation('A', { window: { from: 5, until: 9 } })]),
      plan(at('A', 4)),
      /A lies outside its window/,
    ],
    [
      'work after the set is in date',
      problem([operation('A', { options: [{ set: 0, steps: 3, until: 5 }] })]),
      plan(at('A', 4)),
      /A ends after its set is in date/,
    ],
    [
      'work after the crew may do it',
      problem([operation('A', { crews: [{ crew: 0, until: 5 }] })]),
      plan(at('A', 4)),
      /A ends after its crew may do it/,
    ],
    [
      'work over the end of a shift',
      problem([operation('A')], {
        crews: [
          {
            name: 'Day',
            works: [
              { from: 0, until: 4 },
              { from: 4, until: 9 },
            ],
          },
        ],
      }),
      plan(at('A', 3)),
      /A lies outside a shift/,
    ],
    [
      'a part that is not free',
      problem([operation('A')], { parts: [{ name: 'W-1', free: [{ from: 2, until: 9 }] }] }),
      plan(at('A', 1)),
      /A uses W-1 while it is not free/,
    ],
    [
      'a lag that is not kept',
      { ...two, lags: [{ before: 0, after: 1, steps: 2, why: 'dwell' }] },
      plan(at('A', 0), at('B', 4)),
      /B begins too soon after A \(dwell\)/,
    ],
    [
      'work without what it waits for',
      { ...two, lags: [{ before: 0, after: 1, steps: 0, why: 'order' }] },
      { placed: [at('B', 0)], unplaced: ['A'] },
      /B is planned without A/,
    ],
    [
      'something fixed that was moved',
      problem([operation('A', { locked: { set: 0, crew: 0, start: 2 } })]),
      plan(at('A', 3)),
      /A is fixed and was moved/,
    ],
    [
      'no time to travel',
      problem([operation('A'), operation('B', { area: 1 })], { travel: 2 }),
      plan(at('A', 0), at('B', 4)),
      /at once/,
    ],
  ])('finds %s', (_, asked, made, fault) => {
    expect(verifyPlan(asked, made).join('; ')).toMatch(fault);
  });
});

test('a calendar finds the first room and never promises twice', () => {
  const calendar = calendarOf(
    [
      { from: 0, until: 10 },
      { from: 12, until: 30 },
    ],
    2,
  );
  calendar.take(3, 6, 0);
  expect(calendar.fit(0, 3, 30, 0)).toBe(0);
  expect(calendar.fit(0, 1, 30, 1)).toBe(0);
  expect(calendar.fit(0, 2, 30, 1)).toBe(8);
  expect(calendar.fit(0, 3, 30, 1)).toBe(12);
  expect(calendar.fit(4, 3, 30, 0)).toBe(6);
  expect(calendar.fit(0, 19, 30, 0)).toBeNull();
  expect(calendar.fit(8, 4, 14, 0)).toBeNull();
});

describe('plans of drawn problems', () => {
  const seeds = Array.from({ length: 60 }, (_, index) => index + 1);

  test('keep everything that was asked, and the same seed gives the same plan', () => {
    for (const seed of seeds) {
      const asked = drawn(seed, 12, 24);
      const { plan: made, cost, bound } = planned(asked, 60, seed);
      expect(verifyPlan(asked, made), `seed ${seed}`).toEqual([]);
      expect(bound).toBeLessThanOrEqual(cost + 1e-9);
      expect(planned(asked, 60, seed).plan).toEqual(made);
    }
  });

  test('are as good as the best of all plans there are, and the bound is below it', () => {
    let left = 0;
    for (const seed of seeds.slice(0, 24)) {
      const asked = drawn(seed, 3, 7);
      let best = Number.POSITIVE_INFINITY;
      for (const candidate of allPlans(asked)) {
        const cost = planCost(asked, candidate);
        if (cost < best && verifyPlan(asked, candidate).length === 0) best = cost;
      }
      const found = planned(asked, 200, seed);
      expect(found.cost, `seed ${seed}`).toBeCloseTo(best, 9);
      expect(lowerBound(asked)).toBeLessThanOrEqual(best + 1e-9);
      left += found.plan.unplaced.length;
    }
    expect(left).toBeLessThan(24);
  });

  test('what is fixed stays where it is, and the others go around it', () => {
    const asked = problem([
      operation('A', { weight: 9 }),
      operation('B', { locked: { set: 0, crew: 0, start: 0 } }),
      operation('C'),
    ]);
    const { plan: made } = planned(asked, 50);
    expect(verifyPlan(asked, made)).toEqual([]);
    expect(made.placed.find(({ key }) => key === 'B')).toMatchObject({ start: 0 });
    expect(made.placed.find(({ key }) => key === 'A')).toMatchObject({ start: 3 });
  });

  test('what something fixed waits for is placed early enough for it', () => {
    const heavy = { weight: 9, options: [{ set: 0, steps: 4, until: 100 }] };
    const asked = problem(
      [
        operation('break', { options: [{ set: 0, steps: 4, until: 100 }] }),
        operation('make', { locked: { set: 0, crew: 0, start: 12 } }),
        operation('A', heavy),
        operation('B', heavy),
        operation('C', heavy),
      ],
      { lags: [{ before: 0, after: 1, steps: 0, why: 'order' }] },
    );
    const { plan: made } = planned(asked, 50);
    expect(verifyPlan(asked, made)).toEqual([]);
    expect(made.unplaced).toEqual([]);
  });

  test('of two that are fixed to one time the later named is left out, and the rest is planned', () => {
    const locked = { set: 0, crew: 0, start: 5 };
    const asked = problem([operation('A', { locked }), operation('B', { locked }), operation('C')]);
    const { plan: made } = planned(asked, 20);
    expect(verifyPlan(asked, made)).toEqual([]);
    expect(made.unplaced).toEqual(['B']);
    expect(made.placed).toHaveLength(2);
  });

  test('something fixed whose first half finds no set is left out, and its time is free again', () => {
    const asked = problem(
      [
        operation('break', { options: [] }),
        operation('make', { locked: { set: 0, crew: 0, start: 0 } }),
        operation('C'),
      ],
      { lags: [{ before: 0, after: 1, steps: 0, why: 'order' }] },
    );
    const { plan: made } = planned(asked, 20);
    expect(verifyPlan(asked, made)).toEqual([]);
    expect(made.unplaced).toEqual(['break', 'make']);
    expect(made.placed).toMatchObject([{ key: 'C', start: 0 }]);
  });

  test('parts of one name are two parts', () => {
    const free = [{ from: 0, until: 100 }];
    const asked = problem(
      [
        operation('A'),
        operation('B', { options: [{ set: 1, steps: 3, until: 100 }], crews: [{ crew: 1, until: 100 }] }),
      ],
      {
        parts: [
          { name: 'W', free },
          { name: 'W', free },
        ],
        sets: [
          { name: 'Set 1', parts: [0] },
          { name: 'Set 2', parts: [1] },
        ],
        crews: [
          { name: 'Day', works: free },
          { name: 'Day', works: free },
        ],
      },
    );
    expect(verifyPlan(asked, plan(at('A', 0), at('B', 0, { set: 1, crew: 1 })))).toEqual([]);
  });

  test('what has no set is left out with what waits for it; the rest is planned', () => {
    const asked = problem([operation('A', { options: [] }), operation('B'), operation('C')], {
      lags: [{ before: 0, after: 1, steps: 0, why: 'order' }],
    });
    const made = listSchedule(asked, [1, 2, 0]);
    expect(made.unplaced).toEqual(['A', 'B']);
    expect(made.placed.map(({ key }) => key)).toEqual(['C']);
    expect(verifyPlan(asked, made)).toEqual([]);
  });

  test('jobs that wait for each other are left out, and it comes to an end', () => {
    const asked = problem([operation('A'), operation('B'), operation('C')], {
      lags: [
        { before: 0, after: 1, steps: 0, why: 'order' },
        { before: 1, after: 0, steps: 0, why: 'order' },
      ],
    });
    const { plan: made } = planned(asked, 20);
    expect(made.placed.map(({ key }) => key)).toEqual(['C']);
  });
});
