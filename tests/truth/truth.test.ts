import { describe, expect, test } from 'vitest';
import { GUM_ROWS } from './gum-h3.rows.ts';
import { LOOSENING_ROWS } from './loosening.rows.ts';
import { NUT_ROWS } from './nuts.rows.ts';
import { PCC_1_ROWS } from './pcc-1.rows.ts';
import type { TruthRow } from './row.ts';
import { THREAD_ROWS } from './threads.rows.ts';
import { TORQUE_ROWS } from './torque.rows.ts';
import { VDI_ROWS } from './vdi-2230.rows.ts';
import { WORKED_JOINT_A_ROWS } from './worked-joint-a.rows.ts';

const TOPICS: Readonly<Record<string, readonly TruthRow[]>> = {
  'thread areas': THREAD_ROWS,
  'across flats': NUT_ROWS,
  'torque and load': TORQUE_ROWS,
  loosening: LOOSENING_ROWS,
  'VDI 2230 tables': VDI_ROWS,
  'PCC-1': PCC_1_ROWS,
  'GUM H.3': GUM_ROWS,
  'worked joint A': WORKED_JOINT_A_ROWS,
};

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

test('enough checks stand against a source outside the project', () => {
  const all = Object.values(TOPICS).flat();
  const counted = all.filter(({ kind }) => kind === 'published' || kind === 'published table cell');
  expect(counted.length).toBeGreaterThanOrEqual(60);
  const examples = TORQUE_ROWS.filter(({ kind }) => kind === 'published');
  expect(examples.length).toBeGreaterThanOrEqual(10);
});

test('every check names its source, its place and the reason for its tolerance', () => {
  for (const row of Object.values(TOPICS).flat()) {
    expect(
      [row.source, row.place, row.why].every((text) => text.trim().length > 3),
      row.what,
    ).toBe(true);
  }
});
