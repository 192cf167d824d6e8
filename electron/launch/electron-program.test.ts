import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { electronProgram } from './electron-program.ts';

let project: string;
let electron: string;

beforeEach(() => {
  project = mkdtempSync(join(tmpdir(), 'studbook-electron-'));
  electron = join(project, 'node_modules', 'electron');
  mkdirSync(electron, { recursive: true });
});

afterEach(() => rmSync(project, { recursive: true, force: true }));

const installs = (script: string) => writeFileSync(join(electron, 'install.js'), script);

describe('the program of Electron', () => {
  it('is taken as it is when it is there, without running anything', async () => {
    mkdirSync(join(electron, 'dist'));
    writeFileSync(join(electron, 'dist', 'electron'), '');
    writeFileSync(join(electron, 'path.txt'), 'electron');
    installs("require('node:fs').rmSync(__dirname, { recursive: true });");
    expect(await electronProgram(project, 5000)).toEqual({ program: join(electron, 'dist', 'electron') });
  });

  it('is fetched by its package’s script', async () => {
    installs(`const fs = require('node:fs');
      fs.mkdirSync(__dirname + '/dist');
      fs.writeFileSync(__dirname + '/dist/electron', '');
      fs.writeFileSync(__dirname + '/path.txt', 'electron');`);
    expect(await electronProgram(project, 5000)).toEqual({ program: join(electron, 'dist', 'electron') });
  });

  it('is given up with the script’s own reason, after the limit, or when nothing came of it', async () => {
    installs("console.error('RequestError: no way out\\n  at line 1'); process.exit(1);");
    expect(await electronProgram(project, 5000)).toEqual({
      reason: 'its program could not be fetched (RequestError: no way out)',
    });
    installs('setInterval(() => {}, 1000);');
    const start = performance.now();
    expect(await electronProgram(project, 500)).toEqual({
      reason: 'its program could not be fetched within 0.5 s',
    });
    expect(performance.now() - start).toBeLessThan(4000);
    installs('');
    expect(await electronProgram(project, 5000)).toEqual({
      reason: 'its program is not there although it was fetched',
    });
  });

  it('is not there without its package', async () => {
    expect(await electronProgram(project, 5000)).toEqual({ reason: 'its package is not installed' });
  });
});
