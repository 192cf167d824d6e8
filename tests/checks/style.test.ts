import { describe, expect, it } from 'vitest';
import { passed } from './check.ts';
import { CLEAN, plant } from './plant.ts';
import { checkStyle } from './style.ts';

describe('format and lint', () => {
  it('passes clean text', async () => {
    const result = await checkStyle(plant(CLEAN));
    expect(result.faults).toEqual([]);
    expect(result.looked).toBeGreaterThanOrEqual(Object.keys(CLEAN).length);
  });

  it.each([
    ['wrong format', 'export const a = "double";\n', 'format'],
    ['any', 'export const a = (b: any): string => String(b);\n', 'noExplicitAny'],
    ['a non-null claim', 'export const a = (b: string | null): string => b!;\n', 'noNonNullAssertion'],
    ['a forgotten print', "console.log('here');\n", 'noConsole'],
    ['a Node module without its prefix', "import 'fs';\n", 'useNodejsImportProtocol'],
    ['a name that nothing uses', 'const a = 1;\n', 'noUnusedVariables'],
  ])('finds %s', async (_name, text, rule) => {
    const result = await checkStyle(plant({ ...CLEAN, 'core/fault.ts': text }));
    expect(result.faults.join('\n')).toContain(rule);
    expect(passed(result)).toBe(false);
  });

  it('fails when the settings leave the files out, so that nothing is looked at', async () => {
    const none = { 'biome.json': '{ "files": { "includes": ["nothing/**"] } }\n' };
    expect((await checkStyle(plant({ ...CLEAN, ...none }))).faults).toEqual([
      expect.stringMatching(/^Only \d of \d+ source files were looked at/),
    ]);
  });
});
