import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cyclesSince } from '../../core/leak/cycles.ts';
import { DOUBTS, type DoubtName, doubtFactor } from '../../core/leak/doubts.ts';
import { leakSentence, openWords } from '../../core/leak/leak-words.ts';
import { afterShown, groupRate, LEAST_YEARS, leakProbability, type Shown } from '../../core/leak/rate.ts';
import { type Candidate, type CheckTerms, verifyFirst, worthOfCheck } from '../../core/leak/verify-first.ts';

const NAMES = Object.keys(DOUBTS) as DoubtName[];
const shown = fc.record({ leaks: fc.nat(20), years: fc.double({ min: 0.01, max: 50, noNaN: true }) });
const plant = fc.array(shown, { minLength: 1, maxLength: 40 });
const doubts = fc.uniqueArray(fc.constantFrom(...NAMES));

describe('rate of a group', () => {
  test('a plant without leaks has a rate above zero that falls as it goes on without', () => {
    const short = groupRate([{ leaks: 0, years: 10 }])?.mean ?? 0;
    const long = groupRate([{ leaks: 0, years: 100 }])?.mean ?? 0;
    expect(short).toBeCloseTo(0.05, 12);
    expect(long).toBeCloseTo(0.005, 12);
  });

  test('nobody followed, or too short, says nothing: a leak on the second day is no rate', () => {
    expect(groupRate([])).toBeNull();
    expect(groupRate([{ leaks: 3, years: 0 }])).toBeNull();
    expect(groupRate([{ leaks: 3, years: LEAST_YEARS - 0.01 }])).toBeNull();
    expect(groupRate([{ leaks: 3, years: LEAST_YEARS }])?.mean).toBeCloseTo(0.3, 12);
  });

  test('joints that differ no more than chance have no spread; one that leaks again and again has', () => {
    const alike = Array.from({ length: 20 }, (_, at) => ({ leaks: at % 2, years: 10 }));
    expect(groupRate(alike)?.spread).toBeNull();
    const apart = [...Array.from({ length: 19 }, () => ({ leaks: 0, years: 10 })), { leaks: 10, years: 10 }];
    // By hand: m = 0.05, s² = (19·0.05² + 0.95²)/20 = 0.0475, m·J/Σt = 0.005, A = 0.0425.
    const spread = groupRate(apart)?.spread;
    expect(spread?.shape).toBeCloseTo(0.05 ** 2 / 0.0425, 12);
    expect(spread?.years).toBeCloseTo(0.05 / 0.0425, 12);
  });

  test('the rate a joint is given lies between its own and the group’s, and never leaves them', () => {
    fc.assert(
      fc.property(plant, shown, (group, own) => {
        const rate = groupRate(group);
        if (rate === null || rate.spread === null) return;
        const after = afterShown(rate.spread, own);
        const mean = after.shape / after.years;
        const [low = 0, high = 0] = [rate.mean, own.leaks / own.years].toSorted((a, b) => a - b);
        expect(mean).toBeGreaterThanOrEqual(low * (1 - 1e-9));
        expect(mean).toBeLessThanOrEqual(high * (1 + 1e-9));
      }),
    );
  });
});

describe('probability of a leak', () => {
  test('it is one of 0 to 1, nothing in no time, and grows with time, with leaks and with doubt', () => {
    fc.assert(
      fc.property(plant, shown, fc.double({ min: 0.01, max: 10, noNaN: true }), (group, own, years) => {
        const rate = groupRate(group);
        if (rate === null) return;
        const of = (joint: Shown, time: number, factor: number) => leakProbability(rate, joint, time, factor);
        const p = of(own, years, 1);
        expect(p).toBeGreaterThan(0);
        expect(p).toBeLessThanOrEqual(1);
        expect(of(own, 0, 1)).toBe(0);
        expect(of(own, years * 2, 1)).toBeGreaterThanOrEqual(p);
        expect(of(own, years, 3)).toBeGreaterThanOrEqual(p);
        expect(of({ ...own, leaks: own.leaks + 1 }, years, 1)).toBeGreaterThanOrEqual(p - 1e-12);
      }),
    );
  });

  test('a narrow spread gives what a common rate gives', () => {
    const group = { mean: 0.2, spread: { shape: 2e7, years: 1e8 } };
    const common = leakProbability({ mean: 0.2, spread: null }, { leaks: 0, years: 5 }, 1, 1);
    expect(leakProbability(group, { leaks: 0, years: 5 }, 1, 1)).toBeCloseTo(common, 6);
  });

  test('drawn leaks agree: a gamma rate, then Poisson, leaks at least once as often as it says', () => {
    const group = { mean: 0.5, spread: { shape: 2, years: 4 } };
    // Gamma(2, 4) as the sum of two exponentials; at least one leak in a year with probability 1 − e^(−λ).
    let total = 0;
    const steps = 400;
    for (let i = 0; i < steps; i++) {
      for (let j = 0; j < steps; j++) {
        const draw = (at: number) => -Math.log(1 - (at + 0.5) / steps) / 4;
        total += -Math.expm1(-(draw(i) + draw(j)));
      }
    }
    expect(leakProbability(group, { leaks: 0, years: 0 }, 1, 1)).toBeCloseTo(total / steps ** 2, 3);
  });
});

describe('doubts', () => {
  test('none leaves the rate, each raises it, and all together are held', () => {
    expect(doubtFactor([])).toBe(1);
    for (const name of NAMES) expect(doubtFactor([name]), name).toBeGreaterThan(1);
    expect(doubtFactor(NAMES)).toBe(10);
    fc.assert(
      fc.property(doubts, (some) => {
        expect(doubtFactor(some)).toBe(doubtFactor(some.toReversed()));
      }),
    );
  });
});

const TERMS: CheckTerms = {
  years: 1,
  weights: { mild: 1, intermediate: 3, critical: 10 },
  effect: 0.5,
  cost: 0.02,
};
const candidate = (id: string, changes: Partial<Candidate> = {}): Candidate => ({
  id,
  class: 'critical',
  leaks: 0,
  years: 10,
  doubts: [],
  leaksNow: false,
  ...changes,
});

describe('which joints first', () => {
  test('of two that are alike the one that leaked, the doubtful one and the heavier class come first', () => {
    const order = (...joints: Candidate[]) => verifyFirst(joints, TERMS).rows.map(({ id }) => id);
    const rest = Array.from({ length: 30 }, (_, at) => candidate(`rest ${at}`));
    const [first] = order(...rest, candidate('leaked', { leaks: 4 }));
    expect(first).toBe('leaked');
    expect(order(candidate('plain'), candidate('loose', { doubts: ['unfinished'] }))[0]).toBe('loose');
    const leaky = (id: string, of: 'mild' | 'critical') => candidate(id, { class: of, leaks: 1 });
    expect(order(leaky('mild one', 'mild'), leaky('critical one', 'critical'))[0]).toBe('critical one');
  });

  test('every joint is on the list once, in falling worth, and with numbers or none at all', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            class: fc.constantFrom('mild', 'intermediate', 'critical', null),
            leaks: fc.nat(4),
            years: fc.constantFrom(0, 1, 5, 20),
            doubts,
          }),
          { maxLength: 30 },
        ),
        (joints) => {
          const all = joints.map((joint, at) => candidate(String(at), joint));
          const { rows, rates } = verifyFirst(all, TERMS);
          expect(rows.map(({ id }) => id).toSorted()).toEqual(all.map(({ id }) => id).toSorted());
          for (const [at, { worth, probability }] of rows.entries()) {
            expect(worth === null).toBe(rates.length === 0);
            expect(probability === null).toBe(rates.length === 0);
            if (worth !== null) expect(worth).toBeLessThanOrEqual(rows[at - 1]?.worth ?? Infinity);
          }
        },
      ),
    );
  });

  test('a class with too few years takes the rate of all joints; with too few of all, doubt and class order', () => {
    const critical = Array.from({ length: 5 }, (_, at) => candidate(`c${at}`, { leaks: 1 }));
    const { rates } = verifyFirst([...critical, candidate('m', { class: 'mild', years: 1 })], TERMS);
    expect(rates.map((rate) => rate.class)).toEqual(['critical', null]);
    const young = { years: 0.5 };
    const { rows, rates: none } = verifyFirst(
      [
        candidate('mild', { ...young, class: 'mild' }),
        candidate('plain', young),
        candidate('doubt', { ...young, doubts: ['no setting'] }),
      ],
      TERMS,
    );
    expect(none).toEqual([]);
    expect(rows.map(({ id, worth }) => [id, worth])).toEqual([
      ['doubt', null],
      ['plain', null],
      ['mild', null],
    ]);
  });

  test('a joint that leaks now raises the rate of its class and is not on the list', () => {
    const rest = Array.from({ length: 9 }, (_, at) => candidate(String(at)));
    const quiet = verifyFirst([...rest, candidate('x')], TERMS);
    const leaking = verifyFirst([...rest, candidate('x', { leaks: 1, leaksNow: true })], TERMS);
    expect(leaking.rows.map(({ id }) => id)).not.toContain('x');
    expect(leaking.rates[0]?.joints).toBe(10);
    expect(leaking.rates[0]?.mean).toBeGreaterThan(quiet.rates[0]?.mean ?? Infinity);
  });

  test('a joint nobody assessed is weighed as critical, and the list says so', () => {
    const [row] = verifyFirst([candidate('a', { class: null, leaks: 2 })], TERMS).rows;
    expect(row?.weighedAs).toBe('critical');
    expect(row?.reasons).toEqual(['it has leaked 2 times', 'nobody has assessed it: weighed as critical']);
  });

  test('a check is worth less than it costs where a leak is unlikely, and more the more it prevents', () => {
    expect(worthOfCheck(0.001, 1, { effect: 0.5, cost: 0.02 })).toBeLessThan(0);
    expect(worthOfCheck(0, 10, { effect: 1, cost: 0 })).toBe(0);
    expect(worthOfCheck(0.2, 10, { effect: 1, cost: 0 })).toBeCloseTo(2, 12);
  });
});

describe('thermal cycles since make-up', () => {
  const MADE_UP = '2026-01-01T00:00:00.000Z';
  const NOW = '2026-01-21T00:00:00.000Z';
  const count = (from: number, until: number, cycles: number) => ({
    from: new Date(Date.UTC(2026, 0, from)).toISOString(),
    until: new Date(Date.UTC(2026, 0, until)).toISOString(),
    cycles,
  });

  test('what nobody counted is not covered, and is no count of none', () => {
    expect(cyclesSince([], MADE_UP, NOW)).toEqual({ cycles: 0, partly: 0, covered: 0 });
    expect(cyclesSince([count(1, 11, 3)], MADE_UP, NOW)).toEqual({ cycles: 3, partly: 0, covered: 0.5 });
  });

  test('a period the make-up lies in stands apart; one before it says nothing', () => {
    expect(cyclesSince([count(-9, 11, 7)], MADE_UP, NOW)).toEqual({ cycles: 0, partly: 7, covered: 0.5 });
    expect(cyclesSince([count(-20, -10, 7)], MADE_UP, NOW)).toEqual({ cycles: 0, partly: 0, covered: 0 });
  });

  test('a period that runs beyond today covers no more than all of it', () => {
    expect(cyclesSince([count(1, 25, 2)], MADE_UP, NOW).covered).toBe(1);
    expect(cyclesSince([count(1, 25, 2)], MADE_UP, MADE_UP).covered).toBe(0);
  });
});

test('the sentence of a list counts what is open and what repeats, and claims no tightness from silence', () => {
  const none = leakSentence({ leaks: 0, joints: 0, open: 0, longest: null, repeaters: 0 });
  expect(none).toContain('nobody recorded');
  expect(leakSentence({ leaks: 3, joints: 2, open: 1, longest: 41 * 86_400, repeaters: 1 })).toBe(
    '3 leaks on 2 joints; 1 open, the longest for 41 days; 1 joint leaked at least twice within two make-ups.',
  );
  expect(openWords(3600)).toBe('1 hour');
  expect(openWords(47 * 3600)).toBe('47 hours');
  expect(openWords(48 * 3600)).toBe('2 days');
});
