import { describe, expect, it } from 'vitest';
import { checkBundle } from './bundle.ts';
import { passed } from './check.ts';
import { CLEAN, plant } from './plant.ts';

describe('bundle of core', () => {
  it('passes where core needs nothing that a browser lacks', async () => {
    const root = plant({ ...CLEAN, 'core/shape.ts': "export { z } from 'zod';\n" });
    const result = await checkBundle(root);
    expect(result.faults).toEqual([]);
    expect(result.looked).toBeGreaterThan(2);
  });

  it.each([
    [
      "import { readFileSync } from 'node:fs';\nexport const read = readFileSync;\n",
      'a module of Node',
      'fs',
    ],
    ["import { join } from 'path';\nexport const path = join;\n", 'a module of Node', 'path'],
    ["export const later = () => import('node:crypto');\n", 'a module of Node', 'crypto'],
    ["import 'node:fs';\n", 'a module of Node', 'fs'],
    ["import { useState } from 'react';\nexport const state = useState;\n", 'React', 'node_modules/react/'],
  ])('finds %j', async (text, kind, module) => {
    const result = await checkBundle(plant({ ...CLEAN, 'core/shape.ts': text }));
    expect(result.faults.join('\n')).toContain(`core/shape.ts brings ${kind} into core`);
    expect(result.faults.join('\n')).toContain(module);
    expect(passed(result)).toBe(false);
  });

  it.each([
    ["export { default } from 'better-sqlite3';\n", 'a module of Node'],
    ["export { useForm } from 'react-hook-form';\n", 'React'],
  ])('follows a package: %j', async (text, kind) => {
    const result = await checkBundle(plant({ ...CLEAN, 'core/shape.ts': text }));
    expect(result.faults.join('\n')).toContain(`brings ${kind} into core`);
    expect(result.faults.every((fault) => fault.includes('node_modules'))).toBe(true);
  });

  it('fails where there is nothing to bundle', async () => {
    const result = await checkBundle(plant({ 'seed/plant.ts': 'export const plant = 1;\n' }));
    expect(result.looked).toBe(0);
    expect(passed(result)).toBe(false);
  });
});
