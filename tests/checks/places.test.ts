import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { passed } from './check.ts';
import { checkPlaces } from './places.ts';
import { CLEAN, plant } from './plant.ts';

// Put together here, so that this file itself holds no such place.
const path = (...parts: string[]) => ['', ...parts].join('/');
const address = (...parts: string[]) => `https://${parts.join('.')}/`;

describe('fixed places', () => {
  it('passes relative paths, system programs and addresses of sources', async () => {
    const fine = {
      'core/notes.ts':
        "export const a = ['/usr/bin/chromium', '../operations/a', 'https://www.nist.gov/pml', '/request/'];\n",
    };
    const result = await checkPlaces(plant({ ...CLEAN, ...fine }));
    expect(result.faults).toEqual([]);
    expect(result.looked).toBeGreaterThan(Object.keys(CLEAN).length);
  });

  it.each([
    ['core/a.ts', path('work', 'main', 'x')],
    ['docs/a.md', `see ${path('root', 'notes')}`],
    ['tests/a.ts', `'${path('tmp', 'out')}'`],
    ['seed/a.ts', path('home', 'anna', 'x')],
    ['renderer/a.css', `url(${path('Users', 'Anna', 'x.png')})`],
    ['README.md', ['C:', 'Users', 'anna'].join('\\')],
    ['.npmrc', `registry=${address('registry', 'npmjs', 'org')}`],
    ['package-lock.json', `"resolved": "${address('packages', 'example', 'com')}a.tgz"`],
    ['electron/a.mjs', address('mirror', 'example', 'org')],
    ['.ci/run', `cd ${path('work', 'main', '')}`],
  ])('finds in %s: %s', async (file, text) => {
    const result = await checkPlaces(plant({ ...CLEAN, [file]: `first line\n${text}\n` }));
    expect(result.faults).toEqual([expect.stringMatching(new RegExp(`^${file.replaceAll('.', '\\.')}:2 `))]);
    expect(passed(result)).toBe(false);
  });

  it('fails when there was no file', async () => {
    const empty = mkdtempSync(join(tmpdir(), 'studbook-empty-'));
    onTestFinished(() => rmSync(empty, { recursive: true }));
    expect(passed(await checkPlaces(empty))).toBe(false);
  });
});
