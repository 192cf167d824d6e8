import { expect, test } from 'vitest';
import { csv } from './csv.ts';

test('commas, quotes and line ends stay inside their cell', () => {
  expect(csv(['Tag', 'Place'], [['J-1', 'north, "upper"\nplatform']])).toBe(
    'Tag,Place\r\nJ-1,"north, ""upper""\nplatform"\r\n',
  );
});

test('what is not known is a word, not an empty cell', () => {
  expect(csv(['Grade'], [[null]])).toBe('Grade\r\nnot known\r\n');
});

test('nothing that a person typed runs as a formula', () => {
  expect(csv(['Tag'], [['=1+1'], ['@x'], [-3]])).toBe("Tag\r\n'=1+1\r\n'@x\r\n-3\r\n");
});
