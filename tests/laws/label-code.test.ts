import fc from 'fast-check';
import { expect, test } from 'vitest';
import { labelCode, numberOnLabel } from '../../core/tools/label-code.ts';

test('a label read back names the tool it was printed for', () => {
  fc.assert(
    fc.property(
      fc.string({ minLength: 1, maxLength: 40 }).filter((text) => text.trim() !== ''),
      (number) => {
        expect(numberOnLabel(`${labelCode(number)}\r\n`)).toBe(number.trim());
      },
    ),
  );
});

test('a number typed by hand is taken as it is', () => {
  expect(numberOnLabel('W-03')).toBe('W-03');
  expect(numberOnLabel('  W-03 ')).toBe('W-03');
});

test('another prefix is no tool of this register and stays in the text', () => {
  expect(numberOnLabel('SB:J:HX-310')).toBe('SB:J:HX-310');
});
