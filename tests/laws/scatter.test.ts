import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { circulant, interaction, type RingJoint } from '../../core/scatter/bolts.ts';
import { boltField } from '../../core/scatter/contact.ts';
import { evenPlan } from '../../core/scatter/even.ts';
import { fitGasket } from '../../core/scatter/fit.ts';
import { planSteps } from '../../core/scatter/plan-steps.ts';
import { passesUntilQuiet } from '../../core/scatter/quiet.ts';
import { modeCompliance, rectangularSection, ringCompliance } from '../../core/scatter/ring.ts';
import { evenness, simulate, simulateOn, type TighteningStep } from '../../core/scatter/simulate.ts';
import { evenWords, sensitivityWords } from '../../core/scatter/words.ts';
import { findPlan, PASS_PLANS } from '../../core/sequence/plans.ts';
import { starOrder } from '../../core/sequence/star.ts';
import { gridBeamCompliance } from './grid-beam.ts';
import { JOINT_B, STAR_12 } from './scatter-joints.ts';

const { flanges, gasket, boltRadius } = JOINT_B;
const [ring] = flanges;
const RIGID = { bending: Infinity, torsion: Infinity, centroidRadius: ring.centroidRadius };
const near = (value: number | undefined, expected: number, relative: number) =>
  expect(Math.abs((value ?? Number.NaN) - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));

const joints = fc
  .record({
    boltCount: fc.integer({ min: 4, max: 40 }),
    slender: fc.double({ min: 1.8, max: 8, noNaN: true }),
    width: fc.double({ min: 0.03, max: 0.15, noNaN: true }),
    thickness: fc.double({ min: 0.015, max: 0.1, noNaN: true }),
    foundation: fc.double({ min: 2e8, max: 5e10, noNaN: true }),
    boltStiffness: fc.double({ min: 5e7, max: 3e9, noNaN: true }),
  })
  .map(({ boltCount, slender, width, thickness, foundation, boltStiffness }): RingJoint => {
    const radius = slender * width;
    const flange = { ...rectangularSection(200e9, width, thickness, 0.3), centroidRadius: radius };
    return {
      boltCount,
      boltStiffness,
      boltRadius: radius + width / 5,
      flanges: [flange, flange],
      gasket: { radius: radius - width / 3, foundation, width: width / 4 },
    };
  });

const steps = (joint: RingJoint, load: number) => {
  const plan = findPlan('staged-thirds');
  return (plan === null ? null : planSteps(plan, joint.boltCount, load)) ?? [];
};

describe('limit cases of the ring', () => {
  test('mode 0 without foundation is the textbook rotation of a ring, M·R²/(E·I)', () => {
    // A line moment m per length of the centroid's circle turns the section by m·Rc²/EI; the bolt sits eb outside.
    const loose = { ...gasket, foundation: 1e-3 };
    const eb = boltRadius - ring.centroidRadius;
    const eg = gasket.radius - ring.centroidRadius;
    const withTwist = modeCompliance(ring, loose, boltRadius, 0);
    const sunk = modeCompliance({ ...ring, bending: 1e30 }, loose, boltRadius, 0);
    // The load at the bolt and the reaction at the gasket make the moment (eb − eg) per unit of load.
    near(withTwist - sunk, ((eb - eg) ** 2 * ring.centroidRadius ** 2) / ring.bending, 1e-3);
  });

  test('mode 1 without foundation is a rigid tilt that nothing resists', () => {
    const soft = (foundation: number) => modeCompliance(ring, { ...gasket, foundation }, boltRadius, 1);
    expect(modeCompliance(ring, { ...gasket, foundation: 0 }, boltRadius, 1)).toBeGreaterThan(
      1e6 * soft(4e9),
    );
    // With next to no foundation the ring does not bend: the movement is the rigid one.
    near(soft(1), modeCompliance(RIGID, { ...gasket, foundation: 1 }, boltRadius, 1), 1e-6);
  });

  test('a rigid flange has the closed form of springs on one foundation', () => {
    const { radius, foundation, width } = gasket;
    const whole = 2 * Math.PI * radius * 2 * foundation;
    const tilt = Math.PI * radius * 2 * foundation * (radius ** 2 + width ** 2 / 12);
    const row = ringCompliance(RIGID, gasket, boltRadius, 12);
    row.forEach((value, place) => {
      const expected = 1 / whole + (boltRadius ** 2 * Math.cos((2 * Math.PI * place) / 12)) / tilt;
      near(value, expected, 1e-9);
    });
    // The limit is reached from stiff flanges, too.
    const stiff = { ...ring, bending: 1e14, torsion: 1e14 };
    near(ringCompliance(stiff, gasket, boltRadius, 12)[0], row[0] ?? 0, 1e-5);
  });

  test('more circular passes bring every bolt to the target', () => {
    const settled = passesUntilQuiet(JOINT_B, steps(JOINT_B, 1e5), 1e5, 1e-6);
    expect(settled.passes).not.toBeNull();
    for (const load of settled.loads) near(load, 1e5, 1e-4);
    const falls = settled.moved.slice(1).every((move, index) => move < (settled.moved[index] ?? 0));
    expect(falls).toBe(true);
  });
});

describe('against an independent grid-beam ring', () => {
  test.each([240, 480])('%i straight elements', (elements) => {
    const beam = gridBeamCompliance(ring, gasket, boltRadius, 12, elements);
    const series = ringCompliance(ring, gasket, boltRadius, 12);
    beam.forEach((value, place) => {
      expect(Math.abs(value - (series[place] ?? 0))).toBeLessThan(2e-4 * (series[0] ?? 0));
    });
  });

  test('unlike flanges, each solved alone', () => {
    const other = { ...rectangularSection(195e9, 0.09, 0.055, 0.3), centroidRadius: 0.151 };
    const both = interaction({ ...JOINT_B, flanges: [ring, other] });
    const beams = [ring, other].map((one) => gridBeamCompliance(one, gasket, boltRadius, 12, 240));
    both.forEach((value, place) => {
      const expected =
        (beams[0]?.[place] ?? 0) + (beams[1]?.[place] ?? 0) + (place === 0 ? 1 / JOINT_B.boltStiffness : 0);
      expect(Math.abs(value - expected)).toBeLessThan(4e-4 * (both[0] ?? 0));
    });
  });
});

describe('the interaction', () => {
  test('is symmetric around the circle and settled within 0.2 % by 400 modes', () => {
    fc.assert(
      fc.property(joints, (joint) => {
        const row = interaction(joint);
        for (let place = 1; place < row.length; place++) {
          expect(Math.abs((row[place] ?? 0) - (row[row.length - place] ?? 0))).toBeLessThan(
            1e-9 * (row[0] ?? 0),
          );
        }
        near(interaction(joint, 1600)[0], row[0] ?? 0, 2e-3);
      }),
      { numRuns: 40 },
    );
  });
});

describe('tightening', () => {
  test('no bolt ever pulls less than nothing, and the bolt just turned has its set value', () => {
    fc.assert(
      fc.property(joints, (joint) => {
        for (const { step, loads, turned } of simulate(joint, steps(joint, 1e5)).results) {
          expect(loads.every((load) => load >= 0)).toBe(true);
          for (const bolt of step.bolts) {
            const load = loads[bolt - 1] ?? Number.NaN;
            if (turned) near(load, step.load, 1e-6);
            else expect(load).toBeGreaterThanOrEqual(step.load * (1 - 1e-9));
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  test('the loads solve the contact problem: carried by the nut positions, no gap below zero', () => {
    fc.assert(
      fc.property(joints, (joint) => {
        const matrix = circulant(interaction(joint));
        const field = boltField(matrix);
        const nuts = matrix.map(() => 0);
        const moved = (bolt: number) =>
          (matrix[bolt] ?? []).reduce((sum, part, j) => sum + part * (field.loads[j] ?? 0), 0);
        for (const { bolts, load } of steps(joint, 1e5)) {
          if (
            field.turn(
              bolts.map((bolt) => bolt - 1),
              load,
            )
          ) {
            for (const bolt of bolts) nuts[bolt - 1] = moved(bolt - 1);
          }
          const scale = (matrix[0]?.[0] ?? 0) * 1e5;
          nuts.forEach((nut, bolt) => {
            const gap = moved(bolt) - nut;
            if ((field.loads[bolt] ?? 0) > 0) expect(Math.abs(gap)).toBeLessThan(1e-7 * scale);
            else expect(gap).toBeGreaterThan(-1e-7 * scale);
          });
        }
      }),
      { numRuns: 25 },
    );
  });

  test('loads scale with the set values and do not know units', () => {
    fc.assert(
      fc.property(joints, fc.double({ min: 0.01, max: 100, noNaN: true }), (joint, factor) => {
        const one = simulate(joint, steps(joint, 1e5)).loads;
        const other = simulate(joint, steps(joint, 1e5 * factor)).loads;
        one.forEach((load, bolt) => {
          expect(Math.abs((other[bolt] ?? 0) - load * factor)).toBeLessThan(1e-6 * factor * 1e5);
        });
      }),
      { numRuns: 25 },
    );
  });

  test('turning the whole order round the circle turns the loads with it', () => {
    fc.assert(
      fc.property(joints, fc.nat(39), (joint, shift) => {
        const count = joint.boltCount;
        const turned = (bolt: number) => ((bolt - 1 + shift) % count) + 1;
        const plain = steps(joint, 1e5);
        const moved = plain.map((step): TighteningStep => ({ ...step, bolts: step.bolts.map(turned) }));
        const [one, other] = [simulate(joint, plain).loads, simulate(joint, moved).loads];
        one.forEach((load, bolt) => {
          expect(Math.abs((other[turned(bolt + 1) - 1] ?? 0) - load)).toBeLessThan(0.5);
        });
      }),
      { numRuns: 25 },
    );
  });

  test('several tools at once leave opposite bolts alike', () => {
    const plan = findPlan('four-tools-thirds');
    const loads = simulate(JOINT_B, (plan && planSteps(plan, 12, 1e5)) ?? []).loads;
    for (let bolt = 0; bolt < 9; bolt++) near(loads[bolt], loads[bolt + 3] ?? 0, 1e-6);
  });

  test('a bolt opposite can rise above the target on the way, and its peak says so', () => {
    const star = STAR_12.map((bolt): TighteningStep => ({ bolts: [bolt], load: 1e5, pass: 0 }));
    const { peaks, results } = simulate(JOINT_B, star);
    const highest = Math.max(...peaks.map(({ load }) => load));
    expect(highest).toBeGreaterThan(1.1e5);
    expect(highest).toBe(Math.max(...results.flatMap(({ loads }) => loads)));
  });

  test('every shipped plan turns every bolt in each of its passes, for every N from 4 to 100', () => {
    for (const plan of PASS_PLANS) {
      for (let count = 4; count <= 100; count++) {
        const all = planSteps(plan, count, 1) ?? [];
        const passes = Map.groupBy(all, ({ pass }) => pass);
        expect(passes.size).toBe(plan.steps.filter(({ fraction }) => fraction !== null).length);
        for (const trip of passes.values()) {
          const bolts = trip.flatMap((step) => step.bolts).sort((a, b) => a - b);
          expect(bolts).toEqual(Array.from({ length: count }, (_, index) => index + 1));
        }
      }
    }
  });
});

describe('set values that end even', () => {
  test('reach the target within three trips when no limit stands in the way', () => {
    fc.assert(
      fc.property(joints, (joint) => {
        const order = starOrder(joint.boltCount)?.groups.flat() ?? [];
        const plan = evenPlan(joint, order, 1e5, 1e9, { trips: 3, tolerance: 0.005 });
        expect(plan.reached).toBe(true);
      }),
      { numRuns: 25 },
    );
  });

  test('keep the limit on the way, and say when they can not', () => {
    const even = (limit: number) => evenPlan(JOINT_B, STAR_12, 1e5, limit, { trips: 12, tolerance: 0.01 });
    for (const limit of [2.5e5, 2e5, 1.5e5, 1.3e5]) {
      const plan = even(limit);
      expect(plan.reached).toBe(true);
      if (limit === 2.5e5) expect(plan.steps.every(({ pass }) => pass === 0)).toBe(true);
      expect(Math.max(...plan.simulation.peaks.map(({ load }) => load))).toBeLessThanOrEqual(
        limit * (1 + 1e-9),
      );
      expect(evenness(plan.simulation.loads).variation).toBeLessThan(0.01);
      // Followed as written, the steps alone give the same.
      expect(simulateOn(circulant(interaction(JOINT_B)), plan.steps).loads).toEqual(plan.simulation.loads);
    }
    expect(even(1.02e5).reached).toBe(false);
  });
});

describe('the gasket stiffness behind measured loads', () => {
  const plan = steps(JOINT_B, 1e5);
  const measured = (foundation: number, error: number) => [
    {
      afterStep: plan.length - 1,
      loads: simulate({ ...JOINT_B, gasket: { ...gasket, foundation } }, plan).loads.map(
        (load, bolt) => load + error * (bolt % 2 === 0 ? 1 : -1),
      ),
    },
  ];

  test('is found again', () => {
    for (const foundation of [8e8, 2.5e9, 1.1e10]) {
      near(fitGasket(JOINT_B, plan, measured(foundation, 0))?.foundation, foundation, 1e-3);
    }
  });

  test('comes with a range that holds it and widens with the misfit', () => {
    const [fine, coarse] = [500, 4000].map((error) => fitGasket(JOINT_B, plan, measured(2.5e9, error)));
    for (const fit of [fine, coarse]) {
      expect(fit?.interval[0]).toBeLessThanOrEqual(2.5e9);
      expect(fit?.interval[1]).toBeGreaterThanOrEqual(2.5e9);
    }
    const width = (fit: typeof fine) => (fit ? fit.interval[1] / fit.interval[0] : Number.NaN);
    expect(width(coarse)).toBeGreaterThan(width(fine));
  });

  test.each([0, 1, 2, 3])('is not guessed from %i loads', (count) => {
    const loads = Array.from({ length: 12 }, (_, bolt) => (bolt < count ? 8e4 + bolt : null));
    expect(fitGasket(JOINT_B, plan, [{ afterStep: plan.length - 1, loads }])).toBeNull();
    expect(fitGasket(JOINT_B, plan, [])).toBeNull();
  });

  test.each([0, 5e4, 1e5])(
    'from twelve loads of %d N, all alike, has an open end and no infinity',
    (load) => {
      const fit = fitGasket(JOINT_B, plan, [{ afterStep: plan.length - 1, loads: Array(12).fill(load) }]);
      const told = [fit?.foundation, fit?.residual, ...(fit?.interval ?? [])];
      expect(told).toHaveLength(4);
      expect(told.every((value) => Number.isFinite(value))).toBe(true);
      // No stiffness makes a star end with all alike: the search runs to its edge and says so.
      expect(fit?.open).toContain(true);
    },
  );

  test('measured before a bolt was turned, says nothing of the gasket: both ends are open', () => {
    const fit = fitGasket(JOINT_B, plan, [{ afterStep: -1, loads: Array(12).fill(0) }]);
    expect(fit?.open).toEqual([true, true]);
  });
});

describe('what is said of another stiffness of the gasket', () => {
  const row = (factor: number, ...variations: readonly (number | null)[]) => ({
    factor,
    gasketStiffness: 4e9 * factor,
    plans: variations.map((variation, index) => ({
      planId: `p${index}`,
      evenness: { mean: 1, least: 1, most: 1, variation },
    })),
  });
  const plans = [
    { planId: 'p0', name: 'Thirds' },
    { planId: 'p1', name: 'Halves' },
  ];

  test('nothing where none was tried or nothing carries', () => {
    expect(sensitivityWords([], plans)).toBeNull();
    expect(sensitivityWords([row(1, null, null)], plans)).toBeNull();
  });

  test('the spread of each plan, and whether one is more even with all of them', () => {
    expect(sensitivityWords([row(0.5, 0.05, 0.11), row(2, 0.02, 0.06)], plans)).toBe(
      'With a gasket 0.5 to 2 times as stiff, Thirds ends with loads that vary by 2 % to 5 %; Halves ends with loads that vary by 6 % to 11 % (standard deviation over mean). Thirds ends more even with each of them.',
    );
    expect(sensitivityWords([row(0.5, 0.05, 0.11), row(2, 0.06, 0.02)], plans)).toContain(
      'depends on the stiffness',
    );
    expect(sensitivityWords([row(1, 0.05, 0.05)], plans)).toContain('alike');
  });

  test('calls neither the more even one where one is not known at a stiffness', () => {
    const words = sensitivityWords([row(0.5, 0.05, null), row(2, 0.02, 0.06)], plans);
    expect(words).toContain('Thirds');
    expect(words).not.toContain('more even');
  });
});

describe('what is said of loads that end even', () => {
  const plan = { deviation: 0.004, steps: [1, 2] };
  const peak = { bolt: 3, load: 227e3, step: 5 };
  const said = (limit: number | null, overLimit: 'no' | 'yes' | 'with scatter' | 'not known') =>
    evenWords(plan, 0.01, { target: 100e3, limit, overLimit, peak });

  test('names the highest load, and never calls a limit kept that nobody knows', () => {
    expect(said(null, 'not known')).toContain('No limit is known to hold it against');
    expect(said(null, 'not known')).toContain('227 kN, in bolt 3');
    expect(said(null, 'not known')).not.toContain('None is above');
    expect(said(500e3, 'no')).toContain('None is above the limit on the way');
    expect(said(240e3, 'with scatter')).toContain('may be passed');
    expect(said(240e3, 'with scatter')).not.toContain('None is above');
    expect(said(200e3, 'yes')).toContain('do not use these loads');
  });

  test('a limit below the load to set is named with both values', () => {
    expect(said(80e3, 'yes')).toBe(
      'The most one bolt may carry, 80 kN, is below the load to set, 100 kN: no loads end even at it.',
    );
  });
});
