import { join } from 'node:path';
import { checkAssertions } from './assertions.ts';
import { checkBundle } from './bundle.ts';
import { type Check, passed } from './check.ts';
import { checkDocstrings } from './docstrings.ts';
import { checkLayers } from './layers.ts';
import { checkPlaces } from './places.ts';
import { checkStyle } from './style.ts';
import { checkTypes } from './types.ts';
import { checkUnused } from './unused.ts';

const CHECKS: Readonly<Record<string, Check>> = {
  'format and lint': checkStyle,
  types: checkTypes,
  layers: checkLayers,
  'bundle of core': checkBundle,
  'unused code': checkUnused,
  'tests left out or empty': checkAssertions,
  'comments of core': checkDocstrings,
  'fixed places': checkPlaces,
};

const root = join(import.meta.dirname, '..', '..');
let failed = 0;
for (const [name, check] of Object.entries(CHECKS)) {
  const start = performance.now();
  const result = await check(root);
  const seconds = ((performance.now() - start) / 1000).toFixed(1);
  const verdict = passed(result) ? 'clean' : `FAILED, ${result.faults.length} faults`;
  process.stdout.write(`${name}: ${verdict} (${result.looked} looked at, ${seconds} s)\n`);
  for (const fault of result.faults) process.stdout.write(`  ${fault}\n`);
  if (result.looked === 0) process.stdout.write('  Nothing was looked at, so nothing is proved.\n');
  if (!passed(result)) failed += 1;
}
process.exitCode = failed === 0 ? 0 : 1;
