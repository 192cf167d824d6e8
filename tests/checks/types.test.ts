import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { passed } from './check.ts';
import { CLEAN, plant } from './plant.ts';
import { checkTypes } from './types.ts';

describe('types', () => {
  it('passes sound files, and finds a fault in every part of the project', async () => {
    const root = plant(CLEAN);
    const clean = await checkTypes(root);
    expect(clean.faults).toEqual([]);
    expect(clean.looked).toBe(Object.keys(CLEAN).length);

    const fault = "export const count: number = 'seven';\n";
    const parts = ['core', 'electron', 'renderer', 'migrations', 'seed', 'tests'];
    const planted = plant({
      ...CLEAN,
      ...Object.fromEntries(parts.map((part) => [`${part}/fault.ts`, fault])),
    });
    const result = await checkTypes(planted);
    for (const part of parts)
      expect(result.faults.join('\n')).toContain(`${part}/fault.ts(1,14): error TS2322`);
  });

  it('compiles core without a browser or Node, and the plain programs too', async () => {
    const result = await checkTypes(
      plant({
        ...CLEAN,
        'core/page.ts': 'export const title = document.title;\n',
        'core/machine.ts': 'export const folder = process.cwd();\n',
        'electron/launch/run.mjs': "export const half = 'a' / 2;\n",
      }),
    );
    const faults = result.faults.join('\n');
    expect(faults).toContain('core/page.ts(1,22): error TS2584');
    expect(faults).toContain('core/machine.ts(1,23): error TS2591');
    expect(faults).toContain('electron/launch/run.mjs(1,21): error TS2362');
  });

  it('fails when a part has no settings, and when there was nothing to compile', async () => {
    const root = plant(CLEAN);
    rmSync(join(root, 'renderer', 'tsconfig.json'));
    expect((await checkTypes(root)).faults).toEqual([
      'renderer/tsconfig.json is missing, so its part of the project is not compiled.',
    ]);
    expect(passed(await checkTypes(plant({})))).toBe(false);
  });
});
