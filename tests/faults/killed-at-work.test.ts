import { expect, test } from 'vitest';
import { temporaryFolder } from '../service/folder.ts';
import { killAtWork } from './kills.ts';

// Two registers side by side, so that both cores have work; together 200 kills.
test.concurrent.each([
  [20261126, 100],
  [7, 100],
])(
  'seed %i: after each of %i kills nothing confirmed is lost and nothing is half there',
  async (seed, kills) => {
    const report = await killAtWork(temporaryFolder(), kills, seed);
    process.stdout.write(`${JSON.stringify({ seed, ...report })}\n`);
    expect(report.kills).toBe(kills);
    // The kills met records that were confirmed, on their way unwritten, and on their way written already.
    expect(report.confirmed).toBeGreaterThan(kills);
    expect(report.onTheWay).toBeGreaterThan(kills / 10);
    expect(report.typed).toBeGreaterThan(kills * 5);
  },
);
