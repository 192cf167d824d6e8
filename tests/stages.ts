import { spawn } from 'node:child_process';
import { mkdirSync, rmSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { electronProgram } from '../electron/launch/electron-program.ts';
import { ensureChromium } from './chromium.ts';
import { type Count, countPlaywright, countVitest, sum } from './counts.ts';

const root = join(import.meta.dirname, '..');
const results = join(root, 'test-results');
const say = (line: string) => process.stdout.write(`${line}\n`);

/** Every kind of test there must be; one that ran nothing has failed. */
const GROUPS = [
  'unit',
  'truth',
  'laws',
  'pins',
  'calibration',
  'service',
  'migrations',
  'import',
  'seed',
  'electron',
  'exploit',
  'checks',
];

const faults: string[] = [];
const counts: Count[] = [];

async function stage(name: string, work: () => Promise<void> | void): Promise<boolean> {
  say(`\n${name}`);
  const start = performance.now();
  const before = faults.length;
  try {
    await work();
  } catch (error) {
    faults.push(`${name}: ${error instanceof Error ? error.message : String(error)}`);
    say(faults.at(-1) ?? '');
  }
  const well = faults.length === before;
  say(`${name}: ${well ? 'done' : 'FAILED'} in ${((performance.now() - start) / 1000).toFixed(1)} s`);
  return well;
}

function node(script: string, words: string[], env: NodeJS.ProcessEnv = {}): Promise<number | null> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [join(root, script), ...words], {
      cwd: root,
      stdio: 'inherit',
      env: { ...process.env, ...env },
    });
    child.on('error', reject);
    child.on('exit', resolve);
  });
}

function record(name: string, count: Count): void {
  counts.push(count);
  say(`  ${name}: ${count.passed} passed, ${count.failed} failed (${count.seconds.toFixed(1)} s)`);
  if (count.passed + count.failed === 0) faults.push(`${name}: no test ran.`);
  if (count.failed > 0) faults.push(`${name}: ${count.failed} failed.`);
  if (count.left > 0) faults.push(`${name}: ${count.left} tests were left out.`);
}

/** tests/truth/… → truth; a test beside its source → unit. */
function groupOf(path: string): string {
  const [top = '', folder = ''] = relative(root, path).split(sep);
  return top === 'tests' ? folder : 'unit';
}

async function runVitest(): Promise<void> {
  const output = join(results, 'vitest.json');
  const status = await node('node_modules/vitest/vitest.mjs', [
    'run',
    '--reporter=dot',
    '--reporter=json',
    `--outputFile.json=${output}`,
  ]);
  const groups = countVitest(output, groupOf);
  for (const name of new Set([...GROUPS, ...groups.keys()])) {
    record(name, groups.get(name) ?? sum([]));
  }
  if (status !== 0 && sum(groups.values()).failed === 0) faults.push(`vitest ended with ${status}.`);
}

async function runPlaywright(): Promise<void> {
  const electron = await electronProgram(root, 30_000);
  if ('reason' in electron) say(`  Left out: tests/electron/real needs Electron, and ${electron.reason}.`);
  const projects = 'reason' in electron ? ['e2e'] : ['e2e', 'electron'];
  for (const project of projects) {
    const output = join(results, `${project}.json`);
    const status = await node(
      'node_modules/@playwright/test/cli.js',
      ['test', `--project=${project}`, '--reporter=line,json'],
      { PLAYWRIGHT_JSON_OUTPUT_FILE: output },
    );
    const count = countPlaywright(output);
    record(project === 'e2e' ? 'end to end' : 'real Electron', count);
    if (status !== 0 && count.failed === 0) faults.push(`${project}: playwright ended with ${status}.`);
  }
}

rmSync(results, { recursive: true, force: true });
mkdirSync(results, { recursive: true });
const start = performance.now();
await stage('check', async () => {
  const status = await node('tests/checks/run.ts', []);
  if (status !== 0) throw new Error('a check found faults; they stand above.');
});
const ready =
  (await stage('browser', () => {
    const program = ensureChromium(say);
    process.env['STUDBOOK_CHROMIUM'] = program;
    say(`  ${program}`);
  })) &&
  (await stage('build', async () => {
    const status = await node('electron/launch/build.mjs', ['--if-stale']);
    if (status !== 0) throw new Error(`the build ended with ${status}.`);
  }));
if (ready) {
  await stage('unit, truth, law, service and exploit tests', runVitest);
  await stage('tests in the browser', runPlaywright);
}

say(`\nAll stages took ${((performance.now() - start) / 1000).toFixed(0)} s.`);
for (const fault of faults) say(`FAILED ${fault}`);
const total = sum(counts);
say(`${total.passed} passed, ${total.failed} failed`);
process.exitCode = faults.length === 0 ? 0 : 1;
