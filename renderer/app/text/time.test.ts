import { expect, test } from 'vitest';
import { day, dayOf, moment, span, withOffset } from './time.ts';

test('the month is a word', () => {
  expect(day('2026-03-04')).toBe('4 Mar 2026');
  expect(span('2026-03-16', '2026-03-17')).toBe('16 Mar 2026 to 17 Mar 2026');
  expect(span('2026-03-16', '2026-03-16')).toBe('16 Mar 2026');
});

test('a moment is shown and typed in the time zone of the site, summer and winter', () => {
  expect(moment('2026-03-16T07:42:00Z', 'Europe/Amsterdam')).toBe('16 Mar 2026 08:42');
  expect(dayOf('2026-03-16T23:30:00Z', 'Europe/Amsterdam')).toBe('17 Mar 2026');
  expect(withOffset('2026-03-16T07:42', 'Europe/Amsterdam')).toBe('2026-03-16T07:42:00+01:00');
  expect(withOffset('2026-07-16T07:42', 'Europe/Amsterdam')).toBe('2026-07-16T07:42:00+02:00');
});
