import { expect, test } from 'vitest';
import { certificateFaults } from './certificate-faults.ts';
import { blankRow } from './certificate-form-values.ts';

const row = (first: string, second: string) => ({ ...blankRow(), first, second });
const rows = [blankRow(), row('100', 'x'), blankRow(), row('200', '30')];
const fault = (field: string) => ({ field, value: 'x', allowed: 'a number' });
const fields = (kind: Parameters<typeof certificateFaults>[1], ...names: string[]) =>
  certificateFaults(names.map(fault), kind, { rows, foundRows: [row('1', '2')] }).map(({ field }) => field);

test('a point keeps the row it was typed in, though empty rows are not sent', () => {
  expect(
    fields(
      'pressure-torque',
      'data.measured.points.0.torque',
      'data.measured.points.1',
      'data.asFound.points.0.pressure',
    ),
  ).toEqual(['data.measured.points.1.torque', 'data.measured.points.3', 'data.asFound.points.0.pressure']);
});

test('a unit that is not chosen is told once for each column that needs it', () => {
  const faults = certificateFaults(
    ['0.pressure', '0.torque', '1.pressure', '1.uncertainty'].map((at) =>
      fault(`data.measured.points.${at}.unit`),
    ),
    'pressure-torque',
    { rows, foundRows: [] },
  );
  expect(faults).toEqual([
    { field: 'data.pressureUnit', value: '', allowed: 'needed: choose the unit' },
    { field: 'data.torqueUnit', value: '', allowed: 'needed: choose the unit' },
  ]);
  expect(fields('gauge', 'data.measured.points.0.reference.unit')).toEqual(['data.pressureUnit']);
});

test('other faults stand as they are', () => {
  expect(fields('gauge', 'data.number', 'data.measured.points')).toEqual([
    'data.number',
    'data.measured.points',
  ]);
});
