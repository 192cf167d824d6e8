import { expect, test } from 'vitest';
import { fileFault, mediaTypeOf, sizeWords } from './file-kinds.ts';

test('the ending of a name decides its kind, in capitals too', () => {
  expect(mediaTypeOf('Certificate 118.PDF')).toBe('application/pdf');
  expect(mediaTypeOf('photo.jpeg')).toBe('image/jpeg');
  expect(mediaTypeOf('points.csv')).toBe('text/csv');
  expect(mediaTypeOf('drawing.dwg')).toBeNull();
  expect(mediaTypeOf('pdf.exe')).toBeNull();
});

test('a file that can not be added is named, with what is allowed', () => {
  expect(fileFault('a.pdf', 12_000_000)).toBeNull();
  expect(fileFault('a.pdf', 12_000_001)).toContain('at most 12.0 MB');
  expect(fileFault('a.exe', 10)).toContain('.pdf');
  expect(fileFault('a.pdf', 0)).toContain('empty');
});

test('sizes are said in the unit they are read in', () => {
  expect(sizeWords(999)).toBe('999 bytes');
  expect(sizeWords(482_300)).toBe('482 kB');
  expect(sizeWords(3_120_000)).toBe('3.1 MB');
});
