import { describe, expect, test } from 'vitest';
import { chiSquareProbability, chiSquareQuantile } from '../../core/statistics/chi-square.ts';
import { legendreRule, risingRoot } from '../../core/statistics/quadrature.ts';
import {
  deviationInterval,
  meanInterval,
  medianOf,
  predictionInterval,
  sampleOf,
  toleranceInterval,
} from '../../core/statistics/sample.ts';
import { studentProbability } from '../../core/statistics/student.ts';
import { oneSidedTolerance, twoSidedTolerance } from '../../core/statistics/tolerance.ts';
import { normalQuantile } from '../../core/uncertainty/normal.ts';
import { studentQuantile } from '../../core/uncertainty/student-t.ts';

const PROBABILITIES = [0.001, 0.05, 0.3, 0.5, 0.9, 0.975, 0.999];

describe('distributions', () => {
  test('Student’s probability is the inverse of the library’s quantile', () => {
    for (const nu of [1, 2, 3.5, 8, 40, 1000]) {
      for (const p of PROBABILITIES) {
        expect(studentProbability(studentQuantile(p, nu).value ?? Number.NaN, nu)).toBeCloseTo(p, 8);
      }
    }
    expect(studentProbability(Number.NEGATIVE_INFINITY, 3)).toBe(0);
  });

  test('chi-square probability is the inverse of its quantile, and two degrees of freedom are an exponential', () => {
    for (const nu of [0.5, 1, 2, 7, 300]) {
      for (const p of PROBABILITIES) {
        expect(chiSquareProbability(chiSquareQuantile(p, nu).value ?? Number.NaN, nu)).toBeCloseTo(p, 8);
      }
    }
    for (const p of PROBABILITIES) expect(chiSquareQuantile(p, 2).value).toBeCloseTo(-2 * Math.log(1 - p), 8);
    expect(chiSquareQuantile(0.5, 0).value).toBeNull();
    expect(chiSquareProbability(-1, 3)).toBe(0);
  });
});

describe('tolerance factors', () => {
  test('one-sided for half of all is Student’s t over √n', () => {
    for (const n of [2, 5, 17, 200]) {
      const t = studentQuantile(0.95, n - 1).value ?? Number.NaN;
      expect(oneSidedTolerance(n, 0.5, 0.95).value).toBeCloseTo(t / Math.sqrt(n), 5);
    }
  });

  test('fall with more readings, towards the normal quantile', () => {
    const counts = [2, 3, 5, 10, 30, 100, 10_000];
    for (const factor of [oneSidedTolerance, twoSidedTolerance]) {
      const values = counts.map((n) => factor(n, 0.95, 0.95).value ?? Number.NaN);
      expect(values).toEqual(values.toSorted((a, b) => b - a));
    }
    expect(oneSidedTolerance(1_000_000, 0.95, 0.95).value).toBeCloseTo(normalQuantile(0.95), 2);
    expect(twoSidedTolerance(1_000_000, 0.95, 0.95).value).toBeCloseTo(normalQuantile(0.975), 2);
  });

  test('say what they need below two readings', () => {
    expect(oneSidedTolerance(1, 0.95, 0.95).missing[0]?.symbol).toBe('n');
    expect(twoSidedTolerance(10, 1, 0.95).missing[0]?.symbol).toBe('p');
  });
});

describe('samples', () => {
  test('of one reading have a mean and no deviation, of none nothing', () => {
    expect(sampleOf([])).toBeNull();
    const one = sampleOf([3]);
    expect(one).toEqual({ count: 1, mean: 3, deviation: null });
    if (one === null) throw new Error('no sample');
    for (const interval of [meanInterval, predictionInterval, deviationInterval]) {
      expect(interval(one, 0.95)).toBeNull();
    }
    expect(toleranceInterval(one, 0.95, 0.95)).toBeNull();
  });

  test('of equal readings have no spread and no interval of it', () => {
    const equal = sampleOf([2, 2, 2, 2]);
    if (equal === null) throw new Error('no sample');
    expect(equal.deviation).toBe(0);
    expect(meanInterval(equal, 0.95)).toEqual({ low: 2, high: 2 });
    expect(deviationInterval(equal, 0.95)).toBeNull();
  });

  test('have the middle of two for an even count', () => {
    expect(medianOf([])).toBeNull();
    expect(medianOf([4])).toBe(4);
    expect(medianOf([4, 1, 3])).toBe(3);
    expect(medianOf([4, 1, 3, 9])).toBe(3.5);
  });
});

test('Gauss–Legendre of n nodes is exact to degree 2n − 1 and not beyond', () => {
  for (const n of [1, 2, 5, 20]) {
    const { nodes, weights } = legendreRule(n, 0, 1);
    const integral = (degree: number) =>
      nodes.reduce((sum, x, i) => sum + (weights[i] ?? 0) * x ** degree, 0);
    for (let degree = 0; degree <= 2 * n - 1; degree++) {
      expect(integral(degree)).toBeCloseTo(1 / (degree + 1), 12);
    }
    if (n < 5) expect(Math.abs(integral(2 * n) - 1 / (2 * n + 1))).toBeGreaterThan(1e-4);
  }
});

test('a root outside the ends gives the nearer end', () => {
  expect(risingRoot((x) => x - 5, 0, 1, 1e-9)).toBeCloseTo(1, 8);
  expect(risingRoot((x) => x + 5, 0, 1, 1e-9)).toBeCloseTo(0, 8);
});
