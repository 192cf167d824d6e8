import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { certificateFit, linePoints, referenceOf } from '../../core/calibration/certificate-fit.ts';
import { certificateLine, fitLine, lineUncertainty } from '../../core/calibration/line.ts';
import { inverse, NO_COMMON, predict, weightedLineUncertainty } from '../../core/calibration/prediction.ts';
import { type LinePoint, weightedLine } from '../../core/calibration/weighted-line.ts';
import { studentQuantile } from '../../core/uncertainty/student-t.ts';
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

  test('what is known beside the scatter brings the coverage factor towards the normal one', () => {
    const line = known(weightedLine([1, 3.2, 4.8, 7].map((y, x) => ({ x, y, u: null }))));
    const bare = known(predict(line, 1, NO_COMMON, 0.95));
    expect(bare.degreesOfFreedom).toBeCloseTo(2, 9);
    expect(bare.coverage).toBeCloseTo(4.303, 3);
    // √3 times the random part beside it doubles the combined one: 2⁴ times the degrees of freedom.
    const twice = known(predict(line, 1, { shift: bare.combined * Math.sqrt(3), scale: 0 }, 0.95));
    expect(twice.degreesOfFreedom).toBeCloseTo(32, 6);
    expect(twice.coverage).toBeCloseTo(2.037, 3);
    const exact = known(weightedLine([0, 1, 2, 3].map((x) => ({ x, y: 2 * x, u: 0.1 }))));
    expect(known(predict(exact, 1, { shift: 0.5, scale: 0 }, 0.95)).coverage).toBeCloseTo(1.96, 3);
  });

  test('a setting’s interval is Student’s where the scatter is estimated, normal where it is stated', () => {
    const points = [1, 3.2, 4.8, 7].map((y, x): LinePoint => ({ x, y, u: 1 }));
    const line = known(weightedLine(points));
    expect(line.birgeRatio).toBeLessThan(1);
    expect(known(inverse(line, 4, 0.5, NO_COMMON, 0.95)).coverage).toBeCloseTo(1.96, 3);
    expect(known(inverse(line, 4, null, NO_COMMON, 0.95)).coverage).toBeCloseTo(4.303, 3);
    const scattered = known(weightedLine(points.map((point) => ({ ...point, u: 0.01 }))));
    expect(known(inverse(scattered, 4, 0.5, NO_COMMON, 0.95)).coverage).toBeCloseTo(4.303, 3);
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

describe('whatever is given, the answer is finite or says what is missing', () => {
  const anyPoints = fc.array(fc.record({ x: anyNumber, y: anyNumber, u: anyOrNull }), { maxLength: 6 });
  const goodPoints = wrenchPoints();

  test('fit', () => {
    fc.assert(
      fc.property(anyPoints, (points) => {
        expectSound(weightedLine(points));
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
        },
      ),
      { numRuns: 500 },
    );
  });
});
