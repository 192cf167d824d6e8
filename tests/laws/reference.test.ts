import { describe, expect, test } from 'vitest';
import { findNut, NUT_SERIES } from '../../core/bolting/nut.ts';
import { findThread, threadDesignations } from '../../core/bolting/thread.ts';
import { standardThread } from '../../core/joint/resolve.ts';
import { ASME_B16_5 } from '../../core/reference/asme-b16-5.ts';
import { ASME_B16_47 } from '../../core/reference/asme-b16-47.ts';
import { HEAVY_HEX_INCH } from '../../core/reference/asme-b18-2-2.ts';
import { BOLT_STRENGTHS } from '../../core/reference/bolt-strength.ts';
import { referenceChoices } from '../../core/reference/choices.ts';
import { EN_1092_1 } from '../../core/reference/en-1092-1.ts';
import { FLANGE_STANDARDS, findFlange, flangeSizes } from '../../core/reference/flanges.ts';
import { SOURCES } from '../../core/reference/sources.ts';
import { findStrength, gradeNames, yieldPa } from '../../core/reference/strengths.ts';
import { toSI } from '../../core/units/units.ts';

test('tables have the rows they were carried over with', () => {
  expect([ASME_B16_5.length, ASME_B16_47.length, EN_1092_1.length, HEAVY_HEX_INCH.length]).toEqual([
    136, 174, 174, 22,
  ]);
});

test('ASME flanges: hole = stud + 1/8 in, studs in fours, hole inside the rim', () => {
  for (const [nps, , rating, bolts, stud, circle, hole, rim] of ASME_B16_5) {
    const name = `${nps} class ${rating}`;
    expect(hole - stud, name).toBeCloseTo(0.125, 9);
    expect(bolts % 4, name).toBe(0);
    if (rim !== null) expect(circle + hole * 25.4, name).toBeLessThan(rim);
  }
  for (const [series, rating, nps, bolts, stud, circle, hole, rim] of ASME_B16_47) {
    const name = `${series} ${nps} class ${rating}`;
    expect(bolts % 4, name).toBe(0);
    if (stud !== null && hole !== null) expect(hole - stud, name).toBeCloseTo(0.125, 9);
    if (circle !== null && hole !== null && rim !== null)
      expect(circle + hole * 25.4, name).toBeLessThan(rim);
  }
});

test('bolt circles never shrink with size within a rating', () => {
  // B16.47 series A drops at NPS 38 from class 300 up: from there it is a more compact design.
  for (const standard of ['ASME B16.5', 'EN 1092-1', 'ASME B16.47 B'] as const) {
    const last = new Map<string, number>();
    for (const { size, ratings } of flangeSizes(standard)) {
      for (const rating of ratings) {
        const circle = findFlange(standard, size, rating)?.boltCircle ?? null;
        if (circle === null) continue;
        expect(circle, `${standard} ${size} ${rating}`).toBeGreaterThanOrEqual(last.get(rating) ?? 0);
        last.set(rating, circle);
      }
    }
  }
});

test('every standard flange’s bolting has a thread and, in inch, a heavy hex nut', () => {
  for (const standard of FLANGE_STANDARDS) {
    for (const { size, ratings } of flangeSizes(standard)) {
      for (const rating of ratings) {
        const row = findFlange(standard, size, rating);
        if (row === null || (row.studIn === null && row.metricThread === null)) continue;
        const thread = standardThread(row);
        expect(thread, `${standard} ${size} ${rating}`).not.toBeNull();
        if (thread?.system === 'inch') expect(findNut('ASME B18.2.2 heavy hex', thread)).not.toBeNull();
      }
    }
  }
});

test('corner cells read by hand', () => {
  expect(findFlange('ASME B16.5', '1/2', '150')).toMatchObject({ bolts: 4, studIn: 0.5 });
  expect(findFlange('ASME B16.5', '8', '300')).toMatchObject({ bolts: 12, studIn: 0.875 });
  expect(findFlange('ASME B16.5', '12', '2500')).toMatchObject({ bolts: 12, studIn: 2.75 });
  expect(findFlange('ASME B16.47 A', '26', '150')).toMatchObject({ bolts: 24, studIn: 1.25 });
  expect(findFlange('EN 1092-1', '200', '16')).toMatchObject({ bolts: 12, metricThread: 'M20' });
});

test('values that sources leave open are open', () => {
  expect(findFlange('EN 1092-1', '65', '16')?.bolts).toBeNull();
  expect(findFlange('EN 1092-1', '65', '10')?.bolts).toBeNull();
  expect(findFlange('ASME B16.47 A', '36', '600')?.studIn).toBeNull();
  expect(findFlange('ASME B16.47 B', '32', '400')?.boltCircle).toBeNull();
});

test.each([
  ['1-1/2', '150'],
  ['1 1/2', 'Class 150'],
  ['NPS 1 1/2', '150#'],
])('size %s rating %s is NPS 1 1/2 class 150', (size, rating) => {
  expect(findFlange('ASME B16.5', size, rating)?.size).toBe('1 1/2');
});

describe('grades', () => {
  test('yield lies below tensile strength and does not rise with size', () => {
    for (const row of BOLT_STRENGTHS) {
      expect(toSI(...row.yield), row.grade).toBeLessThan(toSI(...row.tensile));
      expect(row.over, row.grade).toBeLessThan(row.upTo);
      const next = BOLT_STRENGTHS.find(
        (other) => other.grade === row.grade && other.system === row.system && other.over === row.upTo,
      );
      // ISO 898-1 8.8 is the one grade whose larger sizes are stronger.
      if (next !== undefined && row.grade !== 'ISO 898-1 8.8') {
        expect(yieldPa(next), row.grade).toBeLessThanOrEqual(yieldPa(row));
      }
    }
  });

  test('inch and metric studs of one grade keep their own table', () => {
    const inch = findThread('7/8-9 UNC');
    const metric = findThread('M24');
    if (inch === null || metric === null) throw new Error('fixture: threads');
    expect(findStrength('ASTM A193 B7', inch)?.yield).toEqual([105, 'ksi']);
    expect(findStrength('A193 Gr. B7', metric)?.yield).toEqual([720, 'MPa']);
    expect(findStrength('ASTM A193 B16', metric)).toBeNull();
    expect(findStrength('B7', inch)).toBeNull();
  });

  test.each([
    ['2-1/2-8 8UN', 105],
    ['2-5/8-8 8UN', 95],
    ['4-8 8UN', 95],
  ])('B7 in %s yields at %d ksi', (designation, ksi) => {
    const thread = findThread(designation);
    if (thread === null) throw new Error('fixture: thread');
    expect(findStrength('ASTM A193 B7', thread)?.yield).toEqual([ksi, 'ksi']);
  });
});

test('nuts are wider than the stud, and corners wider than flats', () => {
  let seen = 0;
  for (const designation of threadDesignations()) {
    const thread = findThread(designation);
    if (thread === null) throw new Error(designation);
    for (const series of NUT_SERIES) {
      const nut = findNut(series, thread);
      if (nut === null) continue;
      seen += 1;
      expect(nut.acrossFlats).toBeGreaterThan(thread.diameter);
      expect(nut.acrossCorners).toBeGreaterThan(1.13 * nut.acrossFlats);
      expect(nut.bearingOutside).toBeGreaterThan(thread.diameter);
    }
  }
  expect(seen).toBeGreaterThan(100);
});

test.each([
  ['M10', 16, 17],
  ['M12', 18, 19],
  ['M14', 21, 22],
  ['M22', 34, 32],
])('%s is %d mm across flats by ISO 4032 and %d mm by DIN 934', (designation, iso, din) => {
  const thread = findThread(designation);
  if (thread === null) throw new Error('fixture: thread');
  expect((findNut('ISO 4032', thread)?.acrossFlats ?? 0) * 1000).toBeCloseTo(iso, 9);
  expect((findNut('DIN 934', thread)?.acrossFlats ?? 0) * 1000).toBeCloseTo(din, 9);
});

test('every row’s sources are named in the list of sources', () => {
  const cited = [
    ...ASME_B16_5.map((row) => row[11]),
    ...ASME_B16_47.map((row) => row[10]),
    ...EN_1092_1.map((row) => row[7]),
    ...BOLT_STRENGTHS.map((row) => row.sources),
  ].flatMap((text) => text.split('+'));
  expect([...new Set(cited)].filter((id) => SOURCES[id] === undefined)).toEqual([]);
});

test('forms are offered every table’s names', () => {
  const choices = referenceChoices();
  expect(choices.flangeStandards.map(({ standard }) => standard)).toEqual([...FLANGE_STANDARDS]);
  expect(choices.threads).toContain('7/8-9 UNC');
  expect(choices.threads).toContain('M24x3');
  expect(choices.grades).toEqual(gradeNames());
  expect(choices.passPlans.map(({ id }) => id)).toContain('staged-thirds');
});
