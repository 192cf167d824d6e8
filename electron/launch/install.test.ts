import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';

let project: string;
let npm: string;

beforeEach(() => {
  project = mkdtempSync(join(tmpdir(), 'studbook-install-'));
  const launch = join(project, 'electron', 'launch');
  mkdirSync(launch, { recursive: true });
  cpSync(join(import.meta.dirname, 'install.mjs'), join(launch, 'install.mjs'));
  writeFileSync(join(project, 'package-lock.json'), '{}');
  npm = join(project, 'npm.js');
  pretendNpm('');
});

afterEach(() => rmSync(project, { recursive: true, force: true }));

/** Writes down what it was asked and makes node_modules, as npm does. */
function pretendNpm(then: string): void {
  writeFileSync(
    npm,
    `const fs = require('node:fs');
     fs.mkdirSync('node_modules', { recursive: true });
     fs.appendFileSync('asked', process.argv.slice(2).join(' ') + '\\n');
     ${then}`,
  );
}

const PINNED = `if (process.argv[2] === 'rebuild') {
  fs.mkdirSync('node_modules/node/bin', { recursive: true });
  fs.writeFileSync('node_modules/node/bin/' + (process.platform === 'win32' ? 'node.exe' : 'node'), '');
}`;

function install(version = process.versions.node): { status: number | null; stdout: string; stderr: string } {
  const script = `
    Object.defineProperty(process.versions, 'node', { value: '${version}' });
    const { ensureInstalled } = await import('./electron/launch/install.mjs');
    console.log('runs on ' + ensureInstalled(console.log));`;
  return spawnSync(process.execPath, ['--input-type=module', '--eval', script], {
    cwd: project,
    env: { ...process.env, npm_execpath: npm, npm_node_execpath: process.execPath },
    encoding: 'utf8',
  });
}

const asked = () => readFileSync(join(project, 'asked'), 'utf8').trim().split('\n');

describe('installing', () => {
  it('runs no package’s script but the one that puts the pinned Node in place', () => {
    pretendNpm(PINNED);
    expect(install().stdout).toContain(`runs on ${join(project, 'node_modules', 'node', 'bin', 'node')}`);
    expect(asked()).toEqual([
      'ci --ignore-scripts --loglevel=error',
      'rebuild node --ignore-scripts=false --loglevel=error',
    ]);
  });

  it('is done once, and again when the lock file has changed', () => {
    install();
    install();
    expect(asked()).toHaveLength(2);
    writeFileSync(join(project, 'package-lock.json'), '{ "changed": true }');
    install();
    expect(asked()).toHaveLength(4);
  });

  it('is tried again when it failed, and says what failed', () => {
    pretendNpm('process.exit(1);');
    const { status, stderr } = install();
    expect(status).not.toBe(0);
    expect(stderr).toContain('npm ci --ignore-scripts --loglevel=error failed');
    pretendNpm('');
    expect(install().status).toBe(0);
  });

  it('goes on with the machine’s own Node where the pinned one has no build, if it is new enough', () => {
    pretendNpm("if (process.argv[2] === 'rebuild') process.exit(1);");
    const { stdout } = install('22.14.0');
    expect(stdout).toContain('has no build for this machine');
    expect(stdout).toContain(`runs on ${process.execPath}`);
  });

  it.each(['20.20.2', '22.13.1'])('says which Node to install when there is only %s', (version) => {
    const { status, stderr } = install(version);
    expect(status).not.toBe(0);
    expect(stderr).toContain(`This is Node ${version}`);
    expect(stderr).toContain('Install Node 22.14 or newer');
  });

  it('needs nothing that is not in Node itself', () => {
    const source = readFileSync(join(import.meta.dirname, 'install.mjs'), 'utf8');
    const imports = [...source.matchAll(/from '([^']+)'/g)].map(([, name]) => name);
    expect(imports.length).toBeGreaterThan(0);
    expect(imports.filter((name) => !name?.startsWith('node:'))).toEqual([]);
    expect(execFileSync(process.execPath, ['--check', join(import.meta.dirname, 'install.mjs')]).length).toBe(
      0,
    );
  });
});
