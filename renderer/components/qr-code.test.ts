import { expect, test } from 'vitest';
import { rowPath } from './qr-code.tsx';

test('dark modules side by side become one run', () => {
  expect(rowPath([true, true, false, true], 2)).toBe('M0 2h2v1h-2zM3 2h1v1h-1z');
  expect(rowPath([false, false], 0)).toBe('');
});
