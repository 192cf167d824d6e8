import { readdir } from 'node:fs/promises';
import { join } from 'node:path';

const NOT_OURS = new Set(['node_modules', 'dist', '.git', '.tmp', 'test-results', 'coverage']);

/** Every file of the project, as paths with forward slashes relative to `root`. */
export async function projectFiles(root: string, ending?: RegExp): Promise<string[]> {
  const found: string[] = [];
  async function walk(folder: string): Promise<void> {
    for (const entry of await readdir(join(root, folder), { withFileTypes: true })) {
      const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
      if (NOT_OURS.has(entry.name) || entry.name.endsWith('.log')) continue;
      if (entry.isDirectory()) await walk(path);
      else if (entry.isFile() && (ending === undefined || ending.test(path))) found.push(path);
    }
  }
  await walk('');
  return found.sort();
}
