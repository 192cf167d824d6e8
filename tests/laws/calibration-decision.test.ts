import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  decide,
  decideCertificate,
  deliveredFromIndicated,
  indicatedFromDelivered,
} from '../../core/calibration/decision.ts';
import {
  batchLoadError,
  deliveredError,
  gaugeTorqueError,
  realLoad,
} from '../../core/calibration/delivered-error.ts';
import { pointErrors } from '../../core/calibration/point-errors.ts';
import { known } from '../truth/known.ts';
import { anyNumber, anyOrNull, driveLine, expectSound, near, real } from './calibration-arbitraries.ts';

const error = real(-0.2, 0.2);
const expanded = real(0, 0.1);
const limit = real(0.005, 0.1);

describe('decision', () => {
  test('what a guard band accepts, simple acceptance accepts; what it rejects, simple acceptance rejects', () => {
    fc.assert(
      fc.property(error, expanded, limit, (e, u, l) => {
        const point = { error: e, expanded: u };
        const guarded = known(decide(point, l, 'guard band of U')).verdict;
        const simple = known(decide(point, l, 'simple acceptance')).verdict;
        if (guarded === 'accept') expect(simple).toBe('accept');
        if (guarded === 'reject') expect(simple).toBe('reject');
        expect(simple).not.toBe('conditional');
      }),
    );
  });

  test('without uncertainty both rules are one', () => {
    fc.assert(
      fc.property(error, limit, (e, l) => {
        const point = { error: e, expanded: 0 };
        expect(known(decide(point, l, 'guard band of U')).verdict).toBe(
          known(decide(point, l, 'simple acceptance')).verdict,
        );
      }),
    );
  });

  test('neither the sign of the error nor percent instead of fractions changes the verdict', () => {
    fc.assert(
      fc.property(error, expanded, limit, fc.constantFrom(0.1, 2, 5), (e, u, l, scale) => {
        const verdict = known(decide({ error: e, expanded: u }, l, 'guard band of U')).verdict;
        expect(known(decide({ error: -e, expanded: u }, l, 'guard band of U')).verdict).toBe(verdict);
        const scaled = { error: e * scale, expanded: u * scale };
        expect(known(decide(scaled, l * scale, 'guard band of U')).verdict).toBe(verdict);
      }),
    );
  });

  test.each([
    [0.03, 0.01, 'accept', true],
    [0.04, 0, 'accept', true],
    [0.035, 0.01, 'conditional', true],
    [-0.045, 0.01, 'conditional', false],
    [-0.051, 0.01, 'reject', false],
  ] as const)('error %d with U %d against 4 %%: %s', (e, u, verdict, within) => {
    const found = known(decide({ error: e, expanded: u }, 0.04, 'guard band of U'));
    expect(found.verdict).toBe(verdict);
    expect(found.withinLimit).toBe(within);
    near(found.margin, 0.04 - u - Math.abs(e), 1e-9);
  });

  test('an uncertainty nobody states is a gap with a guard band, and none without', () => {
    const point = { error: 0.001, expanded: null };
    expect(decide(point, 0.04, 'guard band of U').missing[0]).toMatchObject({
      symbol: 'U',
      reason: 'missing',
    });
    expect(known(decide(point, 0.04, 'simple acceptance')).expanded).toBeNull();
    expect(
      decideCertificate([{ error: 0, expanded: 0 }, point], 0.04, 'guard band of U').missing[0]?.name,
    ).toContain('point 2');
    expect(decideCertificate([], 0.04, 'simple acceptance').value).toBeNull();
    expect(decide({ error: 0, expanded: 0 }, null, 'simple acceptance').missing[0]?.symbol).toBe('L');
  });

  test('a certificate is no better than its worst point, whatever their order', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ error, expanded }), { minLength: 1, maxLength: 8 }),
        limit,
        (points, l) => {
          const found = known(decideCertificate(points, l, 'guard band of U'));
          const verdicts = found.points.map(({ verdict }) => verdict);
          const expected = verdicts.includes('reject')
            ? 'reject'
            : verdicts.includes('conditional')
              ? 'conditional'
              : 'accept';
          expect(found.verdict).toBe(expected);
          for (const { margin } of found.points) {
            expect(found.points[found.worst]?.margin).toBeLessThanOrEqual(margin);
          }
          expect(known(decideCertificate([...points].reverse(), l, 'guard band of U')).verdict).toBe(
            expected,
          );
        },
      ),
    );
  });
});

describe('sign of an error', () => {
  test('turns and comes back', () => {
    fc.assert(
      fc.property(real(-0.9, 3), (e) => {
        const as = known(indicatedFromDelivered(e));
        expect(Math.abs(known(deliveredFromIndicated(as)) - e)).toBeLessThan(1e-9);
        if (Math.abs(e) > 1e-9) expect(Math.sign(as)).toBe(-Math.sign(e));
      }),
    );
  });

  test('the denominators differ: a tool that indicates 100 for 108 delivers 8 % more, and is stated at −7.4 %', () => {
    expect(known(indicatedFromDelivered(0.08))).toBeCloseTo(-8 / 108, 12);
    expect(known(deliveredFromIndicated(-8 / 108))).toBeCloseTo(0.08, 12);
  });

  test('−100 % and beyond is no error of a tool', () => {
    expect(deliveredFromIndicated(-1).value).toBeNull();
    expect(indicatedFromDelivered(-1.5).value).toBeNull();
    expect(deliveredFromIndicated(null).missing[0]?.reason).toBe('missing');
  });
});

describe('delivered error', () => {
  test('is zero where the lines agree', () => {
    fc.assert(
      fc.property(driveLine, real(1e6, 7e7), (line, pressure) => {
        expect(known(deliveredError(line, line, pressure, 0.005)).error).toBe(0);
      }),
    );
  });

  test('of a tool that gives a part of the intended torque at every pressure is that part', () => {
    fc.assert(
      fc.property(driveLine, real(1e6, 7e7), real(-0.5, 0.5), (line, pressure, part) => {
        const factor = 1 + part;
        const delivered = { ...line, intercept: line.intercept * factor, slope: line.slope * factor };
        const found = known(deliveredError(line, delivered, pressure, 0.005));
        expect(Math.abs(found.error - part)).toBeLessThan(1e-12);
        expect(
          Math.abs(known(deliveredFromIndicated(known(indicatedFromDelivered(found.error)))) - part),
        ).toBeLessThan(1e-9);
      }),
    );
  });

  test('does not change with the units of the lines', () => {
    fc.assert(
      fc.property(
        driveLine,
        driveLine,
        real(1e6, 7e7),
        real(0.01, 100),
        (intended, delivered, pressure, scale) => {
          const found = known(deliveredError(intended, delivered, pressure, 0.01));
          const scaled = known(
            deliveredError(
              { intercept: intended.intercept * scale, slope: intended.slope * scale },
              {
                intercept: delivered.intercept * scale,
                slope: delivered.slope * scale,
                interceptUncertainty: delivered.interceptUncertainty * scale,
                slopeUncertainty: delivered.slopeUncertainty * scale,
                covariance: delivered.covariance * scale * scale,
                residualDeviation: delivered.residualDeviation * scale,
              },
              pressure,
              0.01,
            ),
          );
          expect(Math.abs(scaled.error - found.error)).toBeLessThan(1e-9);
          near(scaled.uncertainty, found.uncertainty ?? Number.NaN, 1e-6);
        },
      ),
    );
  });

  test('is told where the reference is not stated, with an uncertainty that is not known', () => {
    fc.assert(
      fc.property(driveLine, real(1e6, 7e7), (line, pressure) => {
        const found = known(deliveredError(line, line, pressure, null));
        expect(found.uncertainty).toBeNull();
        const load = known(realLoad(1e5, found, 0.1));
        expect(load.interval).toBeNull();
        near(load.load, 1e5);
      }),
    );
  });

  test('carries the line, one use and the reference, as worked by hand', () => {
    const intended = { intercept: 0, slope: 1e-5 };
    const delivered = {
      intercept: 0,
      slope: 9.2e-6,
      interceptUncertainty: 1,
      slopeUncertainty: 0,
      covariance: 0,
      residualDeviation: 2,
    };
    const found = known(deliveredError(intended, delivered, 1e7, 0.05));
    // 100 N·m meant, 92 delivered: √(1² + 2² + 4.6²) = 5.1147.
    expect(found.error).toBeCloseTo(-0.08, 12);
    expect(found.uncertainty).toBeCloseTo(0.051147, 6);
  });

  test('needs the event’s pressure', () => {
    const line = {
      intercept: 0,
      slope: 1e-5,
      interceptUncertainty: 1,
      slopeUncertainty: 0,
      covariance: 0,
      residualDeviation: 1,
    };
    expect(deliveredError(line, line, null, 0.01).missing[0]?.symbol).toBe('p');
    expect(deliveredError({ intercept: -500, slope: 1e-5 }, line, 1e7, 0.01).missing[0]?.symbol).toBe('Ti');
  });
});

describe('errors of a certificate’s points', () => {
  const line = { intercept: 0, slope: 1.5e-5 };
  const points = [100, 300, 500].map((bar) => ({
    pressure: bar * 1e5,
    torque: 1.38 * bar,
    direction: 'up' as const,
  }));

  test('are those of the delivered line at their pressures, with the reference’s uncertainty of what was measured', () => {
    const errors = pointErrors(points, line, 0.01);
    expect(errors).toHaveLength(points.length);
    for (const { pressure, error: e, expanded: u } of errors) {
      near(e, -0.08, 1e-9);
      near(u, 0.0092, 1e-9);
      const delivered = {
        ...line,
        slope: 1.38e-5,
        interceptUncertainty: 0,
        slopeUncertainty: 0,
        covariance: 0,
        residualDeviation: 0,
      };
      near(known(deliveredError(line, delivered, pressure, null)).error, e ?? Number.NaN);
    }
  });

  test('are rejected as a whole when they lie 8 % low, and a gap without a line to compare with', () => {
    expect(known(decideCertificate(pointErrors(points, line, 0.01), 0.04, 'guard band of U')).verdict).toBe(
      'reject',
    );
    const none = pointErrors(points, { intercept: -1e4, slope: 1.5e-5 }, 0.01);
    expect(decideCertificate(none, 0.04, 'simple acceptance').missing).toHaveLength(3);
    expect(decideCertificate(pointErrors(points, line, null), 0.04, 'guard band of U').value).toBeNull();
  });
});

describe('gauge and batch', () => {
  test('a gauge that is right gives no error; one that shows more than there is gives too little torque', () => {
    fc.assert(
      fc.property(driveLine, real(2e6, 7e7), real(0.001, 0.2), (line, pressure, part) => {
        expect(known(gaugeTorqueError(line, pressure, pressure, 1e4)).error).toBe(0);
        const low = known(gaugeTorqueError(line, pressure, pressure * (1 - part), 1e4));
        expect(low.error).toBeLessThan(0);
        // An intercept above zero keeps part of the torque: the error stays below that of the pressure.
        expect(low.error).toBeGreaterThanOrEqual(-part - 1e-12);
        expect(known(gaugeTorqueError(line, pressure, pressure, null)).uncertainty).toBeNull();
      }),
    );
  });

  test('a batch with more friction than assumed loads the bolt less, by K assumed over K real', () => {
    fc.assert(
      fc.property(real(0.08, 0.3), real(0.08, 0.3), (assumed, real_) => {
        const found = known(batchLoadError(assumed, real_, 0.01));
        near(1 + found.error, assumed / real_);
        near(known(realLoad(1e5, found, null)).load, (1e5 * assumed) / real_);
        expect(known(batchLoadError(assumed, assumed, 0.01)).error).toBe(0);
      }),
    );
  });
});

describe('real load', () => {
  test('has the interval of a lognormal load, as worked by hand', () => {
    const found = known(realLoad(2e5, { error: -0.5, uncertainty: 0.05 }, null));
    expect(found.load).toBeCloseTo(1e5, 6);
    const [low, high] = found.interval ?? [Number.NaN, Number.NaN];
    // 0.05 on half the load is 10 %: ln(high/low) = 2·1.95996·√ln 1.01.
    expect(Math.log(high / low)).toBeCloseTo(0.39102, 4);
    const both = known(realLoad(2e5, { error: -0.5, uncertainty: 0.03 }, 0.08)).interval ?? [
      Number.NaN,
      Number.NaN,
    ];
    expect(Math.log(both[1] / both[0])).toBeCloseTo(0.39102, 4);
  });

  test('lies inside its interval, which friction widens', () => {
    fc.assert(
      fc.property(real(1e4, 1e6), real(-0.5, 0.5), real(0.001, 0.05), real(0.01, 0.3), (load, e, u, v) => {
        const tool = known(realLoad(load, { error: e, uncertainty: u }, null));
        const both = known(realLoad(load, { error: e, uncertainty: u }, v));
        near(tool.load, load * (1 + e));
        const [low, high] = tool.interval ?? [Number.NaN, Number.NaN];
        const [wideLow, wideHigh] = both.interval ?? [Number.NaN, Number.NaN];
        expect(wideLow < low && low < tool.load && tool.load < high && high < wideHigh).toBe(true);
        expect([tool.withFriction, both.withFriction]).toEqual([false, true]);
      }),
    );
  });
});

test('whatever is given, the answer is finite or says what is missing', () => {
  const rule = fc.constantFrom('simple acceptance' as const, 'guard band of U' as const);
  const anyLine = fc.record({
    intercept: anyNumber,
    slope: anyNumber,
    interceptUncertainty: anyNumber,
    slopeUncertainty: anyNumber,
    covariance: anyNumber,
    residualDeviation: anyNumber,
  });
  fc.assert(
    fc.property(anyOrNull, anyOrNull, anyOrNull, rule, anyLine, anyLine, (a, b, c, by, one, two) => {
      expectSound(decide({ error: a, expanded: b }, c, by));
      expectSound(
        decideCertificate(
          [
            { error: a, expanded: b },
            { error: c, expanded: a },
          ],
          b,
          by,
        ),
      );
      expectSound(deliveredFromIndicated(a));
      expectSound(indicatedFromDelivered(a));
      expectSound(deliveredError(one, two, a, b));
      expectSound(gaugeTorqueError(one, a, b, c));
      expectSound(batchLoadError(a, b, c));
      expectSound(realLoad(a, { error: b ?? 0, uncertainty: c }, a));
    }),
    { numRuns: 2000 },
  );
});
