import { type ChildProcess, spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, describe, expect, test } from 'vitest';
import { SCHEMA_NUMBER } from '../../migrations/list.ts';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { enterPlant } from './records.ts';

const running: TestService[] = [];
const children: ChildProcess[] = [];

function start(folder: string): TestService {
  const started = startService(folder);
  running.push(started);
  return started;
}

afterEach(async () => {
  for (const started of running.splice(0)) await started.service.close();
  for (const child of children.splice(0)) child.kill('SIGKILL');
});

const registerIn = (folder: string) => join(folder, 'register.sqlite');

function fingerprint(file: string) {
  const { mtimeMs, size } = statSync(file);
  return { mtimeMs, size, hash: createHash('sha256').update(readFileSync(file)).digest('hex') };
}

async function registerWithData(): Promise<string> {
  const folder = temporaryFolder();
  const started = startService(folder);
  await createEmpty(started);
  await enterPlant(started);
  await started.service.close();
  return folder;
}

/** The lock's file is ours; reading a write-ahead-log database may leave its empty side files. */
const withoutSideFiles = (folder: string) =>
  readdirSync(folder).filter((name) => !name.startsWith('register.lock') && !/-(wal|shm)$/.test(name));

/** Starts a service on a folder whose file it can't use, and makes sure that nothing happened to the file. */
async function expectFailure(folder: string, code: string, message: RegExp): Promise<void> {
  const file = registerIn(folder);
  const before = fingerprint(file);
  const names = withoutSideFiles(folder);
  const started = start(folder);
  const state = await ask(started, 'register.state', {});
  expect(state.state).toBe('failed');
  expect(state.problem?.code).toBe(code);
  expect(state.problem?.message).toMatch(message);
  expect((await askBadly(started, 'unit.list', {})).code).toBe(code);
  const create = { key: key(), data: { content: 'empty', siteName: 'X', timeZone: 'UTC' } };
  expect((await askBadly(started, 'register.create', create)).code).toBe(code);
  await started.service.close();
  expect(fingerprint(file)).toEqual(before);
  expect(withoutSideFiles(folder)).toEqual(names);
}

describe('a file that can not be used is named and left as it is', () => {
  test('text', async () => {
    const folder = temporaryFolder();
    writeFileSync(registerIn(folder), 'tag;unit\nJ-1;100\n');
    await expectFailure(folder, 'register_not_sqlite', /not a SQLite database/);
  });

  test('nothing at all', async () => {
    const folder = temporaryFolder();
    writeFileSync(registerIn(folder), '');
    await expectFailure(folder, 'register_damaged', /empty/);
  });

  test("another program's database", async () => {
    const folder = temporaryFolder();
    const other = new Database(registerIn(folder));
    other.pragma('application_id = 12345');
    other.exec('create table note (text text)');
    other.close();
    await expectFailure(folder, 'register_foreign', /another program.*12345/);
  });

  test('a database without any mark', async () => {
    const folder = temporaryFolder();
    const other = new Database(registerIn(folder));
    other.exec('create table note (text text)');
    other.close();
    await expectFailure(folder, 'register_foreign', /another program/);
  });

  test('a register cut short', async () => {
    const folder = await registerWithData();
    truncateSync(registerIn(folder), statSync(registerIn(folder)).size - 5000);
    await expectFailure(folder, 'register_damaged', /cut short/);
  });

  test('a header without its pages', async () => {
    const folder = await registerWithData();
    truncateSync(registerIn(folder), 60);
    await expectFailure(folder, 'register_damaged', /cut short/);
  });

  test('a register with an overwritten page', async () => {
    const folder = await registerWithData();
    const bytes = readFileSync(registerIn(folder));
    bytes.fill(0xff, 4096 * 3, 4096 * 3 + 2000);
    writeFileSync(registerIn(folder), bytes);
    await expectFailure(folder, 'register_damaged', /damaged/);
  });

  test('a register that another program has locked', async () => {
    const folder = await registerWithData();
    await lockingProcess(registerIn(folder));
    await expectFailure(folder, 'register_locked', /Another program/);
  });
});

/** Another process that holds the file exclusively. */
async function lockingProcess(file: string): Promise<void> {
  const script = `
    import Database from 'better-sqlite3';
    const database = new Database(${JSON.stringify(file)});
    database.pragma('locking_mode = EXCLUSIVE');
    database.exec('begin exclusive');
    process.stdout.write('locked');
    setInterval(() => undefined, 1000);`;
  const child = spawn(process.execPath, ['--input-type=module', '-e', script], {
    cwd: new URL('../..', import.meta.url),
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  children.push(child);
  await new Promise((resolve, reject) => {
    child.stdout.once('data', resolve);
    child.once('exit', (code) => reject(new Error(`locking process ended with ${code}`)));
  });
}

test('a register of a newer program opens for reading only', async () => {
  const folder = await registerWithData();
  const file = registerIn(folder);
  const newer = new Database(file);
  newer.pragma(`user_version = ${SCHEMA_NUMBER + 1}`);
  newer.close();
  const before = fingerprint(file);
  const started = start(folder);
  const state = await ask(started, 'register.state', {});
  expect(state).toMatchObject({ state: 'read only', siteName: 'Test site', joints: 1 });
  expect(state.problem?.code).toBe('register_newer');
  expect((await ask(started, 'unit.list', {})).total).toBe(1);
  const save = { key: key(), id: null, version: null, data: { name: 'Unit 200' } };
  expect((await askBadly(started, 'unit.save', save)).code).toBe('register_newer');
  await started.service.close();
  expect(fingerprint(file)).toEqual(before);
});

test('a second service on the same register is refused, and let in when the first has ended', async () => {
  const folder = temporaryFolder();
  const first = start(folder);
  await createEmpty(first);
  const second = start(folder);
  expect((await ask(second, 'register.state', {})).problem?.code).toBe('register_locked');
  await second.service.close();
  await first.service.close();
  const third = start(folder);
  expect((await ask(third, 'register.state', {})).state).toBe('open');
});

test('a process that was killed leaves no lock behind', async () => {
  const folder = temporaryFolder();
  await lockingProcess(join(folder, 'register.lock'));
  const refused = start(folder);
  expect((await ask(refused, 'register.state', {})).problem?.code).toBe('register_locked');
  await refused.service.close();
  const [child] = children;
  const ended = new Promise((resolve) => child?.removeAllListeners('exit').once('exit', resolve));
  child?.kill('SIGKILL');
  await ended;
  expect((await ask(start(folder), 'register.state', {})).state).toBe('none');
});

test('a creation that was cut off is no register, and the next one starts afresh', async () => {
  const folder = temporaryFolder();
  writeFileSync(`${registerIn(folder)}.unfinished`, 'half a register');
  const started = start(folder);
  expect((await ask(started, 'register.state', {})).state).toBe('none');
  await createEmpty(started);
  expect((await ask(started, 'register.state', {})).state).toBe('open');
  expect(existsSync(`${registerIn(folder)}.unfinished`)).toBe(false);
});

test('a folder inside a synchronised one is refused before anything is written', async () => {
  const folder = join(temporaryFolder(), 'OneDrive', 'plant');
  const started = start(folder);
  const state = await ask(started, 'register.state', {});
  expect(state.problem).toMatchObject({
    code: 'register_location',
    message: expect.stringMatching(/synchronised/),
  });
  expect(existsSync(folder)).toBe(false);
});

test('a folder that can not be made is a named problem', async () => {
  const folder = temporaryFolder();
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'file'), '');
  const state = await ask(start(join(folder, 'file', 'data')), 'register.state', {});
  expect(state.state).toBe('failed');
  expect(state.problem?.code).toBe('register_location');
});
