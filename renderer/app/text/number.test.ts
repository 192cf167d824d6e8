import { expect, test } from 'vitest';
import { counted, exact, full, roundly, sensible, withUnit } from './number.ts';

const plain = (text: string) => text.replaceAll('\u202f', ' ');

test('numbers are shown with four significant digits and grouped by threes', () => {
  expect(plain(sensible(384.2417))).toBe('384.2');
  expect(plain(sensible(1857.3))).toBe('1 857');
  expect(plain(sensible(12345.6))).toBe('12 346');
  expect(plain(sensible(1234567))).toBe('1 234 567');
  expect(sensible(97.942)).toBe('97.94');
  expect(sensible(0.46281)).toBe('0.463');
  expect(sensible(0)).toBe('0');
});

test('a minus sign is a minus sign and stays in front of the group', () => {
  expect(plain(sensible(-1704.6))).toBe('−1 705');
  expect(sensible(-5.73214)).toBe('−5.732');
});

test('what is dialled keeps its digits and gains none', () => {
  expect(plain(exact(1250))).toBe('1 250');
  expect(exact(0.1 + 0.2)).toBe('0.3');
  expect(exact(262.5)).toBe('262.5');
});

test('limits are round, results are not', () => {
  expect(roundly(700e5, 'bar')).toBe('700 bar');
  expect(withUnit(700e5, 'bar')).toBe('700.0 bar');
  expect(withUnit(0.4996, 'percent')).toBe('50.0 %');
});

test('a number with a plain ratio has no dangling unit', () => {
  expect(withUnit(0.16, 'one')).toBe('0.160');
});

test('very small numbers are written with a power of ten in the working', () => {
  expect(full(0.0000123456)).toBe('1.2346 × 10^−5');
  expect(plain(full(1858.3214))).toBe('1 858.32');
});

test('one of a thing is not called several', () => {
  expect(counted(1, 'joint')).toBe('1 joint');
  expect(counted(0, 'joint')).toBe('0 joints');
  expect(plain(counted(1807, 'record'))).toBe('1 807 records');
});
