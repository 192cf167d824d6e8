import { expect, test } from 'vitest';
import type { KitData } from '../../../core/contract/custody.ts';
import { emptyKit, kitForm, kitInput, overlapping } from './kit-form-values.ts';

const data: KitData = {
  name: 'Exchanger 310',
  reference: 'WO 4711',
  jointIds: ['j'],
  from: '2026-03-16',
  to: '2026-03-18',
  toolIds: ['w', 'g'],
  remarks: '',
  closed: false,
};

test('a kit opened for editing and saved unchanged is the same kit', () => {
  const form = kitForm({
    data,
    tools: [
      { id: 'w', number: 'W-03' },
      { id: 'g', number: 'G-17' },
    ],
    joints: [{ id: 'j', tag: 'HX-310 N3' }],
  });
  expect(kitInput(form)).toEqual(data);
});

test('a new kit is for today until its days are typed', () => {
  expect(kitInput(emptyKit('2026-03-16'))).toMatchObject({
    from: '2026-03-16',
    to: '2026-03-16',
    toolIds: [],
  });
});

test('kits overlap that share a tool on at least one day', () => {
  const kit = { id: 'one', data };
  const shared = (from: string, to: string) => overlapping([kit], 'other', 'w', from, to);
  expect(shared('2026-03-18', '2026-03-20')).toEqual([kit]);
  expect(shared('2026-03-10', '2026-03-16')).toEqual([kit]);
  expect(shared('2026-03-19', '2026-03-20')).toEqual([]);
  expect(overlapping([kit], 'one', 'w', '2026-03-16', '2026-03-16')).toEqual([]);
  expect(overlapping([kit], 'other', 'h', '2026-03-16', '2026-03-16')).toEqual([]);
  expect(
    overlapping([{ id: 'one', data: { ...data, closed: true } }], null, 'w', data.from, data.to),
  ).toEqual([]);
});
