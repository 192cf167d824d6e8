import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { makeVerifiedBackup } from '../../electron/service/register/backup.ts';
import { locationProblem } from '../../electron/service/register/location.ts';
import { applyPragmas, readPragmas } from '../../electron/service/register/pragmas.ts';
import { APP_VERSION } from '../../electron/service/version.ts';
import { ask, createEmpty, startService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { enterPlant } from './records.ts';

const DEMANDED = {
  trusted_schema: 0,
  journal_mode: 'wal',
  synchronous: 2,
  foreign_keys: 1,
  recursive_triggers: 1,
  cell_size_check: 1,
  busy_timeout: 5000,
};

test('every setting of the connection holds after opening, in a file that was closed and opened again', () => {
  const file = join(temporaryFolder(), 'register.sqlite');
  for (const _ of ['new', 'again']) {
    const database = new Database(file);
    expect(readPragmas(database)).not.toEqual(DEMANDED);
    applyPragmas(database);
    expect(readPragmas(database)).toEqual(DEMANDED);
    database.exec('create table if not exists t (a integer) strict');
    database.close();
  }
});

test('a setting that does not take is an error, not a silence', () => {
  // A database in memory has no write-ahead log.
  expect(() => applyPragmas(new Database(':memory:'))).toThrow(/journal_mode reads memory/);
});

test('a backup of a live register is whole, alone in its file, and has the same head', async () => {
  const folder = temporaryFolder();
  const started = startService(folder);
  await createEmpty(started);
  await enterPlant(started);
  const live = new Database(join(folder, 'register.sqlite'), { readonly: true });
  const target = join(folder, 'backups', 'copy.sqlite');
  const made = await makeVerifiedBackup(live, target);
  const state = await ask(started, 'register.state', {});
  expect(made).toEqual({ file: target, events: state.events, head: state.head, attachments: 0, damaged: [] });
  const copy = new Database(target, { readonly: true });
  expect(copy.pragma('journal_mode', { simple: true })).toBe('delete');
  expect(copy.prepare('select count(*) as n from event').get()).toEqual({ n: state.events });
  copy.close();
  live.close();
  await started.service.close();
});

const mounts = [
  'overlay / overlay rw 0 0',
  'server:/plant /mnt/plant nfs4 rw 0 0',
  '//server/share /mnt/my\\040share cifs rw 0 0',
  '/dev/sdb1 /mnt/plant/local ext4 rw 0 0',
].join('\n');

test.each([
  ['/mnt/plant/data', 'network file system (nfs4)'],
  ['/mnt/my share/data', 'network file system (cifs)'],
  ['/data/Dropbox/data', 'synchronised folder "Dropbox"'],
  ['/data/OneDrive - Works/data', 'synchronised folder "OneDrive - Works"'],
])('%s is refused: %s', (folder, reason) => {
  expect(locationProblem(folder, { platform: 'linux', mounts })).toContain(reason);
});

test.each(['/mnt/plant/local/data', '/mnt/plants/data', '/data/dropbox-notes/data', '/'])(
  '%s is allowed',
  (folder) => {
    expect(locationProblem(folder, { platform: 'linux', mounts })).toBeNull();
  },
);

test('a share by its network name is refused on Windows, a local drive is not', () => {
  const windows = { platform: 'win32', mounts: null } as const;
  expect(locationProblem('\\\\server\\share\\data', windows)).toContain('network share');
  expect(locationProblem('C:\\ProgramData\\Studbook', windows)).toBeNull();
  expect(locationProblem('\\\\?\\C:\\Data', windows)).toBeNull();
});

test('the program says the version of its package', () => {
  const packageFile: unknown = JSON.parse(
    readFileSync(new URL('../../package.json', import.meta.url), 'utf8'),
  );
  expect(packageFile).toHaveProperty('version', APP_VERSION);
});
