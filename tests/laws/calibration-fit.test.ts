import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { certificateFit, linePoints, referenceOf } from '../../core/calibration/certificate-fit.ts';
import { hysteresis } from '../../core/calibration/hysteresis.ts';
import { leaveOneOut } from '../../core/calibration/leave-one-out.ts';
import { certificateLine, fitLine, lineUncertainty, type TorquePoint } from '../../core/calibration/line.ts';
import { inverse, NO_COMMON, predict, weightedLineUncertainty } from '../../core/calibration/prediction.ts';
import { type LinePoint, weightedLine } from '../../core/calibration/weighted-line.ts';
import { outlierLimit, studentQuantile } from '../../core/uncertainty/student-t.ts';
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

describe('weighted fit', () => {
  test('without the points’ own uncertainties it is the plain fit', () => {
    fc.assert(
      fc.property(wrenchPoints(), (points) => {
        const plain = fitLine(
          points.map(({ x }) => x),
          points.map(({ y }) => y),
        );
        const line = known(weightedLine(points));
        expect(line.weighting).toBe('equal');
        expect(line.chiSquared).toBeNull();
        near(line.slope, plain?.slope ?? Number.NaN);
        near(line.intercept, plain?.intercept ?? Number.NaN, 1e-7);
        near(line.slopeUncertainty, plain?.slopeUncertainty ?? Number.NaN, 1e-6);
        near(line.interceptUncertainty, plain?.interceptUncertainty ?? Number.NaN, 1e-6);
        near(line.covariance, plain?.covariance ?? Number.NaN, 1e-6);
        near(line.residualDeviation, plain?.residualDeviation ?? Number.NaN, 1e-6);
      }),
    );
  });

  test('equal uncertainties give the plain line, and only its uncertainty follows them', () => {
    fc.assert(
      fc.property(wrenchPoints(), real(0.1, 20), (points, u) => {
        const plain = known(weightedLine(points));
        const line = known(
          weightedLine(
            own(
              points,
              points.map(() => u),
            ),
          ),
        );
        near(line.slope, plain.slope);
        near(line.residualDeviation, plain.residualDeviation, 1e-6);
        near(line.slopeUncertainty, (plain.slopeUncertainty * u) / plain.residualDeviation, 1e-6);
        near(line.birgeRatio, plain.residualDeviation / u, 1e-6);
      }),
    );
  });

  test('one point without its own uncertainty makes all weights equal', () => {
    fc.assert(
      fc.property(wrenchPoints(), uncertainties, (points, us) => {
        const [first, ...others] = own(points, us);
        if (first === undefined) throw new Error('no point');
        expect(known(weightedLine([{ ...first, u: null }, ...others]))).toEqual(known(weightedLine(points)));
      }),
    );
  });

  test('weights count by their ratios: the line stays when every uncertainty is scaled', () => {
    fc.assert(
      fc.property(wrenchPoints(), uncertainties, real(1e-6, 1e6), (points, us, scale) => {
        const line = known(weightedLine(own(points, us)));
        const scaled = known(
          weightedLine(
            own(
              points,
              us.map((u) => u * scale),
            ),
          ),
        );
        near(scaled.slope, line.slope);
        near(scaled.residualDeviation, line.residualDeviation, 1e-6);
        near(scaled.slopeUncertainty, scale * line.slopeUncertainty);
        near(scaled.birgeRatio, (line.birgeRatio ?? Number.NaN) / scale, 1e-6);
      }),
    );
  });

  test('other units of pressure and torque give the same line', () => {
    fc.assert(
      fc.property(
        wrenchPoints(),
        uncertainties,
        real(1e-5, 1e5),
        real(1e-3, 1e3),
        (points, us, perX, perY) => {
          const line = known(weightedLine(own(points, us)));
          const other = known(
            weightedLine(
              own(points, us).map(({ x, y, u }) => ({ x: x * perX, y: y * perY, u: (u ?? 1) * perY })),
            ),
          );
          near(other.slope, (line.slope * perY) / perX);
          near(other.slopeUncertainty, (line.slopeUncertainty * perY) / perX);
          near(other.interceptUncertainty, line.interceptUncertainty * perY, 1e-7);
          near(other.correlation, line.correlation ?? Number.NaN, 1e-7);
          near(other.birgeRatio, line.birgeRatio ?? Number.NaN, 1e-6);
        },
      ),
    );
  });

  test('leverages lie between 0 and 1 and add up to the two parameters', () => {
    fc.assert(
      fc.property(wrenchPoints(), uncertainties, (points, us) => {
        const { leverages } = known(weightedLine(own(points, us)));
        near(
          leverages.reduce((sum, h) => sum + h, 0),
          2,
          1e-9,
        );
        for (const h of leverages) expect(h > 0 && h <= 1 + 1e-12).toBe(true);
      }),
    );
  });

  test('points that scatter more than they state widen the line; fewer than stated do not narrow it', () => {
    const points = [0, 1, 2, 3, 4].map((x): LinePoint => ({ x, y: x + (x % 2), u: 0.01 }));
    const line = known(weightedLine(points));
    expect(line.birgeRatio).toBeGreaterThan(10);
    near(weightedLineUncertainty(line, 0), (line.birgeRatio ?? 0) * line.interceptUncertainty);
    const quiet = known(weightedLine(points.map((point) => ({ ...point, u: 100 }))));
    near(weightedLineUncertainty(quiet, 0), quiet.interceptUncertainty);
  });

  test('a certificate’s line takes the points’ own uncertainties, and stays as it was without them', () => {
    fc.assert(
      fc.property(wrenchPoints(), uncertainties, (points, us) => {
        const measured = points.map(({ x, y }) => ({ pressure: x, torque: y, direction: 'up' as const }));
        const stated = measured.map((point, i) => ({ ...point, own: us[i] ?? 1 }));
        const line = known(weightedLine(own(points, us)));
        const view = certificateLine(stated);
        if (view === null) {
          expect(line.slope).toBeLessThanOrEqual(0);
          return;
        }
        expect(view.slope).toBe(line.slope);
        near(lineUncertainty(view, 3e7), weightedLineUncertainty(line, 3e7), 1e-6);
        expect(
          certificateLine(stated.map((point, i) => (i === 0 ? { ...point, own: null } : point))),
        ).toEqual(certificateLine(measured));
      }),
    );
  });

  test('two points, one pressure, or no number are gaps', () => {
    const point = (x: number, y: number, u: number | null = null) => ({ x, y, u });
    expect(weightedLine([]).missing[0]?.symbol).toBe('n');
    expect(weightedLine([point(1, 1), point(2, 2)]).missing[0]?.reason).toBe('out of range');
    expect(weightedLine([point(5, 1), point(5, 2), point(5, 3)]).missing[0]?.reason).toBe('no solution');
    expect(weightedLine([point(1, 1), point(2, Number.NaN), point(3, 3)]).missing[0]?.name).toBe(
      'ordinate of point 2',
    );
    expect(weightedLine([point(1, 1, 0), point(2, 2, 1), point(3, 3, 1)]).missing[0]?.symbol).toBe('u');
  });

  test('a certificate’s expanded uncertainties become standard ones; zero and none are not stated', () => {
    const point = (bar: number, torque: number, uncertainty: { si: number } | null) => ({
      pressure: { si: bar * 1e5 },
      torque: { si: torque },
      uncertainty,
    });
    const measured = {
      points: [point(100, 150, { si: 3 }), point(200, 301, { si: 0 }), point(300, 450, null)],
      expandedUncertainty: { si: 0.01 },
      coverageFactor: 2,
    };
    expect(linePoints(measured).map(({ u }) => u)).toEqual([1.5, null, null]);
    expect(known(certificateFit(measured)).weighting).toBe('equal');
    expect(referenceOf(measured)).toEqual({ shift: 0, scale: 0.005 });
    expect(referenceOf({ ...measured, expandedUncertainty: null })).toBeNull();
  });
});

describe('prediction', () => {
  test('the reference’s uncertainty does not shrink with the number of points; the line’s does', () => {
    fc.assert(
      fc.property(
        wrenchPoints(),
        fc.integer({ min: 2, max: 20 }),
        real(0.001, 0.05),
        (points, times, scale) => {
          const many = Array.from({ length: times }, () => points).flat();
          const x = points[0]?.x ?? 0;
          const once = known(predict(known(weightedLine(points)), x, { shift: 0.5, scale }, 0.95));
          const repeated = known(predict(known(weightedLine(many)), x, { shift: 0.5, scale }, 0.95));
          near(repeated.common, once.common, 1e-6);
          expect(repeated.line).toBeLessThan(once.line);
          expect(repeated.combined).toBeGreaterThanOrEqual(repeated.common);
        },
      ),
    );
  });

  test('one use carries the scatter about the line beside the line’s own uncertainty', () => {
    fc.assert(
      fc.property(wrenchPoints(), real(2e6, 7e7), (points, x) => {
        const line = known(weightedLine(points));
        const found = known(predict(line, x, NO_COMMON, 0.95));
        near(found.combined, Math.hypot(found.line, line.residualDeviation));
        expect(found.degreesOfFreedom).toBeCloseTo(points.length - 2, 6);
        near(found.interval[1] - found.value, found.coverage * found.combined, 1e-6);
        expect(known(predict(line, x, NO_COMMON, 0.99)).coverage).toBeGreaterThan(found.coverage);
      }),
    );
  });

  test('a setting read back gives its torque, and its uncertainty over the slope', () => {
    fc.assert(
      fc.property(wrenchPoints(), real(0.2, 1), real(0, 0.02), (points, share, scale) => {
        const line = known(weightedLine(points));
        const x = share * 7e7;
        const there = known(predict(line, x, { shift: 0, scale }, 0.95));
        const back = known(inverse(line, there.value, null, { shift: 0, scale }, 0.95));
        near(back.value, x, 1e-6);
        near(back.uncertainty, there.combined / Math.abs(line.slope), 1e-6);
      }),
    );
  });

  test('Student’s t comes down to the normal value and is odd about the middle', () => {
    fc.assert(
      fc.property(real(0.55, 0.999), real(1, 200), (p, nu) => {
        const t = known(studentQuantile(p, nu));
        near(known(studentQuantile(1 - p, nu)), -t, 1e-6);
        expect(known(studentQuantile(p, nu + 5))).toBeLessThan(t);
        expect(t).toBeGreaterThan(known(studentQuantile(p, 1e9)));
      }),
    );
  });
});

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
  const anyPoints = fc.array(fc.record({ x: anyNumber, y: anyNumber, u: anyOrNull }), { maxLength: 6 });
  const goodPoints = wrenchPoints();

  test('fit and leave-one-out', () => {
    fc.assert(
      fc.property(anyPoints, anyNumber, (points, risk) => {
        expectSound(weightedLine(points));
        expectSound(leaveOneOut(points, risk));
      }),
      { numRuns: 1000 },
    );
  });

  test('prediction and setting', () => {
    fc.assert(
      fc.property(
        goodPoints,
        anyNumber,
        anyNumber,
        anyNumber,
        anyNumber,
        (points, x, shift, scale, probability) => {
          const line = known(weightedLine(points));
          expectSound(predict(line, x, { shift, scale }, probability));
          expectSound(inverse(line, x, shift, { shift, scale }, probability));
          expectSound(studentQuantile(probability, x));
          expectSound(outlierLimit(x, probability));
        },
      ),
      { numRuns: 500 },
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
