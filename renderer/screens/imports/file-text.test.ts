import { expect, test } from 'vitest';
import { csv } from './file-text.ts';

test('cells with commas, quotes and line ends are quoted', () => {
  expect(
    csv([
      ['line', 'allowed'],
      ['2', 'one of: a, "b"'],
    ]),
  ).toBe('line,allowed\r\n2,"one of: a, ""b"""\r\n');
});

test('a cell a spreadsheet would run is kept as text, a negative number is not touched', () => {
  expect(csv([['=1+1', '@x', '-cmd', '-5.7']])).toBe("'=1+1,'@x,'-cmd,-5.7\r\n");
});
