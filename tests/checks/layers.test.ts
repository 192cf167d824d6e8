import { describe, expect, it } from 'vitest';
import { passed } from './check.ts';
import { checkLayers } from './layers.ts';
import { CLEAN, plant } from './plant.ts';

describe('layers', () => {
  it('passes where every layer keeps to what it may import', async () => {
    const result = await checkLayers(plant(CLEAN));
    expect(result.faults).toEqual([]);
    expect(result.looked).toBe(6);
  });

  it.each([
    ['renderer/view.ts', "import '../electron/main.ts';", 'renderer may import'],
    [
      'renderer/view.ts',
      "export type { answer } from '../electron/service/answer.ts';",
      'renderer may import',
    ],
    ['renderer/view.ts', "import 'kysely';", 'renderer may import'],
    ['renderer/view.ts', "import 'node:fs';", 'renderer may import'],
    ['core/area.ts', "import 'node:crypto';", 'core may import'],
    ['core/area.ts', "import 'react';", 'core may import'],
    ['core/area.ts', "import '../electron/service/answer.ts';", 'core may import'],
    ['core/area.ts', "export const later = () => import('kysely');", 'core may import'],
    ['migrations/step.ts', "import '../core/area.ts';", 'migrations may import'],
    ['seed/plant.ts', "import '../electron/service/answer.ts';", 'seed may import'],
    ['seed/plant.ts', "import 'node:fs';", 'seed may import'],
    ['electron/main.ts', "import './service/answer.ts';", 'electron/main.ts may import'],
    ['electron/main.ts', "import 'better-sqlite3';", 'electron/main.ts may import'],
    ['electron/preload.ts', "import 'zod';", 'electron/preload.ts may import'],
    ['electron/preload.ts', "import 'node:fs';", 'electron/preload.ts may import'],
    ['electron/service/answer.ts', "import 'electron';", 'electron/service may import'],
    ['electron/service/answer.ts', "import '../../renderer/view.ts';", 'electron/service may import'],
    ['electron/launch/open.ts', "import 'electron';", 'electron/launch may import'],
    ['electron/transport/loopback.ts', "import '../../core/area.ts';", 'electron/transport may import'],
  ])('finds in %s: %s', async (file, line, reason) => {
    const result = await checkLayers(plant({ ...CLEAN, [file]: `${line}\n${CLEAN[file] ?? ''}` }));
    expect(result.faults.join('\n')).toContain(`${file} → `);
    expect(result.faults.join('\n')).toContain(reason);
    expect(passed(result)).toBe(false);
  });

  it('finds a circle', async () => {
    const circle = { 'core/a.ts': "import './b.ts';\n", 'core/b.ts': "import './a.ts';\n" };
    expect((await checkLayers(plant({ ...CLEAN, ...circle }))).faults.join('\n')).toContain('in a circle');
  });

  it('finds an import that leads nowhere', async () => {
    const lost = { 'core/lost.ts': "import './gone.ts';\n" };
    expect((await checkLayers(plant({ ...CLEAN, ...lost }))).faults.join('\n')).toContain('leads nowhere');
  });

  it('fails when it saw no module of a layer', async () => {
    const { 'migrations/step.ts': _, ...rest } = CLEAN;
    const result = await checkLayers(plant({ ...rest, 'migrations/notes.txt': 'nothing to compile' }));
    expect(result.faults).toEqual([
      'migrations/: no module was seen, so nothing is known about its imports.',
    ]);
  });

  it('fails when there was nothing to look at', async () => {
    const result = await checkLayers(plant({}));
    expect(result.looked).toBe(0);
    expect(passed(result)).toBe(false);
  });
});
