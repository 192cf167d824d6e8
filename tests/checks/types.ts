import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Check } from './check.ts';
import { runPackage } from './program.ts';

const PROJECTS = ['tsconfig.json', 'electron/tsconfig.json', 'renderer/tsconfig.json', 'tests/tsconfig.json'];

/** The compiler over every part of the project, each with the library its place of running has. */
export const checkTypes: Check = async (root) => {
  const parts = await Promise.all(PROJECTS.map((project) => compile(root, project)));
  return {
    looked: new Set(parts.flatMap(({ files }) => files)).size,
    // Parts share core; its faults would stand there once for each.
    faults: [...new Set(parts.flatMap(({ faults }) => faults))],
  };
};

async function compile(root: string, project: string): Promise<{ files: string[]; faults: string[] }> {
  if (!existsSync(join(root, project))) {
    return { files: [], faults: [`${project} is missing, so its part of the project is not compiled.`] };
  }
  const output = await runPackage(root, 'typescript/bin/tsc', [
    '--project',
    project,
    '--listFiles',
    '--pretty',
    'false',
  ]);
  const lines = output.stdout.split('\n');
  const faults = lines.filter((line) => /^\S.*\(\d+,\d+\): error |^error TS/.test(line));
  const files = lines.filter((line) => /^[^(]*\.(tsx?|mjs)$/.test(line) && !line.includes('node_modules'));
  if (output.status !== 0 && faults.length === 0) {
    faults.push(`${project}: the compiler ended with ${output.status}. ${output.stderr}`);
  }
  return { files, faults };
}
