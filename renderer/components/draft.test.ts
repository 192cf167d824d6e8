import { expect, test } from 'vitest';
import { completed } from './draft.ts';

const start = { tag: '', gasket: { type: '', factorM: { text: '', unit: 'one' } }, sets: [] as string[] };

test('a draft keeps what was typed and gains the fields that it does not know', () => {
  const draft = { tag: 'J-1', gasket: { type: 'flat' }, sets: ['inner'] };
  expect(completed(draft, start)).toEqual({
    tag: 'J-1',
    gasket: { type: 'flat', factorM: { text: '', unit: 'one' } },
    sets: ['inner'],
  });
});

test('without a draft the form starts as it stands', () => {
  expect(completed(null, start)).toBe(start);
});
