import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { inside } from './coverage.ts';
import { calibration, calibrationPage, PLANTS } from './page.ts';

const found = calibration();

test('90 % intervals cover 87 to 93 % of next openings of 200 invented plants', () => {
  const { plants, worst, bolts } = found.coverage;
  expect(plants).toBe(PLANTS);
  expect(PLANTS).toBe(200);
  expect(worst.openings).toBeGreaterThan(1200);
  for (const hits of [worst, bolts]) {
    expect(inside(hits)).toBeGreaterThan(0.87);
    expect(inside(hits)).toBeLessThan(0.93);
  }
  // The upper end is the one that a tool is chosen by.
  expect(worst.above / worst.openings).toBeLessThan(0.065);
});

test('they hold for joints that were never opened and for those that were', () => {
  const groups = Object.values(found.coverage.byOwn);
  expect(groups.length).toBe(3);
  for (const hits of groups) {
    expect(hits.openings).toBeGreaterThan(100);
    expect(inside(hits)).toBeGreaterThan(0.86);
    expect(inside(hits)).toBeLessThan(0.95);
  }
});

test('they are far sharper than without history, and about as sharp as if the service were known', () => {
  const { forecast, knowing, nothing } = found.coverage.width;
  expect(forecast).toBeLessThan(0.8 * nothing);
  expect(forecast).toBeLessThan(1.15 * knowing);
});

test('a service that takes 4 % more at each opening is found within 12 openings in nine of ten cases', () => {
  const moving = found.moving.find(({ slope }) => slope === 0.04);
  expect(moving?.found).toBeGreaterThan(0.98);
  expect(moving?.nineTenths).toBeLessThanOrEqual(12);
  expect(found.still.falseAlarms).toBeLessThan(0.1);
});

test('the page of it is up to date; npm run docs:forecast writes it', () => {
  const written = readFileSync(
    join(import.meta.dirname, '..', '..', 'docs', 'generated', 'forecast.md'),
    'utf8',
  );
  expect(written).toBe(calibrationPage(found));
  expect(written).not.toContain('NaN');
});
