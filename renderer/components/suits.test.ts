import { expect, test } from 'vitest';
import type { SuitRow } from '../../core/contract/setting.ts';
import { narrowed, suitWords } from './suits.ts';

const row = (number: string, changes: Partial<SuitRow> = {}): SuitRow => ({
  toolId: `id of ${number}`,
  number,
  class: 'cassette',
  serial: '',
  place: 'shelf 2',
  status: 'available',
  ratings: '',
  validUntil: null,
  needsCertificate: false,
  state: 'suits',
  reducerIds: [],
  reasons: [],
  ...changes,
});
const rows = [
  row('K-1', { state: 'does not suit', reasons: ['Opening too small: 36 mm.'] }),
  row('K-2', { state: 'not known', reasons: ['torque not known'] }),
  row('K-3', { serial: 'S77' }),
  row('P-1', { class: 'pump' }),
];
const numbers = (typed: string) => narrowed(rows, 'cassette', typed).map(({ number }) => number);

test('parts that suit stand first, those that do not stand last, and none is left out', () => {
  expect(numbers('')).toEqual(['K-3', 'K-2', 'K-1']);
  expect(numbers('shelf s7')).toEqual(['K-3']);
  expect(numbers('k- SHELF')).toEqual(['K-3', 'K-2', 'K-1']);
});

test('each says how it stands, and why', () => {
  expect(rows.slice(0, 3).map((each) => suitWords(each, rows))).toEqual([
    'does not suit: Opening too small: 36 mm.',
    'not known: torque not known',
    'suits',
  ]);
  const two = row('K-4', { state: 'does not suit', reasons: ['Barred: K-4.', 'Other.', 'Third.'] });
  expect(suitWords(two, rows)).toBe('does not suit: Barred: K-4. And 2 more.');
  const reducer = row('R-1', { class: 'reducer' });
  expect(suitWords(row('K-5', { reducerIds: ['id of R-1'] }), [...rows, reducer])).toBe(
    'suits, with reducer R-1',
  );
});
