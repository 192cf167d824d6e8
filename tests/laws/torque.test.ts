import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { acrossCorners } from '../../core/bolting/nut.ts';
import {
  equivalentStress,
  threadTorqueAtYield,
  torsionalStress,
  torsionModulus,
} from '../../core/bolting/stress.ts';
import { findThread, studThread, threadDesignations } from '../../core/bolting/thread.ts';
import {
  effectiveBearingDiameter,
  equalFriction,
  exactTorque,
  FLANK_ANGLE,
  loadByNutFactor,
  looseningTorque,
  meanBearingDiameter,
  nutFactorOf,
  torqueByNutFactor,
  torqueSplit,
  wholeTorque,
} from '../../core/bolting/torque.ts';
import { certificateLine } from '../../core/calibration/line.ts';
import { torqueAtPressure } from '../../core/calibration/reading.ts';
import { pressureForTorque } from '../../core/calibration/setting.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const designation = fc.constantFrom(...threadDesignations());
const thread = designation.map((name) => {
  const found = findThread(name);
  if (found === null) throw new Error(`no thread ${name}`);
  return found;
});

function near(value: number, expected: number, relative = 1e-9): void {
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(relative * Math.max(1, Math.abs(expected)));
}

describe('torque and load', () => {
  test('load → torque → load comes back, and torque rises with load', () => {
    fc.assert(
      fc.property(real(0.03, 0.8), real(1e3, 5e6), thread, (nutFactor, load, { diameter }) => {
        const torque = torqueByNutFactor(nutFactor, load, diameter);
        near(loadByNutFactor(nutFactor, torque, diameter), load);
        expect(torqueByNutFactor(nutFactor, load * 1.001, diameter)).toBeGreaterThan(torque);
      }),
    );
  });

  test('torque → pressure → torque comes back along any rising line', () => {
    fc.assert(
      fc.property(real(-20, 20), real(0.1, 30), real(50, 5000), (intercept, perBar, torque) => {
        const line = { intercept, slope: perBar / 1e5 };
        near(torqueAtPressure(line, pressureForTorque(line, torque)), torque);
      }),
    );
  });

  test('load → torque → pressure → torque → load comes back', () => {
    fc.assert(
      fc.property(
        real(0.08, 0.3),
        real(2e4, 1e6),
        thread,
        real(1, 20),
        (nutFactor, load, { diameter }, perBar) => {
          const line = { intercept: -3, slope: perBar / 1e5 };
          const torque = torqueByNutFactor(nutFactor, load, diameter);
          const back = torqueAtPressure(line, pressureForTorque(line, torque));
          near(loadByNutFactor(nutFactor, back, diameter), load);
        },
      ),
    );
  });

  test('K → μ → K comes back wherever K is large enough to have a μ', () => {
    fc.assert(
      fc.property(real(0.06, 0.6), thread, (nutFactor, found) => {
        const bearing = found.diameter * 1.35;
        const friction = equalFriction(nutFactor, found, bearing);
        if (friction === null) {
          expect(nutFactor * found.diameter).toBeLessThanOrEqual(found.pitch / (2 * Math.PI));
          return;
        }
        near(nutFactorOf(found, bearing, friction, friction), nutFactor);
      }),
    );
  });

  test('the three parts add up and scale with the load', () => {
    fc.assert(
      fc.property(
        real(1e3, 1e6),
        thread,
        real(0.05, 0.4),
        real(0.05, 0.4),
        (load, found, inThread, bearing) => {
          const split = torqueSplit(load, found, 1.3 * found.diameter, inThread, bearing);
          near(
            wholeTorque(torqueSplit(2 * load, found, 1.3 * found.diameter, inThread, bearing)),
            2 * wholeTorque(split),
          );
          expect(Math.min(split.stretch, split.thread, split.bearing)).toBeGreaterThan(0);
        },
      ),
    );
  });

  test('the exact form lies above the small-angle form by a few per cent at most', () => {
    fc.assert(
      fc.property(thread, real(0.08, 0.25), (found, friction) => {
        const bearing = 1.3 * found.diameter;
        const small = wholeTorque(torqueSplit(1e5, found, bearing, friction, friction));
        const screw = { lead: found.pitch, meanDiameter: found.pitchDiameter, flankAngle: FLANK_ANGLE };
        const exact = exactTorque(1e5, screw, bearing, friction, friction, 1);
        expect(exact).toBeGreaterThan(small);
        expect(exact).toBeLessThan(1.03 * small);
      }),
    );
  });

  test('loosening a clean joint takes less than tightening, exact and small-angle within 5 % of the difference', () => {
    fc.assert(
      fc.property(thread, real(0.08, 0.2), (found, friction) => {
        const bearing = 1.3 * found.diameter;
        const load = 1e5;
        const on = wholeTorque(torqueSplit(load, found, bearing, friction, friction));
        const screw = { lead: found.pitch, meanDiameter: found.pitchDiameter, flankAngle: FLANK_ANGLE };
        const exactDifference =
          exactTorque(load, screw, bearing, friction, friction, 1) -
          exactTorque(load, screw, bearing, friction, friction, -1);
        const difference = on - looseningTorque(on, load, found.pitch);
        expect(difference).toBeGreaterThan(0);
        // The tangent of the friction angle in a 30° flank: 1 + tan²ρ′ with ρ′ up to 13°.
        expect(exactDifference / difference).toBeGreaterThan(1);
        expect(exactDifference / difference).toBeLessThan(1.06);
      }),
    );
  });
});

test('the effective bearing diameter lies between the mean and the outer diameter', () => {
  fc.assert(
    fc.property(real(0.01, 0.2), real(1.05, 2), (inside, ratio) => {
      const outside = inside * ratio;
      const effective = effectiveBearingDiameter(outside, inside);
      expect(effective).toBeGreaterThanOrEqual(meanBearingDiameter(outside, inside));
      expect(effective).toBeLessThan(outside);
    }),
  );
});

test('the plastic section modulus is four thirds of the elastic one', () => {
  fc.assert(
    fc.property(real(0.005, 0.1), (diameter) => {
      near(torsionModulus(diameter, 'plastic') / torsionModulus(diameter, 'elastic'), 4 / 3);
    }),
  );
});

test('corners and flats of a hexagon', () => {
  near(acrossCorners(Math.sqrt(3)), 2);
});

test('a seized stud at its ceiling stands at yield', () => {
  fc.assert(
    fc.property(
      thread,
      real(200e6, 1100e6),
      real(0, 0.95),
      fc.constantFrom('elastic' as const, 'plastic' as const),
      (found, yieldStrength, share, model) => {
        const axial = share * yieldStrength;
        const torque = threadTorqueAtYield(yieldStrength, axial, found.stressDiameter, model);
        near(equivalentStress(axial, torsionalStress(torque, found.stressDiameter, model)), yieldStrength);
      },
    ),
  );
});

test('a line through exact points is found again, whatever the unit of pressure', () => {
  fc.assert(
    fc.property(real(-10, 10), real(0.2, 20), fc.integer({ min: 3, max: 30 }), (intercept, perBar, n) => {
      const points = Array.from({ length: n }, (_, i) => {
        const bar = 50 + 20 * i;
        return { pressure: bar * 1e5, torque: intercept + perBar * bar, direction: 'up' as const };
      });
      const line = certificateLine(points);
      near((line?.slope ?? Number.NaN) * 1e5, perBar, 1e-9);
      near(line?.intercept ?? Number.NaN, intercept, 1e-6);
      const scaled = certificateLine(points.map((point) => ({ ...point, pressure: point.pressure / 1000 })));
      near((scaled?.slope ?? Number.NaN) / 1000, line?.slope ?? Number.NaN, 1e-9);
    }),
  );
});

test('level, falling and too few points give no line', () => {
  const point = (bar: number, torque: number) => ({ pressure: bar * 1e5, torque, direction: 'up' as const });
  expect(certificateLine([point(100, 200), point(200, 400)])).toBeNull();
  expect(certificateLine([point(100, 200), point(200, 200), point(300, 200)])).toBeNull();
  expect(certificateLine([point(100, 300), point(200, 200), point(300, 100)])).toBeNull();
  expect(certificateLine([point(100, 200), point(100, 300), point(100, 400)])).toBeNull();
});

describe('threads', () => {
  test.each(threadDesignations())('%s is found by its own name and has areas in order', (name) => {
    const found = findThread(name);
    expect(found?.designation).toBe(name);
    const { rootArea = 0, tensileArea = 0, diameter = 0, rootDiameter = 0, pitchDiameter = 0 } = found ?? {};
    expect(rootArea).toBeGreaterThan(0);
    expect(tensileArea).toBeGreaterThan(rootArea);
    expect(Math.PI * (diameter / 2) ** 2).toBeGreaterThan(tensileArea);
    expect(pitchDiameter).toBeGreaterThan(rootDiameter);
  });

  test.each([
    ['M24', 'M24x3'],
    ['m24 × 3', 'M24x3'],
    ['1-1/8-8UN', '1-1/8-8 8UN'],
    ['1 1/8-8 UN', '1-1/8-8 8UN'],
    ['1.125-8UN', '1-1/8-8 8UN'],
    ['7/8 - 9 UNC', '7/8-9 UNC'],
    ['7/8"-9 UNC', '7/8-9 UNC'],
  ])('%s is read as %s', (text, name) => {
    expect(findThread(text)?.designation).toBe(name);
  });

  test.each(['', 'M24x7', '7/8-19 UNC', '1-1/8-8 UNC', 'M', '9/0-9 UNC', 'Ø 24'])(
    '“%s” is no thread',
    (text) => {
      expect(findThread(text)).toBeNull();
    },
  );

  test('plant studs are coarse to 1 inch and eight-thread above', () => {
    expect(studThread(1)?.designation).toBe('1-8 UNC');
    expect(studThread(1.125)?.designation).toBe('1-1/8-8 8UN');
  });
});
