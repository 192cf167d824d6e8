import fc from 'fast-check';
import { expect } from 'vitest';
import type { DeliveredLine } from '../../core/calibration/delivered-error.ts';
import type { LinePoint } from '../../core/calibration/weighted-line.ts';
import type { Outcome } from '../../core/findings/outcome.ts';

export const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Any number a form or a file can bring, the bad ones first. */
export const anyNumber = fc.oneof(
  fc.constantFrom(0, -0, -1, Number.NaN, Infinity, -Infinity, Number.MAX_VALUE, 5e-324, 1, 3e7),
  fc.double(),
);
export const anyOrNull = fc.option(anyNumber, { nil: null, freq: 3 });

/** Points of a wrench: distinct pressures over the range, torque along a line with scatter. */
export const wrenchPoints = (least = 4) =>
  fc
    .record({
      slope: real(1e-6, 1e-4),
      intercept: real(-20, 20),
      pressures: fc.uniqueArray(fc.integer({ min: 20, max: 700 }), { minLength: least, maxLength: 12 }),
      noise: fc.array(real(-1, 1), { minLength: 12, maxLength: 12 }),
      scatter: real(0.5, 10),
    })
    .map(({ slope, intercept, pressures, noise, scatter }) =>
      pressures.map((bar, i): LinePoint => {
        const x = bar * 1e5;
        return { x, y: intercept + slope * x + scatter * (noise[i] ?? 0), u: null };
      }),
    )
    .filter((points) => scatters(points));

/** Points that lie on a line to the last bits have a scatter of rounding alone, which obeys no law. */
function scatters(points: readonly LinePoint[]): boolean {
  const n = points.length;
  const x = points.reduce((sum, point) => sum + point.x, 0) / n;
  const y = points.reduce((sum, point) => sum + point.y, 0) / n;
  const sxx = points.reduce((sum, point) => sum + (point.x - x) ** 2, 0);
  const slope = points.reduce((sum, point) => sum + (point.x - x) * (point.y - y), 0) / sxx;
  return points.some((point) => Math.abs(point.y - y - slope * (point.x - x)) > 1e-3);
}

export const own = (points: readonly LinePoint[], us: readonly number[]): LinePoint[] =>
  points.map(({ x, y }, i) => ({ x, y, u: us[i] ?? 1 }));

export const uncertainties = fc.array(real(0.2, 5), { minLength: 12, maxLength: 12 });

export const driveLine = fc
  .record({
    slope: real(5e-6, 1e-4),
    intercept: real(0, 20),
    ua: real(0.1, 3),
    ub: real(1e-9, 1e-7),
    r: real(-0.98, 0),
    s: real(0.1, 5),
  })
  .map(
    ({ slope, intercept, ua, ub, r, s }): DeliveredLine => ({
      slope,
      intercept,
      interceptUncertainty: ua,
      slopeUncertainty: ub,
      covariance: r * ua * ub,
      residualDeviation: s,
    }),
  );

export function near(value: number | null | undefined, expected: number, relative = 1e-9): void {
  expect(Math.abs((value ?? Number.NaN) - expected)).toBeLessThanOrEqual(
    relative * Math.max(1e-12, Math.abs(expected)),
  );
}

function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  return value !== null && typeof value === 'object' ? Object.values(value).flatMap(numbersIn) : [];
}

/** A finite result, or gaps that each say what to do; never both. */
export function expectSound(outcome: Outcome<unknown>): void {
  if (outcome.value !== null) {
    expect(outcome.missing).toEqual([]);
    expect(numbersIn(outcome.value).every(Number.isFinite)).toBe(true);
    return;
  }
  expect(outcome.missing.length).toBeGreaterThan(0);
  for (const { symbol, name, remedy } of outcome.missing) {
    expect([symbol, name, remedy].every((text) => text.length > 0)).toBe(true);
  }
}
