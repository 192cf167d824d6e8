import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';

const made: string[] = [];

/** A real folder for a test, removed when its file is done. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'studbook-'));
  made.push(folder);
  return folder;
}

afterAll(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
});
