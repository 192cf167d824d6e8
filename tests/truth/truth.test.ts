import { describe, expect, test } from 'vitest';
import { HALF_DIGIT, halfDigit, type TruthRow } from './row.ts';
import { sourceOf, workOf } from './sources.ts';
import { COUNTS, deviation, standings } from './standing.ts';
import { ALL_ROWS, TOPICS } from './topics.ts';

for (const [topic, rows] of Object.entries(TOPICS)) {
  describe(topic, () => {
    test.each(rows)('$what ($kind)', ({ expected, tolerance, computed }) => {
      const value = computed();
      if (typeof expected === 'string' || typeof value === 'string') {
        expect(value).toBe(expected);
        return;
      }
      expect(Math.abs(value - expected), `computed ${value}, expected ${expected}`).toBeLessThanOrEqual(
        tolerance,
      );
    });
  });
}

const STANDINGS = standings(ALL_ROWS);
const COUNTED = ALL_ROWS.filter((row) => STANDINGS.get(row) === COUNTS);
const isCell = ({ kind }: TruthRow) => kind === 'published table cell';

describe('what counts', () => {
  test('at least 400 checks of at least 25 works, at most half of them table cells', () => {
    expect(COUNTED.length).toBeGreaterThanOrEqual(400);
    expect(new Set(COUNTED.map(({ source }) => workOf(source))).size).toBeGreaterThanOrEqual(25);
    expect(COUNTED.filter(isCell).length).toBeLessThanOrEqual(COUNTED.length / 2);
  });

  test('nothing from memory, computed, or of an author or printing that is not known', () => {
    for (const row of COUNTED) {
      expect(['published', 'published table cell'], row.what).toContain(row.kind);
      const source = sourceOf(row.source);
      expect(['A', 'B'], row.what).toContain(source.grade);
      expect(`${source.title} ${source.author}`, row.what).not.toMatch(/not recorded|unknown|unnamed/i);
    }
  });

  test('no cell counts against the source its shipped cell came from', () => {
    const cells = COUNTED.filter((row) => row.shippedFrom !== undefined);
    expect(cells.length).toBeGreaterThan(0);
    for (const row of cells) {
      const keys = row.shippedFrom?.().split('+') ?? [];
      expect(keys.length, row.what).toBeGreaterThan(0);
      for (const key of sourceOf(row.source).shippedAs ?? []) expect(keys, row.what).not.toContain(key);
    }
    const [first] = cells;
    if (first === undefined) throw new Error('no cell');
    // The Handbook's excerpt is one of the shipped sources: a cell that came from it must not count against it.
    const own = { ...first, source: 'machinerys-handbook', shippedFrom: () => 'N5+N9' } as const;
    expect(standings([own]).get(own)).toBe('the shipped cell comes from here');
  });

  test('cells beyond the number of examples do not count', () => {
    const cells = COUNTED.filter(isCell).slice(0, 3);
    const [example] = COUNTED.filter((row) => !isCell(row));
    if (example === undefined) throw new Error('no example');
    const marks = [...standings([example, ...cells]).values()];
    expect(marks.filter((mark) => mark === COUNTS)).toHaveLength(2);
    expect(marks.filter((mark) => mark === 'cells would be more than half')).toHaveLength(2);
  });
});

describe('every row', () => {
  test('names source, place, the printed value and the reason for its tolerance', () => {
    for (const row of ALL_ROWS) {
      const source = sourceOf(row.source);
      for (const text of [source.title, source.author, source.edition, row.place, row.printed, row.why]) {
        expect(text.trim().length, row.what).toBeGreaterThan(0);
      }
    }
  });

  test('says why where it allows more than half the last printed digit', () => {
    for (const row of ALL_ROWS.filter(({ expected }) => typeof expected === 'number')) {
      if (row.why === HALF_DIGIT) expect(row.tolerance, row.what).toBe(halfDigit(row.printed));
      else expect(row.why.length, row.what).toBeGreaterThan(10);
      const value = row.computed();
      expect(deviation(row, value), row.what).toBeLessThanOrEqual((2 * row.tolerance) / row.step + 1e-6);
    }
  });

  test('stands once', () => {
    const names = COUNTED.map((row) => `${workOf(row.source)} | ${row.place} | ${row.what}`);
    expect(names.filter((name, index) => names.indexOf(name) !== index)).toEqual([]);
  });
});
