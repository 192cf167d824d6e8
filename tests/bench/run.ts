import { mkdirSync, writeFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { join } from 'node:path';
import { coreBenches } from './core.ts';
import { drawBench } from './draw.ts';
import { forecastBenches } from './forecasts.ts';
import { historyBenches } from './history.ts';
import type { Measured } from './measure.ts';
import { planningBench } from './planning.ts';
import { importBench, serviceBenches } from './program.ts';
import { traceBenches } from './trace.ts';

const root = join(import.meta.dirname, '..', '..');

interface Conditions {
  readonly date: string;
  readonly processor: string;
  readonly cores: number;
  readonly node: string;
  readonly platform: string;
  /** Processes that wanted to run in the minute before, this one included later on: well below `cores` is quiet. */
  readonly load: number;
}

function conditions(): Conditions {
  const processors = cpus();
  return {
    date: new Date().toISOString().slice(0, 10),
    processor: processors[0]?.model.trim() ?? 'not known',
    cores: processors.length,
    node: process.version,
    platform: `${process.platform} ${process.arch}`,
    load: Number((loadavg()[0] ?? 0).toFixed(1)),
  };
}

function page(at: Conditions, benches: readonly Measured[]): string {
  const rows = benches.map(({ name, what, unit, median, best, goal, reached }) => {
    const verdict = goal === null ? '' : `${goal}: ${reached ? 'reached' : 'not reached'}`;
    return `| ${name} | ${what} | ${show(best)} ${unit} | ${show(median)} ${unit} | ${verdict} |`;
  });
  return [
    '# Benches',
    '',
    'Written by `npm run bench -- --write`. Figures of one machine on one day, in processor time of one process unless it says otherwise: what other programs took in the meantime is not in them, but a busy neighbour core slows them all the same. The best round is held against the goal.',
    '',
    `${at.date}, ${at.processor}, ${at.cores} cores, ${at.platform}, Node ${at.node}; load average before the start ${at.load}.`,
    '',
    '| Bench | What | Best | Median | Goal |',
    '| --- | --- | --- | --- | --- |',
    ...rows,
    '',
    'A certificate is fitted to its line once and the tables are indexed once; joints, limits and findings are worked out for every setting.',
    '',
  ].join('\n');
}

function show(value: number): string {
  return value >= 1000 ? Math.round(value).toLocaleString('en') : value.toPrecision(3);
}

const at = conditions();
const benches = [
  ...(await coreBenches()),
  await importBench(),
  ...(await serviceBenches()),
  ...(await traceBenches()),
  ...(await historyBenches()),
  ...(await forecastBenches()),
  await drawBench(),
  await planningBench(),
];
process.stdout.write(`${JSON.stringify({ ...at, benches }, null, 2)}\n`);
if (process.argv.includes('--write')) {
  const folder = join(root, 'docs', 'generated');
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'benches.md'), page(at, benches));
}
process.exitCode = benches.every(({ reached }) => reached !== false) ? 0 : 1;
