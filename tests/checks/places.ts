import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Check } from './check.ts';
import { projectFiles } from './files.ts';

interface Place {
  readonly pattern: RegExp;
  readonly reason: string;
}

/** Built from parts, so that this file does not hold what it looks for. */
const PLACES: readonly Place[] = [
  {
    pattern: new RegExp(
      `(?<![\\w.])/(${['root', 'work', 'tmp', 'home/[a-z]{2,}', 'Users/[A-Za-z]+'].join('|')})/`,
    ),
    reason: 'a folder of one machine',
  },
  { pattern: /[A-Za-z]:\\+Users\\+/, reason: 'a folder of one machine' },
  {
    pattern: new RegExp(
      `\\b(${['registry', 'npm', 'mirrors?', 'deb', 'archive'].join('|')})\\.[a-z0-9-]+(\\.[a-z]+)*\\.?(org|com|net|io|cn)\\b`,
    ),
    reason: 'the address of a package source; the machine decides where packages come from',
  },
  { pattern: /"resolved": *"https?/, reason: 'the address of a package source in the lock file' },
];

const TEXT =
  /\.(tsx?|mjs|cjs|js|json|css|html|md|csv|sql|svg|yml|yaml|txt)$|(^|\/)(\.npmrc|\.gitignore|run)$/;

/** Paths of one machine and addresses of package sources, which would break every other machine. */
export const checkPlaces: Check = async (root) => {
  const files = await projectFiles(root, TEXT);
  const faults: string[] = [];
  for (const file of files) {
    const lines = (await readFile(join(root, file), 'utf8')).split('\n');
    for (const [index, line] of lines.entries()) {
      for (const { pattern, reason } of PLACES) {
        const found = pattern.exec(line);
        if (found !== null) faults.push(`${file}:${index + 1} ${found[0]} is ${reason}.`);
      }
    }
  }
  return { looked: files.length, faults };
};
