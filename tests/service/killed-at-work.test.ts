import { expect, test } from 'vitest';
import { killAtWork } from '../faults/kills.ts';
import { temporaryFolder } from './folder.ts';

test('a process killed five times at its work loses nothing confirmed, and at most a second of typing', async () => {
  const report = await killAtWork(temporaryFolder(), 5, 41);
  expect(report.kills).toBe(5);
  expect(report.confirmed).toBeGreaterThan(5);
  expect(report.typed).toBeGreaterThan(5);
});
