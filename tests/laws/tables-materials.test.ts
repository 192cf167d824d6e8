import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findThread, type Thread } from '../../core/bolting/thread.ts';
import { RATINGS_1_1_INCH, RATINGS_1_1_METRIC } from '../../core/reference/asme-b16-5-ratings-1-1.ts';
import { RATINGS_1_2_INCH, RATINGS_1_2_METRIC } from '../../core/reference/asme-b16-5-ratings-1-2.ts';
import { RATINGS_1_9_METRIC } from '../../core/reference/asme-b16-5-ratings-1-9.ts';
import { RATINGS_2_1_METRIC } from '../../core/reference/asme-b16-5-ratings-2-1.ts';
import { RATINGS_2_2_METRIC, RATINGS_2_3_METRIC } from '../../core/reference/asme-b16-5-ratings-2-2.ts';
import { RATINGS_BEFORE_2003 } from '../../core/reference/asme-b16-5-ratings-before-2003.ts';
import { ASME_B31_1_MODULUS } from '../../core/reference/asme-b31-1-modulus.ts';
import { ASME_II_D_EXPANSION } from '../../core/reference/asme-ii-d-expansion.ts';
import { NUT_PAIRS } from '../../core/reference/astm-a194.ts';
import { EN_10269 } from '../../core/reference/en-10269.ts';
import { FRICTION_CLASSES, frictionClass } from '../../core/reference/friction-classes.ts';
import { ISO_898_2 } from '../../core/reference/iso-898-2.ts';
import { nutProofStress } from '../../core/reference/nut-proof.ts';
import type { RatingRow } from '../../core/reference/rating-row.ts';
import { RATING_GROUPS, ratingAt } from '../../core/reference/ratings.ts';
import { SOURCES } from '../../core/reference/sources.ts';
import { findStrength, gradeNames } from '../../core/reference/strengths.ts';
import { expansionAt, modulusAt, yieldAt } from '../../core/reference/temperature.ts';
import { VDI_2230_FRICTION } from '../../core/reference/vdi-2230-friction.ts';
import { toSI } from '../../core/units/units.ts';

const RATING_TABLES: readonly (readonly RatingRow[])[] = [
  RATINGS_1_1_METRIC,
  RATINGS_1_1_INCH,
  RATINGS_1_2_METRIC,
  RATINGS_1_2_INCH,
  RATINGS_1_9_METRIC,
  RATINGS_2_1_METRIC,
  RATINGS_2_2_METRIC,
  RATINGS_2_3_METRIC,
  RATINGS_BEFORE_2003,
];
const CLASSES = [150, 300, 400, 600, 900, 1500, 2500] as const;

function thread(designation: string): Thread {
  const found = findThread(designation);
  if (found === null) throw new Error(`fixture: ${designation}`);
  return found;
}

describe('ratings', () => {
  test('rows as carried over: 745 of 746, the gap for group 1.5 having none', () => {
    expect(RATING_TABLES.flat()).toHaveLength(745);
    expect(RATING_GROUPS).toEqual(['1.1', '1.2', '1.9', '2.1', '2.2', '2.3']);
  });

  test('fall with temperature in a class, and rise with the class at a temperature', () => {
    for (const table of RATING_TABLES) {
      for (const class_ of CLASSES) {
        const known = table.filter((row) => row[1] === class_ && row[3] !== null);
        known.forEach(([group, , temperature, pressure], index) => {
          const before = known[index - 1];
          if (before === undefined) return;
          const name = `${group} class ${class_} at ${temperature}`;
          expect(temperature, name).toBeGreaterThan(before[2]);
          expect(pressure ?? 0, name).toBeLessThanOrEqual(before[3] ?? 0);
        });
      }
      const lower = new Map<number, number>();
      for (const [group, class_, temperature, pressure] of [...table].sort((a, b) => a[1] - b[1])) {
        if (pressure === null) continue;
        expect(pressure, `${group} class ${class_} at ${temperature}`).toBeGreaterThanOrEqual(
          lower.get(temperature) ?? 0,
        );
        lower.set(temperature, pressure);
      }
    }
  });

  test('from class 300 up pressures keep the ratio of the classes within 2 %', () => {
    for (const table of [RATINGS_1_1_METRIC, RATINGS_2_1_METRIC, RATINGS_2_2_METRIC, RATINGS_2_3_METRIC]) {
      for (const [group, class_, temperature, pressure] of table) {
        const base = table.find((row) => row[1] === 300 && row[2] === temperature)?.[3];
        if (pressure === null || base == null || class_ === 150 || base < 10) continue;
        const ratio = pressure / base / (class_ / 300);
        expect(Math.abs(ratio - 1), `${group} class ${class_} at ${temperature}`).toBeLessThan(0.02);
      }
    }
  });

  test('corner cells read by hand', () => {
    expect(ratingAt('1.1', '150', 38)?.value).toBeCloseTo(19.6e5, 3);
    expect(ratingAt('1.1', 'Class 300', 200)?.value).toBeCloseTo(43.8e5, 3);
    expect(ratingAt('1.1', 2500, 538)?.value).toBeCloseTo(49.2e5, 3);
    expect(ratingAt('2.1', '300', 816)).toMatchObject({ value: 2.8e5, status: 'SINGLE' });
    expect(ratingAt('2.3', '150', 450)?.value).toBeCloseTo(4.6e5, 3);
    expect(ratingAt('2.2', '400', 38)?.status).toBe('FORMULA_ONLY');
  });

  test('the two editions stay apart: class 300 at 200 °F', () => {
    const celsius = (200 - 32) / 1.8;
    const psi = 6894.757293168;
    const old = ratingAt('1.1', '300', celsius, 'before 2003');
    expect((old?.value ?? 0) / psi).toBeCloseTo(675, 3);
    expect(old?.source).toContain('before 2003');
    expect((ratingAt('1.1', '300', celsius)?.value ?? 0) / psi).toBeGreaterThan(680);
    expect(ratingAt('2.1', '300', celsius, 'before 2003')).toBeNull();
  });

  test('metric rows go first, the inch rows of the same edition where no metric row reaches', () => {
    expect(ratingAt('1.2', '300', 50)).toMatchObject({
      value: 51.7e5,
      source: expect.stringContaining('bar'),
    });
    const inch = ratingAt('1.2', '300', 204.4444444444444);
    expect(inch?.source).toContain('psi');
    expect((inch?.value ?? 0) / 6894.757293168).toBeCloseTo(705, 6);
    expect(ratingAt('1.1', '300', 120)?.source).toContain('bar');
  });

  test('between two rows it is linear, and the first row holds from −29 °C', () => {
    expect(ratingAt('1.1', '300', 125)?.value).toBeCloseTo(((46.6 + 45.1) / 2) * 1e5, 3);
    expect(ratingAt('1.1', '300', 20)?.value).toBeCloseTo(51.1e5, 3);
    expect(ratingAt('1.1', '300', -29)?.value).toBeCloseTo(51.1e5, 3);
  });

  test.each([
    ['below the first row', '1.1', '300', -30],
    ['above the last row', '1.1', '300', 539],
    ['an open cell', '1.9', '600', 200],
    ['beside an open cell', '1.9', '600', 160],
    ['a single cell among disputed ones', '1.9', '600', 325],
    ['an open first column', '1.9', '150', 60],
    ['a gap', '1.5', '300', 100],
    ['another class', '1.1', '700', 100],
    ['another group', 'F22', '300', 100],
    ['not a number', '1.1', '300', Number.NaN],
  ])('not known: %s', (_, group, class_, temperature) => {
    expect(ratingAt(group, class_, temperature)).toBeNull();
  });

  test('whatever is asked, a known rating lies between its class’s ends', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...RATING_GROUPS),
        fc.constantFrom(...CLASSES),
        fc.double({ min: -100, max: 900, noNaN: false }),
        (group, class_, temperature) => {
          const found = ratingAt(group, class_, temperature);
          if (found === null) return;
          const top = ratingAt(group, class_, 20)?.value ?? Number.NaN;
          expect(found.value).toBeGreaterThan(0);
          expect(found.value).toBeLessThanOrEqual(top);
        },
      ),
    );
  });
});

describe('steel at temperature', () => {
  test('rows as carried over', () => {
    expect([ASME_B31_1_MODULUS.length, EN_10269.length, ASME_II_D_EXPANSION.length]).toEqual([75, 88, 48]);
  });

  test('modulus and yield never rise with temperature, mean expansion never falls', () => {
    const last = new Map<string, { at: number; value: number }>();
    const step = (name: string, at: number, value: number) => {
      const before = last.get(name);
      last.set(name, { at, value });
      if (before !== undefined) expect(at, name).toBeGreaterThan(before.at);
      return before === undefined ? 0 : value - before.value;
    };
    for (const [material, at, fahrenheit, gpa] of ASME_B31_1_MODULUS) {
      expect(step(material, at, gpa)).toBeLessThanOrEqual(0);
      // The −200 °C head of the column stands for −325 °F, −198.3 °C.
      expect(Math.abs((fahrenheit - 32) / 1.8 - at), material).toBeLessThan(2);
    }
    for (const [material, at, mpa] of EN_10269) expect(step(material, at, mpa)).toBeLessThanOrEqual(0);
    for (const [material, at, alpha] of ASME_II_D_EXPANSION) {
      expect(step(`expansion of ${material}`, at, alpha)).toBeGreaterThanOrEqual(0);
    }
  });

  test('corner cells read by hand', () => {
    expect(modulusAt('ASTM A193 B7', 21)).toMatchObject({ value: 204.8e9, status: 'AGREE' });
    expect(modulusAt('A193 Gr. B7', 427)?.value).toBeCloseTo(175.8e9, 0);
    expect(modulusAt('ASTM A193 B8M class 2', 649)?.value).toBeCloseTo(146.2e9, 0);
    expect(modulusAt('chromium steel, 12 to 27 % Cr', -200)).toMatchObject({
      value: 215.1e9,
      status: 'SINGLE',
    });
    expect(expansionAt('ASTM A193 B7', 150)).toMatchObject({ value: 12.4e-6, status: 'AGREE' });
    expect(expansionAt('2.2', 600)?.value).toBeCloseTo(18.8e-6, 12);
    expect(expansionAt('1.1', 20)?.value).toBeCloseTo(11.5e-6, 12);
    expect(yieldAt('EN 10269 X22CrMoV12-1 1.4923 QT1', 50, 0.024)).toMatchObject({
      value: 585e6,
      status: 'SINGLE',
    });
    expect(yieldAt('EN 10269 X5CrNiMo17-12-2 1.4401 AT', 550, 0.16)?.value).toBe(108e6);
  });

  test('carbon steel does not stand for Cr-Mo bolting: 5 % apart at 427 °C', () => {
    const bolting = modulusAt('ASTM A193 B7', 427)?.value ?? 0;
    const carbon = modulusAt('carbon steel, C over 0.3 %', 427)?.value ?? 0;
    expect(bolting / carbon).toBeGreaterThan(1.05);
  });

  test('strength at room temperature is scaled for no grade', () => {
    for (const grade of gradeNames()) expect(yieldAt(grade, 200, 0.024), grade).toBeNull();
  });

  test.each([
    ['a grade whose steel is open', modulusAt('ISO 898-1 8.8', 20)],
    ['a grade no table has', modulusAt('ASTM A453 660 class D', 20)],
    ['above the column', modulusAt('ASTM A193 B7', 650)],
    ['below 20 °C', expansionAt('ASTM A193 B7', 19)],
    ['another flange group', expansionAt('1.9', 200)],
    ['above 160 mm', yieldAt('EN 10269 X22CrMoV12-1 1.4923 QT1', 100, 0.161)],
    ['below 50 °C', yieldAt('EN 10269 X22CrMoV12-1 1.4923 QT1', 20, 0.024)],
    ['no diameter', yieldAt('EN 10269 X22CrMoV12-1 1.4923 QT1', 100, Number.NaN)],
    ['no temperature', modulusAt('ASTM A193 B7', Number.NaN)],
  ])('not known: %s', (_, found) => {
    expect(found).toBeNull();
  });
});

describe('nuts', () => {
  const heavy = 'ASME B18.2.2 heavy hex';

  test('rows as carried over: 62 proof loads', () => {
    expect(ISO_898_2).toHaveLength(62);
  });

  test('proof load over the tensile area is the stress printed beside it', () => {
    for (const [class_, style, size, , printed] of ISO_898_2) {
      if (printed === null) continue;
      const series = style === 1 ? 'ISO 4032' : 'ISO 4033';
      const found = nutProofStress(`class ${class_}`, thread(size), series);
      // The nominal area is rounded in the standard before it divides the load.
      expect(Math.abs((found?.value ?? 0) / 1e6 / printed - 1), `${size} class ${class_}`).toBeLessThan(
        0.004,
      );
    }
  });

  test('proof loads rise with size, and with the class', () => {
    const last = new Map<string, number>();
    for (const [class_, style, size, load] of ISO_898_2) {
      const name = `${class_} style ${style}`;
      expect(load, `${size} class ${name}`).toBeGreaterThan(last.get(name) ?? 0);
      last.set(name, load);
      const higher = ISO_898_2.find((row) => row[0] === class_ + 2 && row[1] === style && row[2] === size);
      if (higher !== undefined) expect(higher[3]).toBeGreaterThan(load);
    }
  });

  test('corner cells read by hand', () => {
    expect(nutProofStress('ISO 898-2 8', thread('M16'), 'ISO 4032')?.source).toContain('138200 N');
    expect(nutProofStress('8', thread('M39'), 'ISO 4032')?.source).toContain('897900 N');
    expect(nutProofStress('12', thread('M5'), 'ISO 4033')?.source).toContain('16300 N');
    expect(nutProofStress('ASTM A194 2H', thread('7/8-9 UNC'), heavy)).toMatchObject({
      value: 1205e6,
      status: 'AGREE',
    });
    expect(nutProofStress('A194 2HM', thread('7/8-9 UNC'), heavy)).toMatchObject({
      value: 1035e6,
      status: 'DISAGREE',
      note: expect.stringContaining('2HM'),
    });
    expect(nutProofStress('A194 8M', thread('M24'), 'ASME B18.2.4.6M heavy hex')?.value).toBe(550e6);
    expect(nutProofStress('ASTM A194 Gr. 7', thread('1-8 UNC'), heavy)?.status).toBe('SINGLE');
  });

  test('in a pair that sources name, the nut proves more than the stud’s tensile strength', () => {
    for (const [stud, nut] of NUT_PAIRS) {
      const strength = findStrength(stud, thread('7/8-9 UNC'));
      const proof = nutProofStress(`ASTM A194 ${nut}`, thread('7/8-9 UNC'), heavy)?.value ?? 0;
      if (strength === null) throw new Error(`fixture: ${stud}`);
      expect(proof, `${stud} with ${nut}`).toBeGreaterThan(toSI(...strength.tensile));
    }
    expect(NUT_PAIRS).toHaveLength(2);
  });

  test('class 8 changes at M16', () => {
    const stress = (size: string) => nutProofStress('8', thread(size), 'ISO 4032')?.value ?? 0;
    expect(stress('M16') / 1e6).toBeCloseTo(880, -1);
    expect(stress('M18') / 1e6).toBeCloseTo(920, -1);
  });

  test.each([
    ['2H above 1-1/2 in', nutProofStress('ASTM A194 2H', thread('1-5/8-8 8UN'), heavy)],
    ['2H that is not heavy hex', nutProofStress('ASTM A194 2H', thread('M24'), 'ISO 4032')],
    ['7M', nutProofStress('ASTM A194 7M', thread('1-8 UNC'), heavy)],
    ['8 strain hardened', nutProofStress('ASTM A194 8 strain hardened', thread('1-8 UNC'), heavy)],
    ['class 12, style 1', nutProofStress('12', thread('M16'), 'ISO 4032')],
    ['a fine thread', nutProofStress('8', thread('M24x2'), 'ISO 4032')],
    ['DIN 934', nutProofStress('8', thread('M24'), 'DIN 934')],
    ['another grade', nutProofStress('best', thread('M24'), 'ISO 4032')],
  ])('not known: %s', (_, found) => {
    expect(found).toBeNull();
  });
});

describe('friction classes', () => {
  test('overlap and rise from A to E', () => {
    expect(VDI_2230_FRICTION).toHaveLength(11);
    const ranges = FRICTION_CLASSES.map((name) => frictionClass(name));
    expect(ranges.map((range) => [range?.min, range?.max])).toEqual([
      [0.04, 0.1],
      [0.08, 0.16],
      [0.14, 0.24],
      [0.2, 0.35],
      [0.3, null],
    ]);
    expect(ranges.every((range) => range?.evidence === 'published')).toBe(true);
  });

  test('one range for a class, whatever the pair', () => {
    for (const [name, , , min, max] of VDI_2230_FRICTION) {
      expect(frictionClass(name)).toMatchObject({ min, max });
    }
    expect(frictionClass('F')).toBeNull();
    expect(frictionClass('b')?.pairs).toHaveLength(4);
  });
});

test('every row’s sources are named in the list of sources', () => {
  const cited = [...RATING_TABLES.flat(), ...ASME_B31_1_MODULUS, ...EN_10269, ...ASME_II_D_EXPANSION]
    .map((row) => String(row.at(-2)))
    .concat(ISO_898_2.map((row) => row[5]))
    .concat(VDI_2230_FRICTION.map((row) => row[5]))
    .flatMap((text) => text.split('+'))
    .filter((id) => id !== '');
  expect([...new Set(cited)].filter((id) => SOURCES[id] === undefined)).toEqual([]);
});
