import { execFileSync } from 'node:child_process';
import { join } from 'node:path';

/** Tests of the shell and the launcher run what is built; this makes sure that it is built from these sources. */
export function ensureBuilt(): void {
  const program = join(import.meta.dirname, '..', 'electron', 'launch', 'build.mjs');
  execFileSync(process.execPath, [program, '--if-stale'], { stdio: 'inherit' });
}
