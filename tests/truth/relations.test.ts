import { describe, expect, test } from 'vitest';
import { GASKET_ROWS } from './gasket.rows.ts';
import type { TruthRow } from './row.ts';
import { STIFFNESS_ROWS } from './stiffness.rows.ts';
import { UNCERTAINTY_ROWS } from './uncertainty.rows.ts';

const TOPICS: Readonly<Record<string, readonly TruthRow[]>> = {
  'stiffness, stretch and expansion': STIFFNESS_ROWS,
  'gasket, code minimum and nuts': GASKET_ROWS,
  'uncertainty of results': UNCERTAINTY_ROWS,
};

for (const [topic, rows] of Object.entries(TOPICS)) {
  describe(topic, () => {
    test.each(rows)('$what ($kind)', ({ expected, tolerance, computed }) => {
      const value = computed();
      expect(typeof value, `computed ${value}`).toBe(typeof expected);
      expect(
        Math.abs(Number(value) - Number(expected)),
        `computed ${value}, expected ${expected}`,
      ).toBeLessThanOrEqual(tolerance);
    });
  });
}

test('every check names its source, its place and the reason for its tolerance', () => {
  for (const row of Object.values(TOPICS).flat()) {
    expect(
      [row.source, row.place, row.why].every((text) => text.trim().length > 0),
      row.what,
    ).toBe(true);
  }
});
