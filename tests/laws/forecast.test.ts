import { describe, expect, test } from 'vitest';
import { CLASS_RULES, type OpeningTraits, temperatureBandOf } from '../../core/breakout/classes.ts';
import { jointExpectation, ratioForecast, shortForecast } from '../../core/breakout/forecast.ts';
import {
  boltScatter,
  effectiveCount,
  expectedOpening,
  fitClass,
  type OpeningSummary,
  openingSummary,
  posteriorPart,
} from '../../core/breakout/model.ts';
import { type PlantOpening, plantOpenings } from '../../core/breakout/plant.ts';
import { COMMON_PRIOR, plantPrior } from '../../core/breakout/prior.ts';
import { seizedStuds } from '../../core/breakout/seized.ts';
import { expectedProbability, expectedQuantile, worstOf } from '../../core/breakout/worst.ts';
import { randomOf } from '../calibration/plants.ts';

const summary = (joint: string, ratios: readonly number[]): OpeningSummary => {
  const one = openingSummary(joint, ratios);
  if (one === null) throw new Error('nothing turned');
  return one;
};

const everyNumber = (value: unknown): number[] => {
  if (typeof value === 'number') return [value];
  if (value === null || typeof value !== 'object') return [];
  return Object.values(value).flatMap(everyNumber);
};

describe('prior without any opening', () => {
  const expected = expectedOpening(fitClass([], COMMON_PRIOR), []);

  test('has 2.5 times the installed torque as the 95 % of the worst of 24, about a middle of 1.2', () => {
    const { oneBolt, worstBolt } = ratioForecast(expected, 24);
    expect(worstBolt.high).toBeCloseTo(2.5, 3);
    expect(oneBolt.median).toBeCloseTo(1.2, 4);
  });

  test('asks less of a joint of four bolts', () => {
    expect(ratioForecast(expected, 4).worstBolt.high).toBeLessThan(2.4);
  });
});

describe('posterior', () => {
  const openings = [
    summary('A', [1, 1.1, 1.3, 0.9]),
    summary('A', [1.2, 1.5]),
    summary('B', [0.8, 0.85, 0.9]),
    summary('C', [1.4]),
  ];
  const readings: readonly (readonly [joint: string, opening: number, y: number])[] = [
    ...[1, 1.1, 1.3, 0.9].map((r) => ['A', 0, Math.log(r)] as const),
    ...[1.2, 1.5].map((r) => ['A', 1, Math.log(r)] as const),
    ...[0.8, 0.85, 0.9].map((r) => ['B', 2, Math.log(r)] as const),
    ['C', 3, Math.log(1.4)] as const,
  ];

  test('is the one of the whole covariance matrix, solved bolt by bolt', () => {
    const prior = { mean: 0.1, ratio: 0.7, shape: 2, scale: 0.05, basis: '' };
    for (const ratios of [
      { joints: 0, openings: 0 },
      { joints: 0.4, openings: 1.5 },
      { joints: 3, openings: 0.1 },
    ]) {
      const covariance = readings.map(([joint, opening], i) =>
        readings.map(
          ([other, again], j) =>
            (i === j ? 1 : 0) +
            (joint === other ? ratios.joints : 0) +
            (opening === again ? ratios.openings : 0),
        ),
      );
      const y = readings.map(([, , value]) => value);
      const ones = y.map(() => 1);
      const solvedOnes = solve(covariance, ones);
      const solvedY = solve(covariance, y);
      const precision = dot(ones, solvedOnes.x) + 1 / prior.ratio;
      const mean = (dot(ones, solvedY.x) + prior.mean / prior.ratio) / precision;
      const q = dot(y, solvedY.x) + prior.mean ** 2 / prior.ratio - precision * mean ** 2;
      const joints = [...Map.groupBy(openings, ({ joint }) => joint).values()];
      const { part, log } = posteriorPart(joints, prior, ratios);
      expect(part.mean).toBeCloseTo(mean, 10);
      expect(part.precision).toBeCloseTo(precision, 10);
      expect(part.scale).toBeCloseTo(prior.scale + q / 2, 10);
      const determinant = solvedOnes.logDeterminant + Math.log(prior.ratio * precision);
      const shape = prior.shape + y.length / 2;
      expect(log).toBeCloseTo(-determinant / 2 - shape * Math.log(prior.scale + q / 2), 8);
    }
  });

  test('of a joint’s next opening lies between its own openings and its class, nearer its own the more there are', () => {
    const own = [summary('D', [2, 2.1, 1.9, 2])];
    const more = [...own, summary('D', [2.05, 1.95]), summary('D', [2, 2, 2.02])];
    const centre = (mine: readonly OpeningSummary[]) => {
      const fit = fitClass([...openings, ...mine], COMMON_PRIOR);
      return Math.exp(expectedQuantile(middleOf(fit, mine), expectedOpening(fit, mine), 0.5));
    };
    const middleOf = (fit: ReturnType<typeof fitClass>, mine: readonly OpeningSummary[]) =>
      expectedProbability(expectedOpening(fit, mine), { kind: 'middle' });
    const stranger = fitClass([...openings, ...own], COMMON_PRIOR);
    const other = Math.exp(expectedQuantile(middleOf(stranger, []), expectedOpening(stranger, []), 0.5));
    expect(centre(own)).toBeGreaterThan(other);
    expect(centre(own)).toBeLessThan(2);
    expect(centre(more)).toBeGreaterThan(centre(own));
    expect(centre(more)).toBeLessThan(2.02);
  });

  test('24 readings of one joint at ρ 0.5 count as about two', () => {
    expect(effectiveCount([24], 0.5)).toBeCloseTo(1.92, 2);
    expect(effectiveCount([24], 0)).toBe(24);
    expect(effectiveCount([], 0.5)).toBe(0);
  });

  test('narrows with more joints', () => {
    const random = randomOf(3);
    const many = Array.from({ length: 40 }, (_, index) =>
      summary(
        `J${index}`,
        Array.from({ length: 8 }, () => Math.exp(0.1 + 0.15 * random.normal())),
      ),
    );
    const width = (some: readonly OpeningSummary[]) => {
      const { worstBolt } = ratioForecast(expectedOpening(fitClass(some, COMMON_PRIOR), []), 12);
      return Math.log(worstBolt.high / worstBolt.low);
    };
    expect(width(many)).toBeLessThan(width(many.slice(0, 3)));
    expect(boltScatter(fitClass(many, COMMON_PRIOR), many).deviation).toBeCloseTo(0.15, 1);
  });
});

describe('worst bolt', () => {
  test('of independent bolts is a power, of bolts that go together like one', () => {
    expect(worstOf(1.3, 0, 24)).toBeCloseTo(0.9031995 ** 24, 6);
    expect(worstOf(30, 1e4, 24)).toBeCloseTo(worstOf(30, 1e4, 1), 1);
  });

  test('agrees with drawn bolts within the draws’ own uncertainty', () => {
    const random = randomOf(11);
    const expected = {
      shape: 4,
      parts: [
        { weight: 0.3, centre: 0.1, level: 0.4, scale: 0.1 },
        { weight: 0.7, centre: 0.3, level: 2.5, scale: 0.06 },
      ],
    };
    const draws = 40_000;
    const values = Array.from({ length: draws }, () => {
      const part = expected.parts[random.uniform() < 0.3 ? 0 : 1];
      if (part === undefined) throw new Error('no part');
      // Gamma of shape 4: sum of four exponentials.
      const gamma = -Math.log(random.uniform() * random.uniform() * random.uniform() * random.uniform());
      const sigma = Math.sqrt(part.scale / gamma);
      const level = part.centre + sigma * Math.sqrt(part.level) * random.normal();
      return Array.from({ length: 8 }, () => level + sigma * random.normal());
    });
    const worst = expectedProbability(expected, { kind: 'worst', bolts: 8 });
    const one = expectedProbability(expected, { kind: 'one bolt' });
    for (const x of [-0.2, 0.1, 0.3, 0.6, 1]) {
      for (const [probability, hit] of [
        [worst(x), (bolts: readonly number[]) => Math.max(...bolts) <= x],
        [one(x), ([first = 0]: readonly number[]) => first <= x],
      ] as const) {
        const share = values.filter(hit).length / draws;
        const deviation = Math.sqrt((probability * (1 - probability)) / draws);
        expect(Math.abs(share - probability), `at ${x}`).toBeLessThan(4 * deviation + 5e-4);
      }
    }
  });

  test('the table between its places keeps to the integral', () => {
    for (const bolts of [2, 8, 24, 100]) {
      for (const level of [0.013, 0.4, 3.3, 40]) {
        const expected = { shape: 1e9, parts: [{ weight: 1, centre: 0, level, scale: 1e9 }] };
        const worst = expectedProbability(expected, { kind: 'worst', bolts });
        for (const u of [-1, 0.33, 1.77, 2.9, 5.1])
          expect(
            Math.abs(worst(u) - worstOf(u, level, bolts)),
            `N ${bolts}, v ${level}, u ${u}`,
          ).toBeLessThan(1e-3);
      }
    }
  });

  test('quantiles are where their probability says', () => {
    const expected = expectedOpening(fitClass([summary('A', [1, 2, 3])], COMMON_PRIOR), []);
    const worst = expectedProbability(expected, { kind: 'worst', bolts: 12 });
    for (const p of [0.001, 0.05, 0.5, 0.95, 0.999])
      expect(worst(expectedQuantile(worst, expected, p))).toBeCloseTo(p, 4);
  });
});

const TRAITS: OpeningTraits = { service: 'steam', band: '120 to 300 °C', lubricant: 'nickel', years: 1 };
const past = (joint: string, ratios: readonly number[], traits = TRAITS, seized = 0): PlantOpening => ({
  joint,
  traits,
  ratios,
  studs: ratios.length + seized,
  seized,
});

describe('classes', () => {
  test('a joint belongs to the narrowest class with enough joints', () => {
    const steam = ['A', 'B', 'C', 'D', 'E'].map((joint) => past(joint, [1, 1.2]));
    const crude = past('F', [2], { ...TRAITS, service: 'crude', lubricant: null });
    const plant = plantOpenings([...steam, crude]);
    expect(plant.classOf(TRAITS).rule).toBe(CLASS_RULES[0]);
    expect(plant.classOf({ ...TRAITS, years: 5 }).rule.name).toBe('service, temperature and lubricant');
    expect(plant.classOf({ ...TRAITS, service: 'crude' }).rule.name).toBe('temperature and lubricant');
    expect(plant.classOf({ ...TRAITS, band: 'above 300 °C' }).rule.name).toBe('the plant');
  });

  test('the plant’s classes move the prior of a class without openings', () => {
    const hard = ['A', 'B', 'C'].map((joint) => summary(joint, [2, 2.2, 1.9, 2.1]));
    const harder = ['D', 'E', 'F'].map((joint) => summary(joint, [2.4, 2.5, 2.3]));
    const prior = plantPrior([hard, harder]);
    expect(prior.mean).toBeGreaterThan(COMMON_PRIOR.mean + 0.1);
    expect(prior.basis).toContain('2 classes of this plant');
    expect(plantPrior([hard])).toBe(COMMON_PRIOR);
  });

  test('bands end at 120 and 300 °C', () => {
    expect([20, 120, 120.1, 300, 301].map(temperatureBandOf)).toEqual([
      'to 120 °C',
      'to 120 °C',
      '120 to 300 °C',
      '120 to 300 °C',
      'above 300 °C',
    ]);
    expect(temperatureBandOf(null)).toBe('not known');
    expect(temperatureBandOf(Number.NaN)).toBe('not known');
  });
});

describe('thin and bad data', () => {
  const cases: Readonly<Record<string, readonly PlantOpening[]>> = {
    'no opening': [],
    'one reading': [past('A', [1.1])],
    'all readings equal': ['A', 'B', 'C', 'D', 'E', 'F'].map((joint) => past(joint, [1, 1, 1, 1])),
    'nothing turned': [past('A', [], TRAITS, 4)],
    'ratios of zero and worse': [past('A', [0, -1, Number.NaN, Number.POSITIVE_INFINITY, 1.2])],
  };
  test.each(Object.entries(cases))(
    '%s: every number is finite and the evidence says how little it is',
    (name, openings) => {
      const plant = plantOpenings(openings);
      const { expected, evidence } = jointExpectation(plant, 'A', TRAITS);
      const forecast = ratioForecast(expected, 12);
      const numbers = everyNumber([forecast.oneBolt, forecast.worstBolt, forecast.middle, evidence]);
      expect(numbers.every(Number.isFinite), name).toBe(true);
      expect(forecast.worstBolt.low).toBeLessThanOrEqual(forecast.worstBolt.high);
      expect(forecast.worstAbove(0)).toBe(1);
      if (name !== 'all readings equal') expect(evidence.sufficiency).toBe('too few to say');
    },
  );

  test('the short form is the long one’s', () => {
    const { expected } = jointExpectation(plantOpenings([past('A', [1, 1.3])]), 'A', TRAITS);
    const long = ratioForecast(expected, 12);
    const short = shortForecast(expected, 12);
    expect(short.median).toBeCloseTo(long.oneBolt.median, 9);
    expect(short.worst).toBeCloseTo(long.worstBolt.high, 9);
    expect(short.worstAbove(2)).toBeCloseTo(long.worstAbove(2), 12);
  });
});

describe('seized studs', () => {
  test('are nothing without an opening, few where none seized, and more together than apart', () => {
    expect(seizedStuds([], 12)).toBeNull();
    const none = seizedStuds(
      Array.from({ length: 10 }, () => ({ studs: 12, seized: 0 })),
      12,
    );
    expect(none?.expected).toBeLessThan(0.4);
    expect(none?.low).toBeGreaterThanOrEqual(0);
    const apart = Array.from({ length: 20 }, () => ({ studs: 12, seized: 1 }));
    const together = Array.from({ length: 20 }, (_, index) => ({
      studs: 12,
      seized: index % 5 === 0 ? 5 : 0,
    }));
    const width = (counts: typeof apart) => {
      const found = seizedStuds(counts, 12);
      return found === null ? Number.NaN : found.high - found.low;
    };
    expect(width(together)).toBeGreaterThan(width(apart));
    expect(seizedStuds(apart, 12)?.expected).toBeCloseTo(1, 0);
  });
});

/** Solution of a symmetric positive definite system by elimination, with the logarithm of its determinant. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]) {
  const rows = matrix.map((row, i) => [...row, right[i] ?? 0]);
  const size = rows.length;
  let logDeterminant = 0;
  for (let k = 0; k < size; k++) {
    const pivot = rows[k]?.[k] ?? 0;
    logDeterminant += Math.log(pivot);
    for (let i = k + 1; i < size; i++) {
      const factor = (rows[i]?.[k] ?? 0) / pivot;
      rows[i] = (rows[i] ?? []).map((value, j) => value - factor * (rows[k]?.[j] ?? 0));
    }
  }
  const x = new Array<number>(size).fill(0);
  for (let k = size - 1; k >= 0; k--) {
    const known = x.reduce((sum, value, j) => (j > k ? sum + value * (rows[k]?.[j] ?? 0) : sum), 0);
    x[k] = ((rows[k]?.[size] ?? 0) - known) / (rows[k]?.[k] ?? 1);
  }
  return { x, logDeterminant };
}

const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, x, i) => sum + x * (b[i] ?? 0), 0);
