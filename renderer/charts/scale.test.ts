import { expect, test } from 'vitest';
import { marksBetween, marksTo } from './scale.ts';

test('marks are round, start at zero and reach the highest value', () => {
  expect(marksTo(3346)).toEqual([0, 1000, 2000, 3000, 4000]);
  expect(marksTo(594.1)).toEqual([0, 200, 400, 600]);
  expect(marksTo(690)).toEqual([0, 200, 400, 600, 800]);
  for (const highest of [0.7, 12, 99.9, 100, 5400, 123456]) {
    const marks = marksTo(highest);
    expect(marks[0]).toBe(0);
    expect(marks.at(-1)).toBeGreaterThanOrEqual(highest);
    expect(marks.length).toBeLessThanOrEqual(6);
  }
});

test('nothing to show still gives an axis', () => {
  expect(marksTo(0)).toEqual([0, 1]);
});

test('time is marked evenly, a single moment once', () => {
  expect(marksBetween(0, 100, 5)).toEqual([0, 25, 50, 75, 100]);
  expect(marksBetween(7, 7, 5)).toEqual([7]);
});
