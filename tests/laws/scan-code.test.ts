import fc from 'fast-check';
import { expect, test } from 'vitest';
import { scanCode, scannedName } from '../../core/text/scan-code.ts';

const MARKS = ['T', 'J'] as const;

test('a label read back names the thing it was printed for', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...MARKS),
      fc.string({ minLength: 1, maxLength: 40 }).filter((text) => text.trim() !== ''),
      (mark, name) => {
        expect(scannedName(mark, `${scanCode(mark, name)}\r\n`)).toBe(name.trim());
      },
    ),
  );
});

test('a name typed by hand is taken as it is', () => {
  expect(scannedName('T', 'W-03')).toBe('W-03');
  expect(scannedName('J', '  HX-310 N3 ')).toBe('HX-310 N3');
});

test('the mark of another kind is no name of this one and stays in the text', () => {
  expect(scannedName('T', 'SB:J:HX-310')).toBe('SB:J:HX-310');
  expect(scannedName('J', 'sb:t:W-03')).toBe('sb:t:W-03');
  expect(scannedName('J', 'SB:J:')).toBe('');
});
