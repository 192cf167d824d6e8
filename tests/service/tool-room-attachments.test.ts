import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { AttachmentInput } from '../../core/contract/attachment.ts';
import { stateOfAttachment } from '../../electron/service/register/attachment-files.ts';
import { makeVerifiedBackup } from '../../electron/service/register/backup.ts';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { certify, enterPlant, type TestPlant } from './records.ts';

let folder: string;
let started: TestService;
let plant: TestPlant;

beforeEach(async () => {
  folder = temporaryFolder();
  started = startService(folder);
  await createEmpty(started);
  plant = await enterPlant(started);
});
afterEach(() => started.service.close());

const PAPER = Buffer.from('%PDF-1.7\ninvented certificate of the test\n');
const HASH = createHash('sha256').update(PAPER).digest('hex');
const stored = (hash: string, base = 'register') =>
  join(folder, `${base}.attachments`, hash.slice(0, 2), hash);

function paper(changes: Partial<AttachmentInput> = {}): AttachmentInput {
  return {
    owner: { kind: 'tool', id: plant.tools.driveId ?? '' },
    name: 'C-1.pdf',
    mediaType: 'application/pdf',
    content: PAPER.toString('base64'),
    personId: plant.personId,
    remarks: 'scan',
    ...changes,
  };
}

const attach = (data: AttachmentInput) => ask(started, 'attachment.add', { key: key(), data });
const refused = async (data: unknown) => {
  const before = (await ask(started, 'register.state', {})).events;
  const error = await askBadly(started, 'attachment.add', { key: key(), data });
  expect((await ask(started, 'register.state', {})).events).toBe(before);
  return error;
};

test('a file lies beside the register under its hash and comes back as it was', async () => {
  await attach(paper());
  expect(readFileSync(stored(HASH))).toEqual(PAPER);
  expect(readdirSync(join(folder, 'register.attachments', HASH.slice(0, 2)))).toEqual([HASH]);
  expect(await ask(started, 'attachment.get', { hash: HASH })).toEqual({
    name: 'C-1.pdf',
    mediaType: 'application/pdf',
    content: PAPER.toString('base64'),
    intact: true,
  });
  expect((await ask(started, 'attachment.list', paper().owner)).rows).toMatchObject([
    { hash: HASH, name: 'C-1.pdf', size: PAPER.length, person: 'A. Person', remarks: 'scan' },
  ]);
});

test('the event carries the hash and not the content', async () => {
  const { id } = await attach(paper());
  const database = new Database(join(folder, 'register.sqlite'), { readonly: true });
  const row = database.prepare<[string], { body: string }>('select body from event where id = ?').get(id);
  database.close();
  expect(JSON.parse(row?.body ?? '{}').data).toMatchObject({ hash: HASH, size: PAPER.length });
  expect(row?.body).not.toContain(PAPER.toString('base64'));
});

test('the same file may speak for a tool and its certificate, once each', async () => {
  const certificate = await certify(started, plant);
  await attach(paper());
  await attach(paper({ owner: { kind: 'event', id: certificate.id }, name: 'scan of C-1.pdf' }));
  expect((await ask(started, 'attachment.list', { kind: 'event', id: certificate.id })).rows).toMatchObject([
    { name: 'scan of C-1.pdf' },
  ]);
  expect(await refused(paper({ name: 'again.pdf' }))).toMatchObject({
    code: 'duplicate',
    message: expect.stringContaining('C-1.pdf'),
  });
});

test('a file that is missing or was changed says so', async () => {
  const other = Buffer.from('%PDF-1.4\nanother\n');
  await attach(paper());
  await attach(paper({ name: 'other.pdf', content: other.toString('base64') }));
  const states = async () => {
    const { rows } = await ask(started, 'attachment.list', paper().owner);
    const { attachments } = await ask(started, 'tool.record', { id: plant.tools.driveId ?? '' });
    expect(attachments).toEqual(rows);
    return rows.map(({ name, state }) => [name, state]);
  };
  expect(await states()).toEqual([
    ['C-1.pdf', 'intact'],
    ['other.pdf', 'intact'],
  ]);
  // One byte, and the same length: only its hash tells.
  const oneByte = Buffer.from(PAPER);
  oneByte.writeUInt8(oneByte.readUInt8(12) ^ 1, 12);
  writeFileSync(stored(HASH), oneByte);
  rmSync(stored(createHash('sha256').update(other).digest('hex')));
  expect(await states()).toEqual([
    ['C-1.pdf', 'changed'],
    ['other.pdf', 'missing'],
  ]);
  writeFileSync(stored(HASH), 'changed');
  expect((await states())[0]).toEqual(['C-1.pdf', 'changed']);
  expect(await ask(started, 'attachment.get', { hash: HASH })).toMatchObject({ intact: false });
  rmSync(stored(HASH));
  expect(await ask(started, 'attachment.get', { hash: HASH })).toMatchObject({
    intact: false,
    content: null,
  });
});

test('a file that can not be read is not called intact, and does not keep the rest of the list back', async () => {
  // A folder in the file's place, of the same size: it is there, and reading it fails.
  const aFolder = join(folder, 'a folder');
  mkdirSync(aFolder);
  const padded = Buffer.alloc(statSync(aFolder).size, '%PDF-1.7 ');
  await attach(paper({ content: padded.toString('base64') }));
  await attach(paper({ name: 'other.pdf' }));
  const hash = createHash('sha256').update(padded).digest('hex');
  rmSync(stored(hash));
  renameSync(aFolder, stored(hash));
  const { rows } = await ask(started, 'attachment.list', paper().owner);
  expect(rows.map(({ state }) => state)).toEqual(['not checked', 'intact']);
  expect(started.log.map(({ message }) => message)).toEqual([`attachment ${hash} could not be read`]);
});

test('what is not read through this time says so, and a wrong size shows all the same', async () => {
  await attach(paper());
  const kept = join(folder, 'register.attachments');
  expect(stateOfAttachment(kept, { hash: HASH, size: PAPER.length }, false)).toBe('not checked');
  expect(stateOfAttachment(kept, { hash: HASH, size: PAPER.length + 1 }, false)).toBe('changed');
  expect(stateOfAttachment(kept, { hash: 'a'.repeat(64), size: 1 }, false)).toBe('missing');
});

test('sent twice under one key it is recorded once', async () => {
  const input = { key: key(), data: paper() };
  const first = await ask(started, 'attachment.add', input);
  expect(await ask(started, 'attachment.add', input)).toEqual({ ...first, alreadyRecorded: true });
  expect((await ask(started, 'attachment.list', paper().owner)).total).toBe(1);
});

describe('a file that is not what it is said to be', () => {
  const missing = '00000000-0000-7000-8000-000000000001';
  const encoded = (bytes: readonly number[] | string) => Buffer.from(bytes as string).toString('base64');
  test.each<[string, Partial<AttachmentInput>, string]>([
    [
      'a picture called a paper',
      { content: encoded([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]) },
      'data.mediaType',
    ],
    ['a paper called a picture', { mediaType: 'image/jpeg' }, 'data.mediaType'],
    ['a paper called a text', { mediaType: 'text/plain' }, 'data.mediaType'],
    ['zero bytes in a text', { mediaType: 'text/csv', content: encoded([65, 0, 66]) }, 'data.mediaType'],
    ['an empty file', { content: '' }, 'data.content'],
    ['no base64', { content: 'a file?' }, 'data.content'],
    ['another type', { mediaType: 'text/html' as 'text/csv' }, 'data.mediaType'],
    ['a tool that is not there', { owner: { kind: 'tool', id: missing } }, 'data.owner.id'],
    ['a record that is not there', { owner: { kind: 'event', id: missing } }, 'data.owner.id'],
    ['nobody', { personId: missing }, 'data.personId'],
  ])('%s is refused by name, and nothing is stored', async (_, changes, field) => {
    expect((await refused(paper(changes))).details).toMatchObject([{ field }]);
    expect(existsSync(join(folder, 'register.attachments'))).toBe(false);
  });

  test('what nothing names is not found', async () => {
    expect((await askBadly(started, 'attachment.get', { hash: 'a'.repeat(64) })).code).toBe('not_found');
  });

  test.each<[AttachmentInput['mediaType'], readonly number[]]>([
    ['image/png', [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 1]],
    ['image/jpeg', [0xff, 0xd8, 0xff, 0xe0, 1]],
    ['text/csv', [49, 59, 50]],
  ])('%s with its own first bytes is taken', async (mediaType, bytes) => {
    expect(await attach(paper({ mediaType, content: encoded(bytes) }))).toMatchObject({
      alreadyRecorded: false,
    });
  });
});

test('a backup has the attachments with it, and names those that were damaged already', async () => {
  const other = Buffer.from('%PDF-1.4\nanother\n');
  await attach(paper());
  await attach(paper({ name: 'other.pdf', content: other.toString('base64') }));
  const otherHash = createHash('sha256').update(other).digest('hex');
  writeFileSync(stored(otherHash), 'changed');
  const live = new Database(join(folder, 'register.sqlite'), { readonly: true });
  const made = await makeVerifiedBackup(live, join(folder, 'backups', 'copy.sqlite'));
  live.close();
  expect(made).toMatchObject({ attachments: 1, damaged: [otherHash] });
  expect(readFileSync(stored(HASH, 'backups/copy'))).toEqual(PAPER);
  expect(existsSync(stored(otherHash, 'backups/copy'))).toBe(false);
});
