import { expect, test } from 'vitest';
import { daysToEndOf, monthAfter, monthWords, weeksOf } from './weeks.ts';

test('a month is shown in whole weeks from Monday, numbered by ISO 8601', () => {
  const weeks = weeksOf('2026-11');
  // 1 November 2026 is a Sunday and lies in week 44; 30 November, a Monday, opens week 49.
  expect(weeks.map(({ number }) => number)).toEqual([44, 45, 46, 47, 48, 49]);
  expect(weeks[0]?.days.map(({ date }) => date).slice(5)).toEqual(['2026-10-31', '2026-11-01']);
  expect(weeks[0]?.days.map(({ inMonth }) => inMonth)).toEqual([...Array(6).fill(false), true]);
  expect(weeks.at(-1)?.days[0]).toEqual({ date: '2026-11-30', number: 30, inMonth: true });
});

test('the turn of the year lies in the week of its Thursday', () => {
  expect(weeksOf('2027-01')[0]?.number).toBe(53);
  expect(weeksOf('2026-01')[0]?.number).toBe(1);
});

test('every day of a month stands once', () => {
  for (const [month, days] of [
    ['2024-02', 29],
    ['2026-02', 28],
    ['2026-12', 31],
  ] as const) {
    const inside = weeksOf(month).flatMap((week) => week.days.filter(({ inMonth }) => inMonth));
    expect(inside).toHaveLength(days);
    expect(new Set(inside.map(({ date }) => date)).size).toBe(days);
  }
});

test('months are counted over the end of the year', () => {
  expect(monthAfter('2026-12', 1)).toBe('2027-01');
  expect(monthAfter('2026-01', -1)).toBe('2025-12');
  expect(monthWords('2026-03')).toBe('March 2026');
});

test('the look ahead reaches the last day of the month, and never back', () => {
  expect(daysToEndOf('2026-11', '2026-11-25')).toBe(5);
  expect(daysToEndOf('2027-01', '2026-11-25')).toBe(67);
  expect(daysToEndOf('2026-10', '2026-11-25')).toBe(0);
});
