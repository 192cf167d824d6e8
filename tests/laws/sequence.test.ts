import { describe, expect, test } from 'vitest';
import { PASS_PLANS } from '../../core/sequence/plans.ts';
import { PUBLISHED_ORDERS } from '../../core/sequence/published.ts';
import { ownOrder, starOrder } from '../../core/sequence/star.ts';

const COUNTS = Array.from({ length: 97 }, (_, index) => index + 4);

function range(count: number): number[] {
  return Array.from({ length: count }, (_, index) => index + 1);
}

/** Distance of the sum of the studs' directions from the middle, after each one. */
function imbalance(order: readonly number[], count: number): number[] {
  let x = 0;
  let y = 0;
  return order.map((bolt) => {
    const angle = (2 * Math.PI * (bolt - 1)) / count;
    x += Math.cos(angle);
    y += Math.sin(angle);
    return Math.hypot(x, y);
  });
}

describe.each(COUNTS)('%i studs', (count) => {
  const order = starOrder(count)?.groups.flat() ?? [];
  const own = ownOrder(count);

  test('every stud once, from stud 1', () => {
    expect([...order].sort((a, b) => a - b)).toEqual(range(count));
    expect([...own].sort((a, b) => a - b)).toEqual(range(count));
    expect([order[0], own[0]]).toEqual([1, 1]);
  });

  test('the program’s rule is never farther out of balance than going round', () => {
    const round = Math.max(...imbalance(range(count), count));
    expect(Math.max(...imbalance(own, count))).toBeLessThanOrEqual(round + 1e-9);
  });

  if (count % 2 === 0) {
    test('by the program’s rule each stud is followed by its opposite and the pair balances', () => {
      const sums = imbalance(own, count);
      for (let index = 0; index < count; index += 2) {
        expect(((own[index + 1] ?? 0) - (own[index] ?? 0) + count) % count).toBe(count / 2);
        expect(sums[index + 1]).toBeLessThan(1e-9);
      }
    });
  } else {
    test('without opposites the imbalance stays within one stud and a half', () => {
      expect(Math.max(...imbalance(own, count))).toBeLessThanOrEqual(1.5);
      expect(imbalance(own, count).at(-1)).toBeLessThan(1e-9);
    });
  }
});

test('published lists of 4 to 24 studs pair opposites within each group of four', () => {
  const small = Object.entries(PUBLISHED_ORDERS).filter(([count]) => Number(count) <= 24);
  expect(small.length).toBeGreaterThan(0);
  for (const [count, groups] of small) {
    for (const [first = 0, second = 0, third = 0, fourth = 0] of groups) {
      expect(Math.abs(second - first)).toBe(Number(count) / 2);
      expect(Math.abs(fourth - third)).toBe(Number(count) / 2);
    }
  }
});

test.each([0, -4, 4.5, Number.NaN, 401])('%d is no number of studs', (count) => {
  expect(starOrder(count)).toBeNull();
});

test.each([1, 2, 3])('%i studs have an order too', (count) => {
  expect(starOrder(count)?.groups.flat().length).toBe(count);
});

test.each(PASS_PLANS)('$name rises to the full target and ends there', ({ steps }) => {
  const fractions = steps.map((step) => step.fraction ?? 0);
  expect([...fractions].sort((a, b) => a - b)).toEqual(fractions);
  expect(fractions.at(-1)).toBe(1);
  expect(steps.every((step) => step.stopWhen.length > 10)).toBe(true);
});
