import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { continueFrom } from '../../core/sequence/continue.ts';
import { dwellState, LEAST_DWELL } from '../../core/sequence/dwell.ts';
import { groupOrder } from '../../core/sequence/groups.ts';
import { farthestFirst, multiToolOrder } from '../../core/sequence/multi-tool.ts';
import { NO_TURN_MEANING, noTurnCheck } from '../../core/sequence/no-turn.ts';
import { ownOrder } from '../../core/sequence/star.ts';
import { COMMON_STOP, type Stroke, stopVerdict } from '../../core/sequence/stop-rule.ts';

const COUNTS = Array.from({ length: 97 }, (_, index) => index + 4);
const upTo = (count: number) => Array.from({ length: count }, (_, index) => index + 1);
const sorted = (bolts: readonly number[]) => [...bolts].sort((a, b) => a - b);

/** Distance of the centre of some bolts from the middle of the joint, in bolt circle radii. */
function offCentre(bolts: readonly number[], count: number): number {
  const x = bolts.reduce((sum, bolt) => sum + Math.cos((2 * Math.PI * bolt) / count), 0);
  const y = bolts.reduce((sum, bolt) => sum + Math.sin((2 * Math.PI * bolt) / count), 0);
  return Math.hypot(x, y) / Math.max(1, bolts.length);
}

const present = (bolts: readonly (number | null)[]) => bolts.filter((bolt) => bolt !== null);

describe.each([1, 2, 4] as const)('%i tools at the same time', (tools) => {
  test('every bolt is turned once, for every N from 4 to 100', () => {
    for (const count of COUNTS) {
      const steps = multiToolOrder(count, tools)?.steps ?? [];
      expect(sorted(steps.flatMap(({ bolts }) => present(bolts)))).toEqual(upTo(count));
      expect(steps.length).toBe(Math.ceil(count / tools));
      expect(steps.every(({ bolts }) => bolts.length === tools)).toBe(true);
    }
  });

  test('the tools stand evenly, within one bolt where the count can not be divided', () => {
    for (const count of COUNTS) {
      const order = multiToolOrder(count, tools);
      expect(order?.exact).toBe(count % tools === 0);
      for (const { bolts } of order?.steps ?? []) {
        const turning = bolts.flatMap((bolt, tool) => (bolt === null ? [] : [{ bolt, tool }]));
        for (const one of turning) {
          for (const other of turning) {
            const off = Math.abs(other.bolt - one.bolt - ((other.tool - one.tool) * count) / tools);
            expect(off).toBeLessThan(count % tools === 0 ? 1e-9 : 1);
          }
        }
      }
    }
  });

  test('with an even count per tool the joint is in balance after every step', () => {
    if (tools === 1) {
      // One tool can't balance a step; a pair of steps of the star order can.
      expect(offCentre(ownOrder(12).slice(0, 2), 12)).toBeLessThan(1e-9);
      return;
    }
    for (const count of COUNTS.filter((n) => n % tools === 0)) {
      for (const { bolts } of multiToolOrder(count, tools)?.steps ?? []) {
        expect(offCentre(present(bolts), count)).toBeLessThan(1e-9);
      }
    }
  });
});

describe('orders', () => {
  test('a count that is no whole number, too small or too large has none', () => {
    for (const count of [0, -4, 3.5, 401, Number.NaN, Infinity]) {
      expect(multiToolOrder(count, 2)).toBeNull();
      expect(groupOrder(count, 1)).toBeNull();
    }
    expect(multiToolOrder(3, 4)).toBeNull();
    expect([groupOrder(12, 0), groupOrder(12, 13), groupOrder(12, 2.5)]).toEqual([null, null, null]);
  });

  test('farthest first is a permutation, and its second half fills the gaps of its first', () => {
    for (const size of COUNTS) {
      const order = farthestFirst(size);
      expect(sorted(order)).toEqual(upTo(size).map((place) => place - 1));
      expect(order[1]).toBe(Math.floor(size / 2));
    }
  });

  test('groups hold every bolt once, neighbours together, opposite groups in turn', () => {
    for (const count of COUNTS) {
      for (const size of [1, 2, 3, 4]) {
        const groups = groupOrder(count, size) ?? [];
        expect(sorted(groups.flat())).toEqual(upTo(count));
        for (const group of groups) {
          expect(group).toEqual(group.map((_, index) => (group[0] ?? 0) + index));
          expect(group.length).toBeLessThanOrEqual(size);
        }
      }
    }
    expect(groupOrder(12, 3)).toEqual([
      [1, 2, 3],
      [7, 8, 9],
      [4, 5, 6],
      [10, 11, 12],
    ]);
  });
});

describe('where a crew left off', () => {
  const passes = fc
    .record({ count: fc.integer({ min: 4, max: 40 }), passes: fc.integer({ min: 1, max: 5 }) })
    .chain(({ count, passes }) =>
      fc.integer({ min: 0, max: count * passes }).map((done) => ({ count, passes, done })),
    )
    .map(({ count, passes, done }) => ({
      done,
      count,
      passes: Array.from({ length: passes }, (_, pass) => ({
        name: `pass ${pass + 1}`,
        order: ownOrder(count),
        done: ownOrder(count).slice(0, Math.max(0, Math.min(count, done - pass * count))),
      })),
    }));

  test('goes on with the very next bolt of the order, until nothing is left', () => {
    fc.assert(
      fc.property(passes, ({ count, passes, done }) => {
        const found = continueFrom(passes);
        const finished = done === count * passes.length;
        expect(found.state).toBe(finished ? 'finished' : 'go on');
        expect(found.next).toBe(finished ? null : ownOrder(count)[done % count]);
        expect(found.remaining.length).toBe(finished ? 0 : count - (done % count));
        expect(found.skipped).toEqual([]);
      }),
    );
  });

  test('a bolt that was passed over comes first and is named', () => {
    const found = continueFrom([{ name: 'Full', order: [1, 3, 2, 4], done: [1, 2] }]);
    expect(found).toMatchObject({ state: 'go on', next: 3, remaining: [3, 4], skipped: [3] });
  });

  test.each([
    ['a bolt the order does not have', [{ name: 'Full', order: [1, 2], done: [7] }], 'not in the order'],
    ['a bolt recorded twice', [{ name: 'Full', order: [1, 2], done: [1, 1] }], 'recorded twice'],
    ['an empty order', [{ name: 'Full', order: [], done: [] }], 'no order'],
    [
      'a pass begun while one is open',
      [
        { name: 'Third', order: [1, 2], done: [1] },
        { name: 'Full', order: [1, 2], done: [1] },
      ],
      'Third is not complete',
    ],
  ])('%s leaves the record unclear', (_name, record, problem) => {
    const found = continueFrom(record);
    expect(found.state).toBe('record unclear');
    expect(found.next).toBeNull();
    expect(found.problems.join('; ')).toContain(problem);
  });
});

describe('dwell', () => {
  const LAST = '2026-03-16T07:00:00+01:00';

  test('is over exactly after the wait, whatever the offset', () => {
    expect(dwellState(LAST, '2026-03-16T09:59:59Z', LEAST_DWELL)).toMatchObject({
      state: 'waiting',
      remaining: 1,
    });
    expect(dwellState(LAST, '2026-03-16T12:00:00+02:00', LEAST_DWELL)).toMatchObject({
      state: 'due',
      remaining: 0,
    });
  });

  test('time only brings it closer', () => {
    fc.assert(
      fc.property(fc.nat(100_000), fc.nat(100_000), (a, b) => {
        const at = (seconds: number) =>
          dwellState(LAST, new Date(Date.parse(LAST) + seconds * 1000).toISOString(), LEAST_DWELL).remaining;
        expect(at(Math.max(a, b)) ?? Infinity).toBeLessThanOrEqual(at(Math.min(a, b)) ?? -1);
      }),
    );
  });

  test.each([
    [null, '2026-03-16T09:00:00Z', LEAST_DWELL],
    ['yesterday', '2026-03-16T09:00:00Z', LEAST_DWELL],
    ['2026-03-16T07:00:00', '2026-03-16T09:00:00Z', LEAST_DWELL],
    [LAST, '2026-03-15T09:00:00Z', LEAST_DWELL],
    [LAST, '2026-03-16T09:00:00Z', Number.NaN],
    [LAST, '2026-03-16T09:00:00Z', Infinity],
  ])('last %s, now %s, wait %s is not known', (last, now, wait) => {
    expect(dwellState(last, now, wait)).toMatchObject({ state: 'not known', remaining: null, dueAt: null });
  });
});

describe('stop rule', () => {
  const stroke = (reached: number, rotation: number | null): Stroke => ({ reached, rotation });
  const verdict = (strokes: readonly Stroke[], firstPass = false) =>
    stopVerdict(strokes, firstPass, COMMON_STOP).verdict;

  test.each([
    ['no stroke', [], 'go on'],
    ['still turning', [stroke(1, 20)], 'go on'],
    ['turned, then stalls', [stroke(1, 20), stroke(1, 0)], 'bolt done'],
    ['stands from the start of a later pass', [stroke(1, 0)], 'bolt done'],
    ['stalls below the set pressure', [stroke(0.8, 0)], 'stop and ask'],
    ['nobody looked', [stroke(1, 20), stroke(1, null)], 'go on'],
    ['a rotation that can not be', [stroke(1, -5)], 'stop and ask'],
    ['a pressure that can not be', [stroke(Number.NaN, 0)], 'stop and ask'],
  ])('%s', (_name, strokes, expected) => {
    expect(verdict(strokes)).toBe(expected);
  });

  test('a nut that never moves in the first pass stops the work, and the pressure is not raised', () => {
    const { verdict: said, reason } = stopVerdict([stroke(1, 0)], true, COMMON_STOP);
    expect(said).toBe('stop and ask');
    expect(reason).toContain('do not raise the pressure');
  });

  test('a nut that keeps turning is stopped at the site’s limit', () => {
    const limits = { ...COMMON_STOP, mostRotation: 90 };
    expect(stopVerdict([stroke(1, 60), stroke(1, 40)], true, limits).verdict).toBe('stop and ask');
  });

  test('a bolt is never done while its last stroke moved, was not seen or fell short', () => {
    const strokes = fc.array(
      fc.record({
        reached: fc.double({ min: 0, max: 1.1, noNaN: true }),
        rotation: fc.option(fc.double({ min: 0, max: 60, noNaN: true }), { nil: null }),
      }),
      { maxLength: 8 },
    );
    fc.assert(
      fc.property(strokes, fc.boolean(), (list, firstPass) => {
        if (verdict(list, firstPass) !== 'bolt done') return;
        const last = list.at(-1);
        expect(last?.rotation ?? Infinity).toBeLessThanOrEqual(COMMON_STOP.stillRotation);
        expect(last?.reached ?? 0).toBeGreaterThanOrEqual(COMMON_STOP.reachedShare);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('no-turn check', () => {
  const all = (count: number, turned: boolean | null) => upTo(count).map((bolt) => ({ bolt, turned }));

  test('all stand only when every nut was tried and seen', () => {
    expect(noTurnCheck(12, all(12, false))?.state).toBe('all stand');
    expect(noTurnCheck(12, all(11, false))).toMatchObject({ state: 'incomplete', open: [12] });
    expect(
      noTurnCheck(2, [
        { bolt: 1, turned: false },
        { bolt: 2, turned: null },
      ]),
    ).toMatchObject({
      state: 'incomplete',
      open: [2],
    });
    expect(noTurnCheck(12, [...all(12, false), { bolt: 13, turned: false }])).toMatchObject({
      state: 'incomplete',
      wrong: [13],
    });
    expect(noTurnCheck(12, [...all(12, false), { bolt: 5, turned: true }])?.state).toBe('incomplete');
  });

  test('one nut that turned is enough, and says it is no proof of load', () => {
    const result = noTurnCheck(4, [{ bolt: 2, turned: true }]);
    expect(result).toMatchObject({
      state: 'some turned',
      turned: [2],
      open: [1, 3, 4],
      meaning: NO_TURN_MEANING,
    });
    expect(NO_TURN_MEANING).toContain('does not show how much load');
  });

  test('a count that can not be has no check', () => {
    expect([0, -1, 2.5, Number.NaN, 401].map((count) => noTurnCheck(count, []))).toEqual(Array(5).fill(null));
  });
});
