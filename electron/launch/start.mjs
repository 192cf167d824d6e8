// `npm start`. Runs on whatever Node the machine starts with: Node's own modules only.
import { spawn, spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { ensureInstalled, projectFolder } from './install.mjs';

/** @param {string} line */
const say = (line) => process.stdout.write(`${line}\n`);

try {
  const node = ensureInstalled(say);
  const built = spawnSync(node, [join(import.meta.dirname, 'build.mjs'), '--if-stale'], { stdio: 'inherit' });
  if (built.status !== 0) throw new Error('The build failed; its own message stands above.');

  const open = join(projectFolder, 'dist', 'electron', 'open.js');
  const child = spawn(node, [open, ...process.argv.slice(2)], { stdio: 'inherit' });
  for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) {
    // The register is closed by the child; this process only waits for it.
    process.on(signal, () => child.kill(signal));
  }
  child.on('exit', (code, signal) => {
    process.exitCode = code ?? (signal === null ? 1 : 0);
  });
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
}
