import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { onTestFinished } from 'vitest';

const project = join(import.meta.dirname, '..', '..');

const SETTINGS = [
  '.dependency-cruiser.mjs',
  '.gitignore',
  'biome.json',
  'tsconfig.json',
  'electron/tsconfig.json',
  'renderer/tsconfig.json',
  'tests/tsconfig.json',
];

/** A small project under the real settings, in which nothing is wrong: one module in every layer. */
export const CLEAN: Readonly<Record<string, string>> = {
  'core/area.ts': 'export const area = (side: number): number => side * side;\n',
  'electron/main.ts': "import { app } from 'electron';\n\napp.quit();\n",
  'electron/service/answer.ts':
    "import { readFileSync } from 'node:fs';\nimport { area } from '../../core/area.ts';\n\nexport const answer = () => area(readFileSync('a').length);\n",
  'renderer/view.ts': "import { area } from '../core/area.ts';\n\nexport const view = String(area(2));\n",
  'migrations/step.ts': "export const step = 'create table';\n",
  'seed/plant.ts': "import { area } from '../core/area.ts';\n\nexport const plant = [area(3)];\n",
  'tests/area.test.ts':
    "import { expect, it } from 'vitest';\nimport { area } from '../core/area.ts';\n\nit('squares', () => {\n  expect(area(2)).toBe(4);\n});\n",
};

/** A copy of the settings with these files, cleared away after the test. */
export function plant(files: Readonly<Record<string, string>>): string {
  const root = mkdtempSync(join(tmpdir(), 'studbook-check-'));
  onTestFinished(() => rmSync(root, { recursive: true, force: true }));
  for (const setting of SETTINGS) cpSync(join(project, setting), join(root, setting));
  symlinkSync(join(project, 'node_modules'), join(root, 'node_modules'), 'dir');
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), text);
  }
  return root;
}
