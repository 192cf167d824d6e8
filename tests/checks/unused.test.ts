import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { passed } from './check.ts';
import { plant } from './plant.ts';
import { checkUnused } from './unused.ts';

const PROJECT: Readonly<Record<string, string>> = {
  'package.json': JSON.stringify({ name: 'planted', type: 'module', dependencies: { zod: '4.6.7' } }),
  'knip.json': JSON.stringify({ entry: ['start.ts'], project: ['*.ts'] }),
  'start.ts': "import * as z from 'zod';\nimport { used } from './part.ts';\n\nz.number().parse(used);\n",
  'part.ts': 'export const used = 1;\n',
};

function plantProject(files: Readonly<Record<string, string>>): string {
  const root = plant({ ...PROJECT, ...files });
  const reporter = 'tests/checks/unused-reporter.mjs';
  cpSync(join(import.meta.dirname, 'unused-reporter.mjs'), join(root, reporter));
  return root;
}

describe('unused code', () => {
  it('passes where everything is used', async () => {
    const result = await checkUnused(plantProject({}));
    expect(result.faults).toEqual([]);
    expect(result.looked).toBe(2);
  });

  it.each([
    ['a file', { 'lonely.ts': 'export const nobody = 1;\n' }, 'lonely.ts unused or unlisted (files)'],
    [
      'an export',
      { 'part.ts': 'export const used = 1;\nexport const spare = 2;\n' },
      'part.ts:2 unused or unlisted (exports): spare',
    ],
    [
      'a package',
      {
        'package.json': JSON.stringify({
          name: 'planted',
          type: 'module',
          dependencies: { zod: '4.6.7', react: '19.3.1' },
        }),
      },
      '(dependencies): react',
    ],
    [
      'a package that is used and not listed',
      { 'package.json': JSON.stringify({ name: 'planted', type: 'module' }) },
      '(unlisted): zod',
    ],
  ])('finds %s', async (_name, files, fault) => {
    const result = await checkUnused(plantProject(files as Record<string, string>));
    expect(result.faults.join('\n')).toContain(fault);
    expect(passed(result)).toBe(false);
  });

  it('fails when nothing was looked at', async () => {
    const nothing = { 'knip.json': JSON.stringify({ entry: ['nothing.ts'], project: ['nothing/*.ts'] }) };
    const result = await checkUnused(plantProject(nothing));
    expect(result.looked).toBe(0);
    expect(passed(result)).toBe(false);
  });
});
