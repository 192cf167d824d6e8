import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { hysteresis } from '../../core/calibration/hysteresis.ts';
import { leaveOneOut } from '../../core/calibration/leave-one-out.ts';
import type { TorquePoint } from '../../core/calibration/line.ts';
import { type LinePoint, weightedLine } from '../../core/calibration/weighted-line.ts';
import { outlierLimit } from '../../core/uncertainty/student-t.ts';
import { known } from '../truth/known.ts';
import {
  anyNumber,
  anyOrNull,
  expectSound,
  near,
  own,
  real,
  uncertainties,
  wrenchPoints,
} from './calibration-arbitraries.ts';

describe('leave-one-out', () => {
  test('fitting again without the point gives what the closed form says', () => {
    fc.assert(
      fc.property(wrenchPoints(5), uncertainties, fc.boolean(), (plain, us, weighted) => {
        const points = weighted ? own(plain, us) : plain;
        const { points: judged } = known(leaveOneOut(points, 0.05));
        const line = known(weightedLine(points));
        const squares = line.residualDeviation ** 2 * line.degreesOfFreedom;
        const floor = (1e-10 * Math.max(...points.map(({ y }) => Math.abs(y)))) ** 2;
        for (const found of judged) {
          const r = line.residuals[found.index] ?? Number.NaN;
          const w = line.weights[found.index] ?? Number.NaN;
          const free = 1 - (line.leverages[found.index] ?? Number.NaN);
          const left = (squares - (w * r * r) / free) / (line.degreesOfFreedom - 1);
          expect(Math.abs((found.residual ?? Number.NaN) - r / free)).toBeLessThan(
            1e-6 * line.residualDeviation,
          );
          // The closed form takes a small difference of large squares: it loses half its digits where the others agree.
          const variance = (found.uncertainty ?? Number.NaN) ** 2 * w * free;
          expect(Math.abs(variance - left)).toBeLessThan(1e-9 * squares + floor);
        }
      }),
    );
  });

  test('deleting the one point without its own uncertainty leaves the others unweighted', () => {
    const us = [0.1, 5, 0.1, 5, null];
    const points = us.map((u, i): LinePoint => ({ x: i, y: i + 0.1 * (i % 2), u }));
    expect(known(leaveOneOut(points, 0.05))).toEqual(
      known(
        leaveOneOut(
          points.map((point) => ({ ...point, u: null })),
          0.05,
        ),
      ),
    );
  });

  test('names the point that was planted far out', () => {
    fc.assert(
      fc.property(wrenchPoints(8), fc.nat(), (points, which) => {
        const at = which % points.length;
        const line = known(weightedLine(points));
        const far = 1000 * Math.max(...line.residuals.map(Math.abs));
        const planted = points.map((point, i) => (i === at ? { ...point, y: point.y + far } : point));
        const found = known(leaveOneOut(planted, 0.05));
        expect(found.farthest).toBe(at);
        expect(found.points[at]?.outlying).toBe(true);
      }),
    );
  });

  test('stays silent on points of one line with ordinary scatter', () => {
    const scatter = [0.3, -0.2, 0.1, -0.4, 0.2, 0.1, -0.1, 0.05];
    const points = scatter.map((e, i): LinePoint => ({ x: i, y: 10 + 3 * i + e, u: null }));
    expect(known(leaveOneOut(points, 0.05)).points.filter(({ outlying }) => outlying)).toEqual([]);
  });

  test('a point off an exact line stands out without a size; on it, nothing does', () => {
    const exact = [1, 2, 3, 4, 5].map((x): LinePoint => ({ x, y: 2 * x, u: null }));
    expect(known(leaveOneOut(exact, 0.05)).points.some(({ outlying }) => outlying)).toBe(false);
    const off = known(leaveOneOut([...exact, { x: 6, y: 15, u: null }], 0.05));
    expect(off.farthest).toBe(5);
    expect(off.largest).toBeNull();
    expect(off.points[5]).toMatchObject({ studentised: null, outlying: true });
  });

  test('a point that alone holds the line up can’t be judged', () => {
    const points = [
      [1, 1],
      [1, 1.1],
      [1, 0.9],
      [5, 7],
    ].map(([x = 0, y = 0]): LinePoint => ({ x, y, u: null }));
    expect(known(leaveOneOut(points, 0.05)).points[3]?.residual).toBeNull();
  });

  test('three points are too few', () => {
    expect(
      leaveOneOut(
        [1, 2, 3].map((x) => ({ x, y: x, u: null })),
        0.05,
      ).value,
    ).toBeNull();
  });

  test('the limit rises with the number of points at one risk', () => {
    expect(known(outlierLimit(60, 0.05))).toBeGreaterThan(known(outlierLimit(30, 0.05)));
    expect(known(outlierLimit(10, 0.01))).toBeGreaterThan(known(outlierLimit(10, 0.05)));
  });
});

describe('hysteresis', () => {
  const point = (pressure: number, torque: number, direction: 'up' | 'down'): TorquePoint => ({
    pressure,
    torque,
    direction,
  });

  test('is zero for readings that agree, and turns its sign when the directions are exchanged', () => {
    fc.assert(
      fc.property(wrenchPoints(), real(-0.05, 0.05), (points, h) => {
        const up = points.map(({ x, y }) => point(x, Math.abs(y) + 10, 'up'));
        const same = up.map(({ pressure, torque }) => point(pressure, torque, 'down'));
        expect(known(hysteresis([...up, ...same], 0)).largest.difference).toBe(0);
        const other = up.map(({ pressure, torque }) => point(pressure, torque * (1 + h), 'down'));
        const there = known(hysteresis([...up, ...other], 0));
        expect(Math.abs(there.largest.relative - h / (1 + h / 2))).toBeLessThan(1e-12);
        const turned = [...up, ...other].map((one) =>
          point(one.pressure, one.torque, one.direction === 'up' ? 'down' : 'up'),
        );
        near(known(hysteresis(turned, 0)).largest.relative, -there.largest.relative);
      }),
    );
  });

  test('pairs pressures within the tolerance, means repeats, and finds the largest', () => {
    const found = known(
      hysteresis(
        [
          point(1e7, 100, 'up'),
          point(1e7, 102, 'up'),
          point(2e7, 200, 'up'),
          point(3e7, 300, 'up'),
          point(2.0001e7, 206, 'down'),
          point(1e7, 102, 'down'),
        ],
        5e4,
      ),
    );
    expect(found.pairs).toHaveLength(2);
    expect(found.pairs[0]).toMatchObject({ up: 101, down: 102 });
    expect(found.largest.difference).toBe(6);
    expect(found.up?.slope).toBeGreaterThan(0);
    expect(found.down).toBeNull();
  });

  test('without both directions, or without equal pressures, it is not known', () => {
    const up = [point(1e7, 100, 'up'), point(2e7, 200, 'up')];
    expect(hysteresis(up, 0).missing[0]?.reason).toBe('missing');
    expect(hysteresis([...up, point(1.5e7, 150, 'down')], 1e5).missing[0]?.remedy).toContain('not known');
    expect(hysteresis([], 0).missing).toHaveLength(2);
  });
});

describe('whatever is given, the answer is finite or says what is missing', () => {
  test('leave-one-out', () => {
    const anyPoints = fc.array(fc.record({ x: anyNumber, y: anyNumber, u: anyOrNull }), { maxLength: 6 });
    fc.assert(
      fc.property(anyPoints, anyNumber, (points, risk) => {
        expectSound(leaveOneOut(points, risk));
        expectSound(outlierLimit(points.length, risk));
      }),
      { numRuns: 1000 },
    );
    fc.assert(
      fc.property(wrenchPoints(), anyNumber, (points, risk) => expectSound(leaveOneOut(points, risk))),
    );
  });

  test('hysteresis', () => {
    const any = fc.array(
      fc.record({
        pressure: anyNumber,
        torque: anyNumber,
        direction: fc.constantFrom('up' as const, 'down' as const),
      }),
      { maxLength: 6 },
    );
    fc.assert(
      fc.property(any, anyNumber, (points, tolerance) => expectSound(hysteresis(points, tolerance))),
      { numRuns: 500 },
    );
  });
});
