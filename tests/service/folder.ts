import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach } from 'vitest';

const made: string[] = [];

/** A real folder for one test, removed afterwards. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'studbook-'));
  made.push(folder);
  return folder;
}

afterEach(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
});
