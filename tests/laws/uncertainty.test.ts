import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type LoadContributor, loadBudget, meanUncertainty } from '../../core/uncertainty/budget.ts';
import { shareKeeping } from '../../core/uncertainty/distribution.ts';
import { type ShapedContributor, simulateLoad } from '../../core/uncertainty/monte-carlo.ts';
import { normalProbability, normalQuantile } from '../../core/uncertainty/normal.ts';
import { limitProbability, loadInterval, type UncertainLoad } from '../../core/uncertainty/probabilities.ts';
import { propagate } from '../../core/uncertainty/propagate.ts';
import { known } from '../truth/known.ts';

const relative = fc.oneof(fc.constant(0), fc.double({ min: 1e-6, max: 0.3, noNaN: true }));

const contributor: fc.Arbitrary<LoadContributor> = fc.record({
  name: fc.constant('one'),
  of: fc.constantFrom('torque', 'nut factor'),
  relative,
  scope: fc.constantFrom('common', 'per bolt'),
  basis: fc.constant('test'),
  degreesOfFreedom: fc.option(fc.integer({ min: 1, max: 50 }), { nil: null }),
});
const contributors = fc.array(contributor, { minLength: 1, maxLength: 8 });

describe('budget', () => {
  test('shares add up to one, and the two parts to the whole', () => {
    fc.assert(
      fc.property(contributors, (list) => {
        const { lines, combined, common, perBolt } = known(loadBudget(list));
        const shares = lines.reduce((sum, { share }) => sum + share, 0);
        expect(shares).toBeCloseTo(combined === 0 ? 0 : 1, 9);
        expect(Math.hypot(common, perBolt)).toBeCloseTo(combined, 12);
      }),
    );
  });

  test('another contributor never lowers the uncertainty', () => {
    fc.assert(
      fc.property(contributors, contributor, (list, one) => {
        const before = known(loadBudget(list)).combined;
        expect(known(loadBudget([...list, one])).combined).toBeGreaterThanOrEqual(before * (1 - 1e-12));
      }),
    );
  });

  test('more bolts bring the mean closer to the common part and never below it', () => {
    fc.assert(
      fc.property(relative, relative, fc.integer({ min: 1, max: 399 }), (common, perBolt, count) => {
        const fewer = known(meanUncertainty({ common, perBolt }, count));
        const more = known(meanUncertainty({ common, perBolt }, count + 1));
        expect(more).toBeLessThanOrEqual(fewer * (1 + 1e-12));
        expect(more).toBeGreaterThanOrEqual(common * (1 - 1e-12));
      }),
    );
  });

  test('friction of 10 % beside a tool of 2 % carries 96 % of the variance', () => {
    const { lines } = known(
      loadBudget([
        { name: 'tool', of: 'torque', relative: 0.02, scope: 'common', basis: '', degreesOfFreedom: null },
        { name: 'K', of: 'nut factor', relative: 0.1, scope: 'per bolt', basis: '', degreesOfFreedom: null },
      ]),
    );
    // 100/104 of the variance.
    expect(lines.map(({ name, share }) => `${name} ${(share * 100).toFixed(1)} %`)).toEqual([
      'tool 3.8 %',
      'K 96.2 %',
    ]);
  });
});

function shaped(of: 'torque' | 'nut factor', value: number, scope: 'common' | 'per bolt'): ShapedContributor {
  return { name: of, of, relative: value, scope, basis: 'test', degreesOfFreedom: null, shape: 'normal' };
}

function simulate(list: readonly ShapedContributor[], bolts: number, seed = 1, draws = 100_000) {
  return known(simulateLoad({ nominal: 100e3, contributors: list, draws, seed, bolts }));
}

describe('Monte Carlo', () => {
  test('agrees with first order where the uncertainties are small', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.005, max: 0.03, noNaN: true }),
        fc.double({ min: 0.005, max: 0.03, noNaN: true }),
        fc.integer({ min: 1, max: 1000 }),
        (torque, friction, seed) => {
          const list = [shaped('torque', torque, 'common'), shaped('nut factor', friction, 'per bolt')];
          const first = known(loadBudget(list)).combined;
          const { deviation, mean } = simulate(list, 1, seed, 20_000);
          // Three standard errors of a deviation from 20,000 draws are 1.5 %.
          expect(Math.abs(deviation / 100e3 / first - 1)).toBeLessThan(0.025);
          expect(Math.abs(mean / 100e3 - 1)).toBeLessThan(0.003);
        },
      ),
      { numRuns: 20 },
    );
  });

  test('differs from first order where it should: the load is skewed upwards, and its mean lies above the nominal', () => {
    const { skewness, mean, relativeInterval } = simulate([shaped('nut factor', 0.1, 'per bolt')], 1);
    expect(skewness).toBeGreaterThan(0.4);
    // E(1/K) = (1 + CV² + 3·CV⁴ …)/K.
    expect(mean / 100e3).toBeCloseTo(1.0103, 2);
    expect(relativeInterval[1]).toBeGreaterThan(-relativeInterval[0] * 1.3);
  });

  test('the mean load of a joint spreads as common and per-bolt/√N say', () => {
    const list = [shaped('torque', 0.02, 'common'), shaped('nut factor', 0.03, 'per bolt')];
    const expected = known(meanUncertainty(known(loadBudget(list)), 16));
    expect(simulate(list, 16).deviation / 100e3 / expected).toBeCloseTo(1, 1);
  });

  test('the same seed gives the same loads, another seed others', () => {
    const list = [shaped('nut factor', 0.1, 'per bolt')];
    const [first, again, other] = [simulate(list, 1, 5), simulate(list, 1, 5), simulate(list, 1, 6)];
    expect(again.sorted).toEqual(first.sorted);
    expect(other.mean).not.toBe(first.mean);
  });

  test('without uncertainty every load is the nominal one', () => {
    const { interval, deviation, skewness } = simulate([shaped('torque', 0, 'common')], 3);
    expect([interval, deviation, skewness]).toEqual([[100e3, 100e3], 0, 0]);
  });

  test('scales with the nominal load', () => {
    const contributors = [shaped('nut factor', 0.1, 'per bolt')];
    const input = { contributors, draws: 5000, seed: 3, bolts: 1 };
    const small = known(simulateLoad({ ...input, nominal: 1e3 })).relativeInterval;
    const large = known(simulateLoad({ ...input, nominal: 1e6 })).relativeInterval;
    expect(large[0]).toBeCloseTo(small[0], 10);
    expect(large[1]).toBeCloseTo(small[1], 10);
  });

  test('a normal nut factor too wide to stay above zero is refused with the way out', () => {
    const outcome = simulateLoad({
      nominal: 1e5,
      contributors: [shaped('nut factor', 0.25, 'per bolt')],
      draws: 1000,
      seed: 1,
      bolts: 1,
    });
    expect(outcome.value).toBeNull();
    expect(outcome.missing[0]?.remedy).toContain('lognormal');
  });

  test('a model that leaves its domain has no distribution', () => {
    const outcome = propagate(
      [{ name: 'x', mean: 0, u: 1, shape: 'normal' }],
      ([x = 0]) => Math.log(x),
      1000,
      1,
    );
    expect(outcome.missing[0]?.reason).toBe('no solution');
  });
});

const uncertain: fc.Arbitrary<UncertainLoad> = fc.record({
  load: fc.double({ min: 1e3, max: 1e7, noNaN: true }),
  common: relative,
  perBolt: relative,
  boltCount: fc.integer({ min: 4, max: 100 }),
  shape: fc.constantFrom('normal', 'lognormal'),
});
const ratio = fc.double({ min: 0.3, max: 3, noNaN: true });

describe('probabilities of keeping limits', () => {
  test('lie between 0 and 1, and both sides of a limit add up to 1', () => {
    fc.assert(
      fc.property(uncertain, ratio, fc.constantFrom('single bolt', 'joint mean'), (load, times, subject) => {
        const limit = (load.load ?? 0) * times;
        const most = known(limitProbability(load, limit, 'at most', subject));
        const least = known(limitProbability(load, limit, 'at least', subject));
        expect(most.probability).toBeGreaterThanOrEqual(0);
        expect(most.probability).toBeLessThanOrEqual(1);
        if (most.relative > 0) expect(most.probability + least.probability).toBeCloseTo(1, 12);
      }),
    );
  });

  test('a higher ceiling is never kept less often', () => {
    fc.assert(
      fc.property(uncertain, ratio, ratio, (load, a, b) => {
        const at = (times: number) =>
          known(limitProbability(load, (load.load ?? 0) * times, 'at most', 'single bolt')).probability;
        expect(at(Math.max(a, b))).toBeGreaterThanOrEqual(at(Math.min(a, b)));
      }),
    );
  });

  test('the mean of a joint is never less certain than a single bolt', () => {
    fc.assert(
      fc.property(uncertain, ratio, (load, times) => {
        const of = (subject: 'single bolt' | 'joint mean') =>
          known(limitProbability(load, (load.load ?? 0) * times, 'at most', subject));
        expect(of('joint mean').relative).toBeLessThanOrEqual(of('single bolt').relative);
      }),
    );
  });

  test('the interval holds its share of the loads', () => {
    fc.assert(
      fc.property(
        uncertain.filter(({ common, perBolt }) => (common ?? 0) + (perBolt ?? 0) > 0.01),
        fc.double({ min: 0.5, max: 0.99, noNaN: true }),
        (load, share) => {
          const [lower, upper] = known(loadInterval(load, 'single bolt', share));
          const below = known(limitProbability(load, upper, 'at most', 'single bolt')).probability;
          const under =
            lower > 0 ? known(limitProbability(load, lower, 'at most', 'single bolt')).probability : 0;
          if (lower > 0) expect(below - under).toBeCloseTo(share, 9);
          else expect(below).toBeCloseTo((1 + share) / 2, 9);
        },
      ),
    );
  });

  test('agree with the simulated loads', () => {
    const list = [shaped('torque', 0.02, 'common'), shaped('nut factor', 0.05, 'per bolt')];
    const parts = known(loadBudget(list));
    const load = {
      load: 100e3,
      common: parts.common,
      perBolt: parts.perBolt,
      boltCount: 12,
      shape: 'lognormal',
    } as const;
    for (const [bolts, subject] of [
      [1, 'single bolt'],
      [12, 'joint mean'],
    ] as const) {
      const simulated = known(shareKeeping(simulate(list, bolts), 103e3, 'at most')).probability;
      const computed = known(limitProbability(load, 103e3, 'at most', subject)).probability;
      // The mean of 1/K lies above 1/K by CV² = 0.25 %: a tenth of the joint mean's deviation.
      expect(Math.abs(simulated - computed)).toBeLessThan(0.03);
    }
  });

  test('certainty is one or zero', () => {
    const load = { load: 100e3, common: 0, perBolt: 0, boltCount: 4, shape: 'normal' } as const;
    const at = (limit: number, side: 'at least' | 'at most') =>
      known(limitProbability(load, limit, side, 'single bolt')).probability;
    expect([at(99e3, 'at most'), at(100e3, 'at most'), at(100e3, 'at least'), at(101e3, 'at least')]).toEqual(
      [0, 1, 1, 0],
    );
  });

  test('quantile and probability are each other’s inverse', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true }), (p) => {
        expect(normalProbability(normalQuantile(p))).toBeCloseTo(p, 12);
      }),
    );
  });
});
