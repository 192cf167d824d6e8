import { appendFileSync, cpSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { beforeAll, expect, test } from 'vitest';
import type { HistoryJob, Verification } from '../../core/contract/history.ts';
import type { RequestInput } from '../../core/contract/requests.ts';
import type { EventDataByKind } from '../../electron/service/chain/events.ts';
import { makeVerifiedBackup } from '../../electron/service/register/backup.ts';
import { ask, askBadly, createEmpty, key, startService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { breakoutOf, certify, enterPlant, settingFor, tighteningOf } from './records.ts';
import { behindItsBack, type Change, copyOf, forge, registerIn } from './tampering.ts';
import { ended, verified } from './verified.ts';

/** A register with a signature, a refusal and a file; `older` is a copy of it from before the last records. */
let genuine: string;
let older: string;
/** Head and number of records as a page printed at the end would show them. */
let printed: { head: string; events: number };
let tighteningId: string;

beforeAll(async () => {
  genuine = temporaryFolder();
  const started = startService(genuine);
  await createEmpty(started);
  const plant = await enterPlant(started);
  await certify(started, plant);
  const issue = { key: key(), data: settingFor(plant), personId: plant.personId };
  const { id: settingId } = await ask(started, 'setting.issue', issue);
  const data = tighteningOf(plant, { settingId });
  ({ id: tighteningId } = await ask(started, 'event.recordTightening', { key: key(), data }));
  const { hash } = await ask(started, 'event.get', { id: tighteningId });
  const signed = { eventId: tighteningId, hash, meaning: 'did', personId: plant.personId } as const;
  await ask(started, 'event.sign', { key: key(), data: signed });
  const owner = { kind: 'joint' as const, id: plant.jointId };
  const named = { owner, name: 'gap.txt', mediaType: 'text/plain' as const, remarks: '' };
  const content = Buffer.from('gap 1.2 mm').toString('base64');
  await ask(started, 'attachment.add', { key: key(), data: { ...named, content, personId: plant.personId } });
  const toolless = { ...settingFor(plant), tools: { ...settingFor(plant).tools, driveId: null } };
  await askBadly(started, 'setting.issue', { key: key(), data: toolless, personId: plant.personId });
  await askBadly(started, 'event.sign', { key: key(), data: { ...signed, meaning: 'approved' } });
  await started.service.close();
  older = copyOf(genuine);
  const later = startService(genuine, '2026-03-17T12:00:00Z');
  await ask(later, 'event.recordBreakout', { key: key(), data: breakoutOf(plant) });
  await ask(later, 'event.recordTightening', { key: key(), data });
  const { head, events } = await ask(later, 'register.state', {});
  printed = { head: head ?? '', events };
  await later.service.close();
});

async function looked(folder: string, input: RequestInput<'history.verify'> = {}): Promise<Verification> {
  const started = startService(folder, '2026-03-18T12:00:00Z');
  try {
    return await verified(started, input);
  } finally {
    await started.service.close();
  }
}

const kinds = ({ findings }: Verification) => [...new Set(findings.map(({ kind }) => kind))].toSorted();

const sql = (text: string) => (database: Database.Database) => {
  const { changes } = database.prepare(text).run();
  expect(changes, text).toBeGreaterThan(0);
};

test('untouched, it is sound and has the printed head', async () => {
  const result = await looked(copyOf(genuine), { depth: 'everything', earlier: printed });
  expect(result.findings).toEqual([]);
  expect(result.comparisons).toMatchObject([{ source: 'typed', outcome: 'is the newest' }]);
  const part = await looked(copyOf(genuine), {
    earlier: {
      head: printed.head
        .slice(0, 20)
        .replace(/(.{4})/g, '$1 ')
        .toUpperCase(),
      events: null,
    },
  });
  expect(part.comparisons).toMatchObject([{ source: 'typed', outcome: 'is the newest' }]);
});

const BY_CHAIN: readonly (readonly [string, string, readonly string[]])[] = [
  [
    'a byte of a text',
    `update event set body = replace(body, '"finalPassNoTurn":true', '"finalPassNoTurn":trUe') where sequence = (select max(sequence) from event)`,
    ['text changed'],
  ],
  [
    'a digit of a reading',
    `update event set body = replace(body, '"260"', '"290"') where kind = 'tightening recorded'`,
    ['text changed'],
  ],
  [
    'the hash that goes with a changed text',
    `update event set hash = '${'a'.repeat(64)}' where sequence = 7`,
    ['link broken', 'text changed'],
  ],
  [
    'a record taken out',
    'delete from event where sequence = 6',
    ['record missing', 'row without its record'],
  ],
  [
    'the moment of a record',
    `update event set recorded_at = '2026-03-15T12:00:00.000Z' where sequence = 8`,
    ['column differs from text'],
  ],
  [
    'the joint a record belongs to',
    `delete from event_joint where event_id = (select id from event where kind = 'breakout recorded')`,
    ['row missing'],
  ],
  [
    'the end cut off, the rest left',
    'delete from event where sequence = (select max(sequence) from event)',
    ['row without its record'],
  ],
  ['the row of a signature', `update signature set meaning = 'approved'`, ['signature differs']],
  [
    'a word of a kept refusal',
    `update refusal set body = replace(body, 'can not', 'may not') where sequence = 1`,
    ['text changed'],
  ],
  ['a kept refusal taken out', 'delete from refusal where sequence = 1', ['record missing']],
];

test.each(BY_CHAIN)('the check of the chain finds %s', async (_, change, expected) => {
  const folder = copyOf(genuine);
  behindItsBack(folder, sql(change));
  const result = await looked(folder);
  expect(result.sound).toBe(false);
  expect(kinds(result)).toEqual(expected);
});

test('the check of the chain finds two records that changed places, and names both', async () => {
  const folder = copyOf(genuine);
  behindItsBack(folder, (database) => {
    database.exec('update event set sequence = -sequence where sequence in (8, 9)');
    database.exec('update event set sequence = 17 + sequence where sequence in (-8, -9)');
  });
  const result = await looked(folder);
  expect(kinds(result)).toEqual(['records reordered']);
  expect(result.findings.map(({ sequence }) => sequence)).toEqual([8, 9]);
});

test('the check of the chain finds guards that were taken off, and one that is no guard of ours', async () => {
  const folder = copyOf(genuine);
  behindItsBack(folder, () => undefined, 'left off');
  expect(kinds(await looked(folder))).toEqual(['trigger missing']);
  const other = copyOf(genuine);
  behindItsBack(other, (database) =>
    database.exec(
      `create trigger quiet after insert on tightening begin update joint set location = ''; end`,
    ),
  );
  expect(kinds(await looked(other))).toEqual(['schema differs']);
});

test('a value that only the lists show is found when everything is worked out again', async () => {
  const folder = copyOf(genuine);
  behindItsBack(folder, sql('update tightening set torque_nm = torque_nm + 50'));
  expect((await looked(folder)).sound).toBe(true);
  const result = await looked(folder, { depth: 'everything' });
  expect(kinds(result)).toEqual(['column differs from text']);
  expect(result.findings[0]?.detail).toMatch(/^tightening .*torque_nm stands as/);
});

test('a changed and a missing file are told apart', async () => {
  const folder = copyOf(genuine);
  const files = join(folder, 'register.attachments');
  const [file = ''] = readdirSync(files, { recursive: true, encoding: 'utf8' }).filter(
    (name) => name.length > 60,
  );
  appendFileSync(join(files, file), ' ');
  expect(kinds(await looked(folder))).toEqual(['attachment changed']);
  rmSync(join(files, file));
  expect(kinds(await looked(folder))).toEqual(['attachment missing']);
});

/** The log with one tightening told more kindly. */
const softened: Change = (log) =>
  log.map(({ body }) => {
    if (body.id !== tighteningId) return body;
    const work = body.data as EventDataByKind['tightening recorded'];
    return { ...body, data: { ...work, data: { ...work.data, boltsTightened: 12, remarks: 'all well' } } };
  });

test('a chain written anew is sound to itself; a head kept outside shows it', async () => {
  const folder = copyOf(genuine);
  await forge(folder, softened);
  const alone = await looked(folder, { depth: 'everything' });
  expect(alone.findings).toEqual([]);
  expect(alone.events).toBe(printed.events);
  const held = await looked(folder, { earlier: printed });
  expect(kinds(held)).toEqual(['head not reached']);
  expect(kinds(await looked(folder, { earlier: { ...printed, events: null } }))).toEqual([
    'head not reached',
  ]);
});

test('a signature shows a rewritten record unless it is forged as well', async () => {
  const folder = copyOf(genuine);
  await forge(folder, softened, 'left as they were');
  expect(kinds(await looked(folder))).toEqual(['signature differs']);
});

test('a tail cut off cleanly, and a record taken out cleanly, are sound to themselves; a head kept outside shows them', async () => {
  const cut = copyOf(genuine);
  await forge(cut, (log) => log.slice(0, -2).map(({ body }) => body));
  expect((await looked(cut, { depth: 'everything' })).findings).toEqual([]);
  expect(kinds(await looked(cut, { earlier: printed }))).toEqual(['cut tail or older file']);
  const out = copyOf(genuine);
  await forge(out, (log) =>
    log.filter(({ body }) => body.kind !== 'breakout recorded').map(({ body }) => body),
  );
  expect((await looked(out, { depth: 'everything' })).findings).toEqual([]);
  expect(kinds(await looked(out, { earlier: printed }))).toEqual(['cut tail or older file']);
});

test('an older file put in its place is sound to itself; a head kept outside shows it', async () => {
  const folder = copyOf(older);
  expect((await looked(folder, { depth: 'everything' })).findings).toEqual([]);
  expect(kinds(await looked(folder, { earlier: printed }))).toEqual(['cut tail or older file']);
  // Without the number of records it is not in the history either.
  expect(kinds(await looked(folder, { earlier: { head: printed.head } }))).toEqual(['head not reached']);
});

test('a backup and an export that lie in the folder are heads kept outside, while they lie there', async () => {
  const folder = copyOf(genuine);
  const source = new Database(registerIn(folder));
  await makeVerifiedBackup(source, join(folder, 'backups', 'before.sqlite'));
  source.close();
  const started = startService(folder, '2026-03-18T12:00:00Z');
  const { exported } = (await ended(started, await ask(started, 'history.export', {}))) as HistoryJob;
  await started.service.close();
  expect(exported?.head).toBe(printed.head);
  const honest = await looked(folder);
  expect(honest.comparisons.map(({ source: from, outcome }) => `${from} ${outcome}`)).toEqual([
    'backup is the newest',
    'export is the newest',
  ]);
  await forge(folder, softened);
  const result = await looked(folder);
  expect(kinds(result)).toEqual(['head not reached']);
  expect(result.findings).toHaveLength(2);
  cpSync(join(older, 'register.sqlite'), registerIn(folder));
  expect(kinds(await looked(folder))).toEqual(['cut tail or older file']);
  rmSync(join(folder, 'backups'), { recursive: true });
  rmSync(join(folder, 'exports'), { recursive: true });
  expect((await looked(folder)).sound).toBe(true);
});

test('copies that can not be read or are of another register are told, and prove nothing', async () => {
  const folder = copyOf(genuine);
  const stranger = temporaryFolder();
  const started = startService(stranger);
  await createEmpty(started);
  await started.service.close();
  cpSync(registerIn(stranger), join(folder, 'backups', 'stranger.sqlite'));
  writeFileSync(
    join(folder, 'backups', 'torn.sqlite'),
    'not a database, but long enough to be taken for one'.repeat(40),
  );
  const result = await looked(folder);
  expect(result.comparisons.map(({ name, outcome }) => `${name}: ${outcome}`)).toEqual([
    'stranger.sqlite: another register',
    'torn.sqlite: can not be read',
  ]);
  expect(result.sound).toBe(true);
});
