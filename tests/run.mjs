// `npm test`. Runs on whatever Node the machine starts with: Node's own modules only, until the pinned Node is there.
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { ensureInstalled } from '../electron/launch/install.mjs';

try {
  const start = performance.now();
  const node = ensureInstalled((line) => process.stdout.write(`${line}\n`));
  process.stdout.write(`install: done in ${((performance.now() - start) / 1000).toFixed(1)} s\n`);
  const child = spawn(node, ['--experimental-strip-types', join(import.meta.dirname, 'stages.ts')], {
    stdio: 'inherit',
  });
  child.on('exit', (code) => {
    process.exitCode = code ?? 1;
  });
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
}
