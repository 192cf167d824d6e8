import { describe, expect, test } from 'vitest';
import { findNut } from '../../core/bolting/nut.ts';
import { studThread } from '../../core/bolting/thread.ts';
import { ASME_B16_5_HUBS } from '../../core/reference/asme-b16-5-hubs.ts';
import { ASME_B16_5_RING_JOINT } from '../../core/reference/asme-b16-5-ring-joint.ts';
import { ASME_B16_20_RINGS, RINGS_OF_FLANGES } from '../../core/reference/asme-b16-20-rings.ts';
import { ASME_B16_20_SPIRAL } from '../../core/reference/asme-b16-20-spiral.ts';
import { ASME_B16_21 } from '../../core/reference/asme-b16-21.ts';
import { ASME_B16_47_HUBS } from '../../core/reference/asme-b16-47-hubs.ts';
import { GASKET_FACTORS } from '../../core/reference/asme-viii-1-appendix-2.ts';
import { BS_4504_1_FACES } from '../../core/reference/bs-4504-1-faces.ts';
import { EN_1092_1 } from '../../core/reference/en-1092-1.ts';
import { BS_4865_1, EN_1514_1_COMPUTED } from '../../core/reference/en-1514-1.ts';
import { hubDiameter, raisedFaceDiameter, raisedFaceHeight, ringJoint } from '../../core/reference/faces.ts';
import { findFlange } from '../../core/reference/flanges.ts';
import {
  GASKET_FACTOR_NAMES,
  gasketDimensions,
  gasketFactors,
  ringGasket,
  ringOfFlange,
} from '../../core/reference/gaskets.ts';

// No package of the npm registry was found that ships flange, gasket or thread tables of a general kind: the second
// source beside a table is the one its status names, and the rules that tie one table to another are proved here.

const INCH_MM = 25.4;

test('tables have the rows they were carried over with', () => {
  expect(ASME_B16_20_SPIRAL).toHaveLength(140);
  expect(ASME_B16_20_RINGS).toHaveLength(94);
  expect(RINGS_OF_FLANGES).toHaveLength(110);
  expect(GASKET_FACTORS).toHaveLength(35);
  expect(ASME_B16_21).toHaveLength(171);
  expect([BS_4865_1.length, EN_1514_1_COMPUTED.length]).toEqual([28, 114]);
  expect([ASME_B16_5_HUBS.length, ASME_B16_47_HUBS.length]).toEqual([136, 174]);
  expect(ASME_B16_5_RING_JOINT).toHaveLength(136);
  expect(BS_4504_1_FACES).toHaveLength(174);
});

test('as many rows rest on two sources as were carried over', () => {
  const agreeing = (rows: readonly (readonly unknown[])[]) =>
    rows.filter((row) => row.at(-1) === 'AGREE').length;
  expect(agreeing(ASME_B16_20_RINGS)).toBe(71);
  expect(agreeing(RINGS_OF_FLANGES)).toBe(60);
  expect(agreeing(GASKET_FACTORS)).toBe(32);
  expect(agreeing(ASME_B16_5_HUBS)).toBe(133);
  expect(agreeing(ASME_B16_47_HUBS)).toBe(110);
  expect(agreeing(ASME_B16_5_RING_JOINT)).toBe(127);
});

describe('spiral wound', () => {
  test('diameters rise from the inner ring to the centring ring', () => {
    for (const [class_, nps, inner, inside, outside, centring] of ASME_B16_20_SPIRAL) {
      const name = `${nps} class ${class_}`;
      if (inner !== null) expect(inner, name).toBeLessThan(inside);
      expect(inside, name).toBeLessThan(outside);
      expect(outside, name).toBeLessThan(centring);
    }
  });

  test('the centring ring touches the studs: its diameter is bolt circle − stud within 2 mm', () => {
    let seen = 0;
    for (const [class_, nps, , , , centring] of ASME_B16_20_SPIRAL) {
      const flange = findFlange('ASME B16.5', nps, String(class_));
      if (flange?.boltCircle == null || flange.studIn === null) continue;
      seen += 1;
      const rule = flange.boltCircle * 1000 - flange.studIn * INCH_MM;
      expect(Math.abs(centring - rule), `${nps} class ${class_}`).toBeLessThanOrEqual(2);
    }
    expect(seen).toBe(132);
  });

  test('larger flanges of a class have larger sealing elements', () => {
    const last = new Map<number, number>();
    for (const [class_, nps, , inside] of ASME_B16_20_SPIRAL) {
      expect(inside, `${nps} class ${class_}`).toBeGreaterThan(last.get(class_) ?? 0);
      last.set(class_, inside);
    }
  });

  test('corner cells read by hand', () => {
    const first = gasketDimensions('spiral wound', 'ASME B16.5', '1/2', '150');
    expect(first?.inside?.value).toBeCloseTo(0.0191, 9);
    expect(first?.centringRingOutside?.value).toBeCloseTo(0.0478, 9);
    expect(first?.outside.status).toBe('SINGLE');
    const middle = gasketDimensions('spiral wound', 'ASME B16.5', '8', '300');
    expect(middle?.innerRingInside?.value).toBeCloseTo(0.2159, 9);
    expect(middle?.inside?.value).toBeCloseTo(0.2334, 9);
    expect(middle?.outside.value).toBeCloseTo(0.2637, 9);
    expect(middle?.outside.status).toBe('AGREE');
    const last = gasketDimensions('spiral wound', 'ASME B16.5', '12', '2500');
    expect(last?.inside?.value).toBeCloseTo(0.3175, 9);
    expect(last?.outside.value).toBeCloseTo(0.3683, 9);
  });

  test('no inner ring is made up where none is listed, and no gasket for other standards', () => {
    expect(gasketDimensions('spiral wound', 'ASME B16.5', '3-1/2', '150')?.innerRingInside).toBeNull();
    expect(gasketDimensions('spiral wound', 'EN 1092-1', '200', '16')).toBeNull();
    expect(gasketDimensions('spiral wound', 'ASME B16.47 A', '36', '300')).toBeNull();
    expect(gasketDimensions('spiral wound', 'ASME B16.5', '22', '150')).toBeNull();
  });
});

describe('flat rings', () => {
  test('ASME B16.21: outside diameter = bolt circle − stud within 1 mm, but for the row that says so', () => {
    const off: string[] = [];
    for (const [standard, class_, nps, inside, outside] of ASME_B16_21) {
      const name = `${standard}|${class_}|${nps}`;
      expect(inside, name).toBeLessThan(outside);
      const flange = findFlange(`ASME ${standard}`, nps, String(class_));
      if (flange?.boltCircle == null || flange.studIn === null) continue;
      const rule = flange.boltCircle * 1000 - flange.studIn * INCH_MM;
      if (Math.abs(outside - rule) > 1) off.push(name);
    }
    expect(off).toEqual(['B16.47 A|600|60']);
    expect(gasketDimensions('flat', 'ASME B16.47 A', '60', '600')?.outside).toMatchObject({
      status: 'DISAGREE',
      note: expect.stringContaining('1733.5'),
    });
  });

  test('EN: outside diameter = bolt circle − hole, printed and computed alike', () => {
    for (const [pn, dn, inside, outside] of [...BS_4865_1, ...EN_1514_1_COMPUTED]) {
      const flange = EN_1092_1.find((row) => row[0] === pn && row[1] === dn);
      const [, , , , circle, hole] = flange ?? [];
      expect(outside, `PN ${pn} DN ${dn}`).toBe((circle ?? 0) - (hole ?? 0));
      if (inside !== null) expect(inside).toBeLessThan(outside);
    }
  });

  test('the print goes before the rule, and an inside diameter nobody prints stays open', () => {
    expect(gasketDimensions('flat', 'EN 1092-1', '200', '16')).toMatchObject({
      outside: { value: 0.273, status: 'AGREE_RULE' },
      inside: { value: 0.22 },
    });
    expect(gasketDimensions('flat', 'EN 1092-1', '50', '16')).toMatchObject({
      outside: { status: 'FORMULA_ONLY' },
      inside: null,
    });
    expect(gasketDimensions('flat', 'ASME B16.5', '8', '1500')).toBeNull();
    expect(gasketDimensions('flat', 'ASME B16.47 B', '36', '150')).toBeNull();
  });

  test('corner cells read by hand', () => {
    expect(gasketDimensions('flat', 'ASME B16.5', '1/2', '150')?.outside.value).toBeCloseTo(0.048, 9);
    expect(gasketDimensions('flat', 'ASME B16.5', '1-1/2', '150')?.inside?.value).toBeCloseTo(0.049, 9);
    expect(gasketDimensions('flat', 'ASME B16.5', '24', '900')?.outside.value).toBeCloseTo(0.838, 9);
    expect(gasketDimensions('flat', 'EN 1092-1', '1200', '10')?.outside.value).toBeCloseTo(1.341, 9);
  });
});

describe('rings', () => {
  test('pitch diameters are what the groove of one flange after the other needs', () => {
    for (const [class_, nps, number] of RINGS_OF_FLANGES) {
      const ring = ringGasket(number);
      const flange = findFlange('ASME B16.5', nps, String(class_));
      expect(ring, number).not.toBeNull();
      if (flange?.boltCircle == null || ring === null) continue;
      expect(ring.pitchDiameter.value, `${nps} class ${class_}`).toBeLessThan(flange.boltCircle);
    }
  });

  test('within a class a larger flange never has a smaller ring', () => {
    const last = new Map<number, number>();
    for (const [class_, nps, number] of RINGS_OF_FLANGES) {
      const pitch = ringGasket(number)?.pitchDiameter.value ?? 0;
      expect(pitch, `${nps} class ${class_}`).toBeGreaterThan(last.get(class_) ?? 0);
      last.set(class_, pitch);
    }
  });

  test('an octagonal ring is lower than an oval one of the same width, and the groove wider than the ring', () => {
    for (const [number, , width, oval, octagonal, , groove] of ASME_B16_20_RINGS) {
      if (oval !== null && octagonal !== null) expect(octagonal, number).toBeLessThan(oval);
      if (groove !== null) expect(groove, number).toBeGreaterThan(width);
    }
  });

  test('corner cells read by hand', () => {
    expect(ringGasket('R-11')).toMatchObject({ number: 'R11' });
    expect(ringGasket('R11')?.pitchDiameter.value).toBeCloseTo(0.03414, 9);
    expect(ringGasket('49')?.pitchDiameter.value).toBeCloseTo(0.26988, 9);
    expect(ringGasket('R49')?.width.value).toBeCloseTo(0.01113, 9);
    expect(ringGasket('R105')).toMatchObject({ ovalHeight: null, grooveDepth: null });
    expect(ringGasket('R106')).toBeNull();
    expect(ringOfFlange('8', '300')).toMatchObject({ number: 'R49', status: 'AGREE' });
    expect(ringOfFlange('12', '2500')).toMatchObject({ number: 'R60', status: 'SINGLE' });
    expect(ringOfFlange('8', '400')).toBeNull();
  });
});

describe('m and y', () => {
  test('rise with the metal within a kind of gasket', () => {
    const last = new Map<string, { m: number; y: number }>();
    for (const [type, material, m, y] of GASKET_FACTORS) {
      if (m === null || y === null) continue;
      // Nickel-copper jackets carry a lower m than the soft steel before them in print.
      if (!(type.startsWith('flat metal jacketed') && material === 'nickel-copper')) {
        expect(m, `${type}, ${material}`).toBeGreaterThanOrEqual(last.get(type)?.m ?? 0);
      }
      expect(y, `${type}, ${material}`).toBeGreaterThanOrEqual(last.get(type)?.y ?? 0);
      last.set(type, { m, y });
    }
  });

  test('the code’s spiral-wound y, not a maker’s', () => {
    const wound = gasketFactors('Spiral-wound metal with filler, stainless / nickel-copper windings');
    expect(wound?.factor.value).toBe(3);
    expect(wound?.seating.value).toBeCloseTo(10000 * 6894.757293168, 0);
  });

  test('a row nobody prints is not offered, and no name is guessed', () => {
    expect(GASKET_FACTOR_NAMES).toHaveLength(34);
    expect(gasketFactors('ring joint, stainless')).toBeNull();
    expect(gasketFactors('spiral wound')).toBeNull();
    expect(gasketFactors('ring joint, nickel-copper or 4-6% chrome')?.seating.status).toBe('SINGLE');
  });
});

describe('hubs', () => {
  test('a heavy hex nut turns beside every known hub', () => {
    let seen = 0;
    for (const [class_, nps, hub] of ASME_B16_5_HUBS) {
      const flange = findFlange('ASME B16.5', nps, String(class_));
      const thread = flange?.studIn == null ? null : studThread(flange.studIn);
      const nut = thread === null ? null : findNut('ASME B18.2.2 heavy hex', thread);
      if (hub === null || flange?.boltCircle == null || nut === null) continue;
      seen += 1;
      const gap = (flange.boltCircle - hub / 1000 - nut.acrossCorners) / 2;
      expect(gap, `${nps} class ${class_}`).toBeGreaterThan(0.001);
    }
    expect(seen).toBe(135);
  });

  test('gap from nut corner to hub as printed beside the table: 13.9 mm for NPS 8 class 300', () => {
    const hub = hubDiameter('ASME B16.5', '8', '300')?.value ?? 0;
    const circle = findFlange('ASME B16.5', '8', '300')?.boltCircle ?? 0;
    expect(((circle - hub) / 2) * 1000 - (1.66 * INCH_MM) / 2).toBeCloseTo(13.9, 1);
  });

  test('cells that sources contradict are open', () => {
    expect(hubDiameter('ASME B16.5', '22', '600')).toBeNull();
    expect(hubDiameter('ASME B16.47 A', '40', '300')).toBeNull();
    expect(hubDiameter('ASME B16.47 A', '48', '300')).toBeNull();
    expect(hubDiameter('ASME B16.47 B', '34', '600')).toBeNull();
    expect(hubDiameter('EN 1092-1', '200', '16')).toBeNull();
    expect(hubDiameter('ASME B16.5', '24', '900')).toMatchObject({ value: 0.7493, status: 'DISAGREE' });
    expect(hubDiameter('ASME B16.47 A', '26', '150')?.value).toBeCloseTo(0.6761, 9);
  });

  test('hubs stay inside the studs', () => {
    for (const [series, class_, nps, hub] of ASME_B16_47_HUBS) {
      const flange = findFlange(`ASME B16.47 ${series}`, nps, String(class_));
      if (hub === null || flange?.boltCircle == null || flange.studIn === null) continue;
      expect(hub / 1000, `${series} ${nps} ${class_}`).toBeLessThan(
        flange.boltCircle - flange.studIn * 0.0254,
      );
    }
  });
});

describe('faces and ring-joint studs', () => {
  test('height of the raised face', () => {
    expect(raisedFaceHeight('ASME B16.5', '8', '300')).toMatchObject({ value: 0.002, status: 'DISAGREE' });
    expect(raisedFaceHeight('ASME B16.5', '8', '400')).toMatchObject({ value: 0.007, status: 'AGREE' });
    expect(raisedFaceHeight('EN 1092-1', '32', '16')?.value).toBe(0.002);
    expect(raisedFaceHeight('EN 1092-1', '40', '16')?.value).toBe(0.003);
    expect(raisedFaceHeight('EN 1092-1', '600', '16')).toMatchObject({ value: 0.005, status: 'SINGLE' });
    expect(raisedFaceHeight('ASME B16.47 A', '36', '300')).toBeNull();
    expect(raisedFaceHeight('ASME B16.5', '7', '300')).toBeNull();
  });

  test('the raised face lies inside the studs and covers the sealing element', () => {
    for (const [class_, nps, , , outside] of ASME_B16_20_SPIRAL) {
      const face = raisedFaceDiameter('ASME B16.5', nps, String(class_))?.value;
      if (face === undefined) continue;
      expect(face * 1000, `${nps} class ${class_}`).toBeGreaterThan(outside - 0.6);
    }
    expect(raisedFaceDiameter('ASME B16.5', '22', '150')).toBeNull();
    expect(raisedFaceDiameter('EN 1092-1', '200', '16')?.status).toBe('SINGLE');
  });

  test('the older inch list never falls 0.2 in short of the current length, nor goes 0.6 in beyond it', () => {
    let seen = 0;
    for (const [class_, nps, length, older] of ASME_B16_5_RING_JOINT) {
      if (length === null || older === null) continue;
      seen += 1;
      const difference = older - length / INCH_MM;
      expect(difference, `${nps} class ${class_}`).toBeGreaterThan(-0.2);
      expect(difference, `${nps} class ${class_}`).toBeLessThan(0.6);
    }
    expect(seen).toBe(130);
  });

  test('stud lengths never shrink with size within a class, and stand-off is known up to class 300 only', () => {
    const last = new Map<number, number>();
    for (const [class_, nps, length, , standOff] of ASME_B16_5_RING_JOINT) {
      if (standOff !== null) expect(class_, nps).toBeLessThanOrEqual(300);
      if (length === null) continue;
      // NPS 3 has smaller studs than NPS 2-1/2 in class 900, whose small sizes are those of class 1500.
      if (!(class_ === 900 && nps === '3')) {
        expect(length, `${nps} class ${class_}`).toBeGreaterThanOrEqual(last.get(class_) ?? 0);
      }
      last.set(class_, length);
    }
  });

  test('corner cells read by hand', () => {
    expect(ringJoint('8', '300')).toMatchObject({ studLength: { value: 0.15 }, standOff: { value: 0.006 } });
    expect(ringJoint('12', '2500')).toMatchObject({ studLength: { value: 0.56 }, standOff: null });
    expect(ringJoint('1/2', '150')).toMatchObject({ studLength: null, standOff: null });
    expect(ringJoint('1/2', '2500')?.studLength).toMatchObject({
      status: 'DISAGREE',
      note: expect.stringContaining('5.25 in'),
    });
  });
});
