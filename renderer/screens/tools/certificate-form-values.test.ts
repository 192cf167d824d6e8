import { expect, test } from 'vitest';
import { certificateInput, EMPTY_CERTIFICATE, pastedRows } from './certificate-form-values.ts';

test('rows of a sheet are pasted as points, with their direction', () => {
  expect(pastedRows('70\t100\n140\t203\tdown\r\n')).toEqual([
    { first: '70', second: '100', direction: 'up' },
    { first: '140', second: '203', direction: 'down' },
  ]);
  expect(pastedRows('70;100,5\n140;203')?.[0]?.second).toBe('100,5');
});

test('a single value is pasted as text, not as a table', () => {
  expect(pastedRows('70')).toBeNull();
});

test('empty rows are left out and a half-filled one is sent, to be named as a fault', () => {
  const form = {
    ...EMPTY_CERTIFICATE,
    pressureUnit: 'bar',
    torqueUnit: 'N.m',
    rows: [
      { first: '70', second: '100', direction: 'up' as const },
      { first: '', second: ' ', direction: 'up' as const },
      { first: '140', second: '', direction: 'up' as const },
    ],
  };
  const { measured } = certificateInput(form, 'a tool', 'pressure-torque');
  expect(measured.points).toHaveLength(2);
  expect(measured.points[1]).toMatchObject({ pressure: { text: '140' }, torque: { text: '' } });
});
