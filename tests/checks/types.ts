import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Check } from './check.ts';
import { runPackage } from './program.ts';

const PROJECTS = ['tsconfig.json', 'electron/tsconfig.json', 'renderer/tsconfig.json', 'tests/tsconfig.json'];

/** The compiler over every part of the project, each with the library its place of running has. */
export const checkTypes: Check = async (root) => {
  const own = new Set<string>();
  const faults: string[] = [];
  for (const project of PROJECTS) {
    if (!existsSync(join(root, project))) {
      faults.push(`${project} is missing, so its part of the project is not compiled.`);
      continue;
    }
    const output = await runPackage(root, 'typescript/bin/tsc', [
      '--project',
      project,
      '--listFiles',
      '--pretty',
      'false',
    ]);
    for (const line of output.stdout.split('\n').filter((text) => text.trim() !== '')) {
      if (/^\S.*\(\d+,\d+\): error |^error TS/.test(line)) faults.push(line);
      else if (/\.(tsx?|mjs)$/.test(line) && !line.includes('node_modules')) own.add(line);
    }
    if (output.status !== 0 && faults.length === 0) {
      faults.push(`${project}: the compiler ended with ${output.status}. ${output.stderr}`);
    }
  }
  return { looked: own.size, faults: [...new Set(faults)] };
};
