import { expect, test } from 'vitest';
import { coverageOf, inside } from '../calibration/coverage.ts';

/** Every joint of 200 plants that the short test has not seen. */
test('90 % intervals cover 88 to 92 % of all next openings of 200 further plants', () => {
  const coverage = coverageOf(200, 1001, Number.POSITIVE_INFINITY);
  process.stdout.write(`${JSON.stringify(coverage)}\n`);
  expect(coverage.worst.openings).toBeGreaterThan(5000);
  for (const hits of [coverage.worst, coverage.bolts]) {
    expect(inside(hits)).toBeGreaterThan(0.88);
    expect(inside(hits)).toBeLessThan(0.92);
  }
});
