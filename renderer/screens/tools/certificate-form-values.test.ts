import { expect, test } from 'vitest';
import type { EntryDoubt } from '../../../core/contract/certificate-view.ts';
import {
  assessable,
  certificateInput,
  EMPTY_CERTIFICATE,
  openDoubts,
  pastedRows,
} from './certificate-form-values.ts';

const point = (first: string, second: string, uncertainty = '') => ({
  first,
  second,
  direction: 'up' as const,
  uncertainty,
});
const form = { ...EMPTY_CERTIFICATE, pressureUnit: 'bar', torqueUnit: 'N.m' };

test('rows of a sheet are pasted as points, with their direction and uncertainty', () => {
  expect(pastedRows('70\t100\n140\t203\tdown\t2.5\r\n')).toEqual([
    { first: '70', second: '100', direction: 'up', uncertainty: '' },
    { first: '140', second: '203', direction: 'down', uncertainty: '2.5' },
  ]);
  expect(pastedRows('70;100,5\n140;203')?.[0]?.second).toBe('100,5');
});

test('a single value is pasted as text, not as a table', () => {
  expect(pastedRows('70')).toBeNull();
});

test('empty rows are left out and a half-filled one is sent, to be named as a fault', () => {
  const rows = [point('70', '100'), point('', ' '), point('140', '')];
  const { measured } = certificateInput({ ...form, rows }, 'a tool', 'pressure-torque', []);
  expect(measured.points).toHaveLength(2);
  expect(measured.points[1]).toMatchObject({ pressure: { text: '140' }, torque: { text: '' } });
});

test('points as found are sent only for a tool that was adjusted', () => {
  const typed = { ...form, rows: [point('70', '100')], foundRows: [point('70', '92', '1')] };
  expect(certificateInput(typed, 'a tool', 'pressure-torque', []).asFound).toBeNull();
  const adjusted = certificateInput({ ...typed, adjusted: true }, 'a tool', 'pressure-torque', []);
  expect(adjusted.asFound?.points).toMatchObject([{ torque: { text: '92' }, uncertainty: { text: '1' } }]);
});

test('a limit left empty is none, and a guard band without one is sent to be named', () => {
  expect(certificateInput(form, 'a tool', 'gauge', []).decisionRule).toBeNull();
  const banded = { ...form, decisionRule: { ...form.decisionRule, guardBand: true } };
  expect(certificateInput(banded, 'a tool', 'gauge', []).decisionRule).toMatchObject({ limit: { text: '' } });
});

test('what was confirmed counts only for the points it stood on', () => {
  const doubt = (text: string): EntryDoubt => ({
    code: 'points out of order',
    refuses: false,
    point: 1,
    series: 'measured',
    text,
  });
  const then = [doubt('point 2: 70 bar comes after 140 bar')];
  const confirmed = openDoubts(then).map(({ key }) => key);
  const sent = (doubts: readonly EntryDoubt[]) =>
    certificateInput({ ...form, confirmed }, 'a tool', 'gauge', doubts).confirmed;
  expect(sent(then)).toEqual(['points out of order']);
  expect(sent([doubt('point 2: 60 bar comes after 140 bar')])).toEqual([]);
});

test('a doubt that refuses is not offered for confirmation', () => {
  const refused: EntryDoubt = {
    code: 'no rising line',
    refuses: true,
    point: null,
    series: 'measured',
    text: 'torque that rises with pressure',
  };
  expect(openDoubts([refused])).toEqual([]);
});

test('points are assessed while texts are still missing', () => {
  expect(assessable(form, 'a tool', 'gauge', '2026-03-16')).toMatchObject({
    calibratedOn: '2026-03-16',
    number: 'not entered',
    result: 'no limits stated',
  });
});
