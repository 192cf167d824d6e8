// `npm test`, and `npm run test:long` for the long fault tests. Runs on whatever Node the machine starts with: Node's own modules only, until the pinned Node is there.
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { ensureInstalled } from '../electron/launch/install.mjs';

const ROOT = join(import.meta.dirname, '..');
const STAGES = ['--experimental-strip-types', join(import.meta.dirname, 'stages.ts')];
const LONG = [
  join(ROOT, 'node_modules', 'vitest', 'vitest.mjs'),
  'run',
  '--config',
  join(ROOT, 'vitest.long.config.ts'),
];

try {
  const start = performance.now();
  const node = ensureInstalled((line) => process.stdout.write(`${line}\n`));
  process.stdout.write(`install: done in ${((performance.now() - start) / 1000).toFixed(1)} s\n`);
  const child = spawn(node, process.argv.includes('long') ? LONG : STAGES, { cwd: ROOT, stdio: 'inherit' });
  child.on('exit', (code) => {
    process.exitCode = code ?? 1;
  });
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
}
