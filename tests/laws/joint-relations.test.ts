import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { frictionPair, nutFactorOfPair } from '../../core/bolting/friction.ts';
import { otherToolSetting, tensionedLoad } from '../../core/bolting/other-tools.ts';
import {
  HALF_DIAMETER,
  loadFromStretch,
  loadInService,
  stretch,
  studSections,
} from '../../core/bolting/stiffness.ts';
import { SHEAR_SHARE_HANDBOOK, stripAreas, stripMargin } from '../../core/bolting/strip.ts';
import { metricThread, unifiedThread } from '../../core/bolting/thread.ts';
import { threadLimits } from '../../core/bolting/thread-limits.ts';
import { CODE_MINIMUM_USE, codeMinimum, seatingWidths } from '../../core/joint/code-minimum.ts';
import { hotLoad } from '../../core/joint/expansion.ts';
import {
  gasketArea,
  PARTITION_SHARE_PCC1,
  seriesStress,
  seriesTarget,
} from '../../core/joint/gasket-area.ts';
import { assemblyLoadFor, residualLoad } from '../../core/joint/relaxation.ts';
import { known } from '../truth/known.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const close = (a: number, b: number) => Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b));

const ONE_INCH = unifiedThread(1, 8);
const THREADS = [
  ONE_INCH,
  unifiedThread(0.5, 13),
  unifiedThread(0.875, 9),
  unifiedThread(2, 8),
  metricThread(12, 1.75),
  metricThread(24, 3),
  metricThread(64, 6),
];
const thread = fc.constantFrom(...THREADS);

describe('friction', () => {
  const friction = between(0.02, 0.5);

  test('nut factor and pair lead back to each other by every rule', () => {
    fc.assert(
      fc.property(thread, friction, friction, between(1.1, 1.8), (screw, inThread, atFace, wide) => {
        const face = wide * screw.diameter;
        const K = known(nutFactorOfPair(inThread, atFace, screw, face));
        const keptThread = known(frictionPair(K, { kind: 'thread fixed', value: inThread }, screw, face));
        const keptFace = known(frictionPair(K, { kind: 'bearing fixed', value: atFace }, screw, face));
        const equal = known(frictionPair(K, { kind: 'thread and bearing equal' }, screw, face));
        expect(close(keptThread.bearing, atFace) && close(keptFace.thread, inThread)).toBe(true);
        expect(equal.thread).toBe(equal.bearing);
        expect(close(known(nutFactorOfPair(equal.thread, equal.bearing, screw, face)), K)).toBe(true);
        // The equal coefficient lies between the two that make the same K.
        expect(equal.thread).toBeGreaterThanOrEqual(Math.min(inThread, atFace) * (1 - 1e-9));
        expect(equal.thread).toBeLessThanOrEqual(Math.max(inThread, atFace) * (1 + 1e-9));
      }),
    );
  });

  test('a nut factor that leaves less than nothing for a coefficient has no pair', () => {
    const outcome = frictionPair(0.08, { kind: 'thread fixed', value: 0.2 }, ONE_INCH, 0.033);
    expect(outcome.missing.map(({ symbol, reason }) => `${symbol}: ${reason}`)).toEqual(['μ: no solution']);
  });
});

describe('thread strip', () => {
  test('the areas grow with the engaged length, the nut’s above the stud’s', () => {
    fc.assert(
      fc.property(thread, between(0.001, 0.1), between(1, 5), (screw, length, times) => {
        const shorter = known(stripAreas(screw, length));
        const longer = known(stripAreas(screw, length * times));
        expect(close(longer.external, shorter.external * times)).toBe(true);
        expect(close(longer.internal, shorter.internal * times)).toBe(true);
        expect(shorter.internal).toBeGreaterThan(shorter.external);
      }),
    );
  });

  test('at the handbook’s length of engagement the stud strips exactly when it breaks', () => {
    for (const screw of THREADS) {
      const limits = threadLimits(screw);
      if (limits === null) throw new Error(screw.designation);
      const { nutMinorMax: minor, pitchMin } = limits;
      // Le = 2·At/(π·Knmax·[1/2 + 0.57735·n·(Esmin − Knmax)]), n = 1/P.
      const length =
        (2 * screw.tensileArea) / (Math.PI * minor * (0.5 + (pitchMin - minor) / Math.sqrt(3) / screw.pitch));
      const tensile = 860e6;
      const margin = known(
        stripMargin(
          tensile * screw.tensileArea,
          known(stripAreas(screw, length)),
          tensile,
          tensile,
          SHEAR_SHARE_HANDBOOK,
        ),
      );
      expect(margin.studLoad / (tensile * screw.tensileArea)).toBeCloseTo(1, 9);
      expect(margin).toMatchObject({
        weaker: 'stud thread',
        margin: margin.studLoad / (tensile * screw.tensileArea),
      });
    }
  });

  test('a soft nut strips before the stud', () => {
    const areas = known(stripAreas(ONE_INCH, 0.025));
    expect(known(stripMargin(1e5, areas, 860e6, 400e6, SHEAR_SHARE_HANDBOOK)).weaker).toBe('nut thread');
  });

  test('a thread whose limits are not held has no areas', () => {
    expect(stripAreas(metricThread(6, 0.5), 0.005).missing[0]?.remedy).toContain('enter them');
  });
});

describe('stretch', () => {
  test('load and stretch lead back to each other', () => {
    fc.assert(
      fc.property(
        thread,
        between(1e3, 2e5),
        between(0.02, 0.5),
        between(1e11, 2.2e11),
        (screw, load, grip, E) => {
          const sections = known(studSections(screw, grip, null, HALF_DIAMETER));
          const { elongation } = known(stretch(load, sections, E));
          expect(close(known(loadFromStretch(elongation, sections, E)), load)).toBe(true);
        },
      ),
    );
  });

  test('a longer grip and a reduced shank make a softer stud', () => {
    const of = (grip: number, shank: number | null) =>
      known(
        stretch(
          1e5,
          known(
            studSections(
              ONE_INCH,
              grip,
              shank === null ? null : { length: shank, area: ONE_INCH.rootArea * 0.8 },
              HALF_DIAMETER,
            ),
          ),
          2e11,
        ),
      ).stiffness;
    expect(of(0.2, null)).toBeLessThan(of(0.1, null));
    expect(of(0.1, 0.06)).toBeLessThan(of(0.1, null));
  });

  test('parted parts have no shared load', () => {
    expect(known(loadInService(25e3, 30e3, 0.2))).toBe(31e3);
    expect(loadInService(25e3, 31.3e3, 0.2).missing[0]?.name).toContain('parted');
  });
});

describe('hot load', () => {
  const part = (expansion: number, rise: number) => ({ name: 'part', length: 0.1, expansion, rise });
  const stiffness = { boltCold: 5e8, boltHot: 5e8, joint: 2e9 };

  test('like materials at one temperature keep their load', () => {
    fc.assert(
      fc.property(between(0, 1e6), between(8e-6, 2e-5), between(-100, 600), (load, expansion, rise) => {
        const hot = known(hotLoad(load, part(expansion, rise), [part(expansion, rise)], stiffness));
        expect(Math.abs(hot.change ?? Number.NaN)).toBeLessThan(1e-6 * (load + 1));
      }),
    );
  });

  test('the change lies between none and that of a rigid joint, and the load never below zero', () => {
    const coefficient = between(8e-6, 2e-5);
    fc.assert(
      fc.property(
        between(0, 1e6),
        coefficient,
        coefficient,
        between(-100, 600),
        (load, stud, flange, rise) => {
          const hot = known(hotLoad(load, part(stud, rise), [part(flange, rise)], stiffness));
          const value = hot.hotLoad ?? Number.NaN;
          const [least, most] = hot.range;
          expect(value).toBeGreaterThanOrEqual(least * (1 - 1e-9));
          expect(value).toBeLessThanOrEqual(most * (1 + 1e-9) + 1e-6);
          expect(least).toBeGreaterThanOrEqual(0);
          // Below a nanometre rounding of the load decides the sign.
          if (Math.abs(hot.difference) > 1e-9) expect(Math.sign(hot.bound)).toBe(Math.sign(hot.difference));
        },
      ),
    );
  });

  test('a stainless stud in a carbon-steel flange loses load; without the joint’s stiffness only the range is known', () => {
    const known35 = known(hotLoad(1e5, part(17e-6, 200), [part(12e-6, 200)], stiffness));
    expect(known35.change).toBeLessThan(0);
    const open = known(hotLoad(1e5, part(17e-6, 200), [part(12e-6, 200)], { ...stiffness, joint: null }));
    expect(open.hotLoad).toBeNull();
    expect(open.narrows.map(({ symbol }) => symbol)).toEqual(['kj']);
    expect(open.range).toEqual(known35.range);
  });

  test('a load that can vanish is said to', () => {
    const { hotLoad: load, mayVanish } = known(hotLoad(1e4, part(17e-6, 500), [part(11e-6, 500)], stiffness));
    expect([load, mayVanish]).toEqual([0, true]);
  });
});

describe('gasket area and gaskets in series', () => {
  test('a partition bar counts by the site’s rule, and without one there is no area', () => {
    const bars = [{ length: 0.5, width: 0.012 }];
    expect(known(gasketArea(0.02, bars, PARTITION_SHARE_PCC1))).toBeCloseTo(0.023, 12);
    expect(known(gasketArea(0.02, bars, 1))).toBeCloseTo(0.026, 12);
    expect(gasketArea(0.02, bars, null).missing[0]?.remedy).toContain('site rule');
    expect(known(gasketArea(0.02, [], null))).toBe(0.02);
    expect(gasketArea(0.02, [{ length: -0.5, width: 0.012 }], 0.5).missing[0]?.reason).toBe('out of range');
  });

  test('each gasket of a girth joint carries the whole bolt load', () => {
    const areas = fc.array(between(1e-3, 1), { minLength: 1, maxLength: 3 });
    fc.assert(
      fc.property(areas, fc.integer({ min: 4, max: 100 }), between(1e3, 1e6), (list, count, load) => {
        const gaskets = list.map((area, index) => ({ name: `gasket ${index}`, area, target: 80e6 }));
        for (const { name, stress } of known(seriesStress(gaskets, count, load)).stresses) {
          const area = gaskets.find((gasket) => gasket.name === name)?.area ?? 0;
          expect(close(stress * area, count * load)).toBe(true);
        }
      }),
    );
  });

  test('the target load brings every gasket at least to its target, and the governing one just to it', () => {
    const gaskets = [
      { name: 'shell side', area: 0.031, target: 90e6 },
      { name: 'channel side', area: 0.027, target: 110e6 },
    ];
    const { load, governing } = known(seriesTarget(gaskets, 28));
    const stresses = known(seriesStress(gaskets, 28, load)).stresses;
    expect(governing).toBe('channel side');
    expect(
      stresses.map(({ stress }, index) => stress >= (gaskets[index]?.target ?? Infinity) * (1 - 1e-12)),
    ).toEqual([true, true]);
  });
});

describe('relaxation', () => {
  test('assembly load and residual load lead back to each other', () => {
    const losses = fc.array(between(0.3, 1), { maxLength: 4 });
    fc.assert(
      fc.property(between(1e3, 1e6), losses, (required, fractions) => {
        const list = fractions.map((retained, index) => ({
          name: `loss ${index}`,
          retained,
          source: 'test',
        }));
        const assembled = known(assemblyLoadFor(required, list));
        expect(assembled).toBeGreaterThanOrEqual(required * (1 - 1e-12));
        expect(close(known(residualLoad(assembled, list)), required)).toBe(true);
      }),
    );
  });
});

describe('code minimum', () => {
  const flat = { kind: 'flat ring or spiral wound', outside: 0.3175, inside: 0.2667 } as const;

  test('a ring joint seats on an eighth of its width, at its pitch diameter', () => {
    const widths = known(seatingWidths({ kind: 'ring joint', pitchDiameter: 0.27, ringWidth: 0.016 }));
    expect(widths).toEqual({ contactWidth: 0.016, basic: 0.002, effective: 0.002, reactionDiameter: 0.27 });
  });

  test('a narrow flat ring reacts at its mean diameter, a wide one nearer its outside', () => {
    const narrow = known(seatingWidths({ ...flat, inside: 0.3 }));
    expect(narrow.reactionDiameter).toBeCloseTo((0.3175 + 0.3) / 2, 12);
    const wide = known(seatingWidths(flat));
    expect(wide.reactionDiameter).toBeGreaterThan((0.3175 + 0.2667) / 2);
    expect(wide.effective).toBeLessThan(wide.basic);
  });

  test('pressure raises Wm1 and leaves Wm2, and the result says what it is for', () => {
    fc.assert(
      fc.property(between(1, 4e7), between(1.01, 3), (pressure, factor) => {
        const low = known(codeMinimum(flat, pressure, 3, 69e6, 12));
        const high = known(codeMinimum(flat, pressure * factor, 3, 69e6, 12));
        expect(close(high.Wm1, low.Wm1 * factor)).toBe(true);
        expect(high.Wm2).toBe(low.Wm2);
        expect(high.perBolt * 12).toBeCloseTo(Math.max(high.Wm1, high.Wm2), 3);
        expect(high.use).toBe(CODE_MINIMUM_USE);
      }),
    );
    expect(CODE_MINIMUM_USE).toContain('not an assembly target');
  });
});

describe('tools without a pump', () => {
  test('a wrench is set to a graduation on its scale, within half of one, and never above the limit', () => {
    const graduation = fc.constantFrom(0.1, 0.5, 1, 2, 5, 10);
    fc.assert(
      fc.property(graduation, between(40, 400), between(1, 1.5), (mark, wanted, room) => {
        const scale = { by: 'torque', least: 20, most: 500, graduation: mark } as const;
        const setting = known(otherToolSetting('hand torque wrench', scale, wanted, wanted * room));
        expect(setting.torque / mark).toBeCloseTo(Math.round(setting.torque / mark), 6);
        expect(Math.abs(setting.torque - wanted)).toBeLessThanOrEqual(mark * (1 + 1e-9));
        expect(setting.torque).toBeLessThanOrEqual(wanted * room * (1 + 1e-9));
      }),
    );
  });

  test('outside the scale, above the limit or without steps there is no setting', () => {
    const scale = { by: 'torque', least: 40, most: 200, graduation: 5 } as const;
    for (const [wanted, ceiling] of [
      [30, null],
      [201, null],
      [100, 90],
    ] as const) {
      expect(otherToolSetting('battery torque tool', scale, wanted, ceiling).value).toBeNull();
    }
    expect(otherToolSetting('pneumatic torque tool', { by: 'step', steps: [] }, 100, null).value).toBeNull();
  });

  test('a stepped tool takes the nearest step that keeps the limit, and says how far off it is', () => {
    const steps = [
      { label: '4', torque: 350 },
      { label: '5', torque: 410 },
      { label: '6', torque: 480 },
    ];
    const free = known(otherToolSetting('pneumatic torque tool', { by: 'step', steps }, 400, null));
    expect([free.set, free.deviation]).toEqual([{ by: 'step', label: '5' }, 10 / 400]);
    const limited = known(otherToolSetting('pneumatic torque tool', { by: 'step', steps }, 400, 405));
    expect(limited.set).toEqual({ by: 'step', label: '4' });
  });

  test('a tensioned stud has a load, both stresses and no torque', () => {
    const { torque, torqueReason, stressRoot, stressTensile } = known(tensionedLoad(1e5, ONE_INCH));
    expect(torque).toBeNull();
    expect(torqueReason).toContain('no torque');
    expect(stressRoot).toBeGreaterThan(stressTensile);
  });
});
