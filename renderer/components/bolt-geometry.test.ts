import { expect, test } from 'vitest';
import { layOut } from './bolt-geometry.ts';

test('bolt 1 is the first clockwise from twelve o’clock and numbers go clockwise', () => {
  const { spots, centre } = layOut(12, 312);
  const [first, second] = spots;
  expect(first?.x).toBeGreaterThan(centre);
  expect(first?.y).toBeLessThan(centre);
  expect(second?.x ?? 0).toBeGreaterThan(first?.x ?? 0);
  expect(second?.y ?? 0).toBeGreaterThan(first?.y ?? 0);
});

test.each([1, 2, 3, 4, 8, 12, 24, 48, 68, 100])('%i bolts keep apart and inside the sheet', (count) => {
  const { spots, nut, size } = layOut(count, 312);
  expect(spots).toHaveLength(count);
  for (const [index, spot] of spots.entries()) {
    expect(Math.min(spot.x, spot.y) - nut).toBeGreaterThan(0);
    expect(Math.max(spot.x, spot.y) + nut).toBeLessThan(size);
    const next = spots[(index + 1) % count];
    if (next && next !== spot) {
      expect(Math.hypot(next.x - spot.x, next.y - spot.y)).toBeGreaterThan(2 * nut);
    }
  }
});
