import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { groupOrder } from '../../core/sequence/groups.ts';
import { multiToolOrder } from '../../core/sequence/multi-tool.ts';
import { nextBolts, passSteps } from '../../core/sequence/pass-steps.ts';
import { passRows } from '../../core/sequence/passes.ts';
import { PASS_PLANS, type PassPlan } from '../../core/sequence/plans.ts';
import { outOfOrder, type PlannedPass, runStanding, type Stint } from '../../core/sequence/run.ts';
import { starOrder } from '../../core/sequence/star.ts';
import { toolsOf } from '../../core/setting/rules-section.ts';

const COUNTS = Array.from({ length: 97 }, (_, index) => index + 4);

/** A site's plan with everything the program's own do not have: groups of neighbours, and passes of different tools. */
const SITE_PLANS: readonly PassPlan[] = [3, 7].map((groupSize) => ({
  id: `groups of ${groupSize}`,
  name: `Groups of ${groupSize}`,
  source: 'invented for the test',
  groupSize,
  steps: [
    { name: 'Groups', order: 'groups', fraction: 0.5, tools: 1, stopWhen: 'the tool stalls' },
    { name: 'Star', order: 'star', fraction: 1, tools: 2, stopWhen: 'the tool stalls' },
    { name: 'Round', order: 'circular', fraction: 1, tools: 1, stopWhen: 'no nut turns' },
  ],
}));
const PLANS = [...PASS_PLANS, ...SITE_PLANS];

function plannedPasses(plan: PassPlan, count: number): PlannedPass[] {
  const tools = toolsOf(plan);
  const several = tools === 1 ? null : multiToolOrder(count, tools);
  const nothing = { dial: null, set: null, torque: null, load: null };
  const steps = passSteps({
    boltCount: count,
    order: starOrder(count),
    passes: passRows(plan, count, () => nothing),
    toolOrder: several && {
      tools,
      steps: several.steps.map(({ bolts }) => [...bolts]),
      exact: true,
      source: '',
    },
  });
  return plan.steps.map(({ name }, index) => ({ name, steps: steps[index] ?? [] }));
}

const stint = (pass: number, boltsDone: readonly number[], rest: Partial<Stint> = {}): Stint => ({
  pass,
  round: 1,
  boltsDone,
  leftOut: [],
  goRoundAgain: false,
  ...rest,
});

/** One after the other: pass and bolt, in the order the plan says. */
const sequence = (passes: readonly PlannedPass[]) =>
  passes.flatMap(({ steps }, index) =>
    steps.flatMap((step) => step.flatMap((bolt) => (bolt === null ? [] : [{ pass: index + 1, bolt }]))),
  );

type Turn = ReturnType<typeof sequence>[number];

/** What the register holds when the crew has stopped at these places. */
function stintsOf(turns: readonly Turn[], stops: readonly number[]): Stint[] {
  const stints: Stint[] = [];
  turns.forEach(({ pass, bolt }, at) => {
    const last = stints.at(-1);
    if (last === undefined || last.pass !== pass || stops.includes(at)) stints.push(stint(pass, [bolt]));
    else stints[stints.length - 1] = { ...last, boltsDone: [...last.boltsDone, bolt] };
  });
  return stints;
}

describe.each(PLANS)('$name', (plan) => {
  test('wherever the crew stops, the next one goes on with the very next bolt, for every N from 4 to 100', () => {
    for (const count of COUNTS.filter((n) => n >= toolsOf(plan))) {
      const passes = plannedPasses(plan, count);
      const turns = sequence(passes);
      expect(turns).toHaveLength(count * plan.steps.length);
      for (let stop = 0; stop < turns.length; stop++) {
        // Stopped before as well, so that a pass comes in several stints.
        const { state, pass, next, remaining, skipped } = runStanding(
          passes,
          stintsOf(turns.slice(0, stop), [Math.floor(stop / 2), stop - 1]),
        );
        const right = state === 'go on' && pass === turns[stop]?.pass && next[0] === turns[stop]?.bolt;
        if (!right || skipped.length > 0 || remaining.length !== count - (stop % count)) {
          expect.fail(`N ${count}, stopped after ${stop}: ${state}, pass ${pass}, next ${next.join('+')}`);
        }
      }
      expect(runStanding(passes, stintsOf(turns, [])).state).toBe('finished');
    }
  });

  test('stopping and resuming anywhere tightens every bolt exactly as often as the plan says', () => {
    const cases = fc.record({
      count: fc.integer({ min: Math.max(4, toolsOf(plan)), max: 100 }),
      // How many bolts each crew gets done before it stops; the last goes on to the end.
      crews: fc.array(fc.integer({ min: 0, max: 130 }), { maxLength: 6 }),
    });
    fc.assert(
      fc.property(cases, ({ count, crews }) => {
        const passes = plannedPasses(plan, count);
        const stints: Stint[] = [];
        const turned: Turn[] = [];
        for (const most of [...crews, Number.POSITIVE_INFINITY]) {
          let done = 0;
          let own: Stint | null = null;
          for (;;) {
            const { state, pass, next } = runStanding(passes, own === null ? stints : [...stints, own]);
            if (state !== 'go on' || pass === null || done >= most) break;
            if (own !== null && own.pass !== pass) {
              stints.push(own);
              own = null;
            }
            // Several tools may be stopped between them.
            const bolts = next.slice(0, Math.max(1, most - done));
            own = stint(pass, [...(own?.boltsDone ?? []), ...bolts]);
            done += bolts.length;
            turned.push(...bolts.map((bolt) => ({ pass, bolt })));
          }
          if (own !== null) stints.push(own);
        }
        expect(runStanding(passes, stints).state).toBe('finished');
        expect(turned).toEqual(sequence(passes));
        const times = new Map<number, number>();
        for (const { bolt } of turned) times.set(bolt, (times.get(bolt) ?? 0) + 1);
        expect([...times.keys()].toSorted((a, b) => a - b)).toEqual(
          Array.from({ length: count }, (_, index) => index + 1),
        );
        expect(new Set(times.values())).toEqual(new Set([plan.steps.length]));
      }),
      { numRuns: 40 },
    );
  });
});

describe('a run', () => {
  const passes = ['First', 'Second', 'Round'].map((name) => ({ name, steps: [[1], [3], [2], [4]] }));
  const whole = (pass: number, rest: Partial<Stint> = {}) => stint(pass, [1, 3, 2, 4], rest);

  test('a bolt passed over comes before those behind it and is named', () => {
    expect(runStanding(passes, [stint(1, [1, 2])])).toMatchObject({ next: [3], skipped: [3] });
  });

  test('a bolt left out stays out of the later passes, and the rest goes on without it', () => {
    const stints = [stint(1, [1, 2, 4], { leftOut: [3] })];
    expect(runStanding(passes, stints)).toMatchObject({
      state: 'go on',
      pass: 2,
      next: [1],
      remaining: [1, 2, 4],
      leftOut: [3],
      finishedPasses: [1],
    });
    const all = [...stints, stint(2, [1, 2, 4]), stint(3, [1, 2, 4])];
    expect(runStanding(passes, all)).toMatchObject({ state: 'finished', leftOut: [3] });
  });

  test('a bolt that gave way after all is in again', () => {
    const stints = [stint(1, [1], { leftOut: [3] }), stint(1, [3, 2, 4])];
    expect(runStanding(passes, stints)).toMatchObject({ pass: 2, next: [1], leftOut: [] });
  });

  test('a bolt left out after it was done in the same pass does not make the record unclear', () => {
    const stints = [stint(1, [1, 3]), stint(1, [2, 4], { leftOut: [3] })];
    expect(runStanding(passes, stints)).toMatchObject({ state: 'go on', pass: 2, remaining: [1, 2, 4] });
  });

  test('going round again starts the same pass anew, and only its last time round counts', () => {
    const stints = [whole(1), whole(2), whole(3, { goRoundAgain: true })];
    expect(runStanding(passes, stints)).toMatchObject({ pass: 3, round: 2, done: [], next: [1] });
    const again = [...stints, stint(3, [1, 3], { round: 2 })];
    expect(runStanding(passes, again)).toMatchObject({ pass: 3, round: 2, done: [1, 3], next: [2] });
    expect(runStanding(passes, [...stints, whole(3, { round: 2 })]).state).toBe('finished');
  });

  test.each([
    ['a bolt recorded twice', [stint(1, [1, 3, 1])], 'recorded twice'],
    ['a bolt the joint does not have', [stint(1, [9])], 'not in the order'],
    ['a pass begun while one is open', [stint(1, [1]), stint(2, [1])], 'First is not complete'],
    ['a pass the plan does not have', [whole(1), stint(7, [1])], 'no pass 7'],
  ])('%s leaves it unclear, with the reason', (_name, stints, problem) => {
    const found = runStanding(passes, stints);
    expect(found).toMatchObject({ state: 'record unclear', pass: null, next: [] });
    expect(found.problems.join('; ')).toContain(problem);
  });

  test('a step of several tools that a stop cut in half is finished first', () => {
    expect(
      nextBolts(
        [
          [1, 4],
          [2, 5],
          [3, null],
        ],
        [4, 2, 5, 3],
      ),
    ).toEqual([4]);
    expect(
      nextBolts(
        [
          [1, 4],
          [2, 5],
          [3, null],
        ],
        [3],
      ),
    ).toEqual([3]);
    expect(nextBolts([[1, 4]], [])).toEqual([]);
  });

  test('bolts turned out of order are named; those of one step have no order among themselves', () => {
    expect(outOfOrder([[1], [3], [2], [4]], [1, 2, 3, 4])).toEqual([3]);
    expect(
      outOfOrder(
        [
          [1, 4],
          [2, 5],
        ],
        [4, 1, 5, 2],
      ),
    ).toEqual([]);
    expect(
      outOfOrder(
        [
          [1, 4],
          [2, 5],
        ],
        [2, 1, 4],
      ),
    ).toEqual([1, 4]);
  });
});

test('groups hold every bolt of the joint in the pass that follows them', () => {
  const [groups] = plannedPasses(SITE_PLANS[0] ?? PASS_PLANS[0] ?? expect.fail('no plan'), 12);
  expect(groups?.steps.flat()).toEqual(groupOrder(12, 3)?.flat());
});
