import { randomBytes } from 'node:crypto';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { JointInput } from '../../core/contract/joint.ts';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { projectedTables, rebuilt, rowsOf } from './rebuild.ts';
import { jointA } from './records.ts';

let folder: string;
let started: TestService;
let unitId: string;
let personId: string;

beforeAll(async () => {
  folder = temporaryFolder();
  started = startService(folder);
  await createEmpty(started);
  const fresh = { key: key(), id: null, version: null };
  unitId = (await ask(started, 'unit.save', { ...fresh, data: { name: 'Unit 100' } })).id;
  const person = { ...fresh, key: key(), data: { name: 'A. Person', role: '' } };
  personId = (await ask(started, 'person.save', person)).id;
});
afterAll(() => started.service.close());

const save = (data: JointInput, id: string | null = null, version: number | null = null) =>
  ask(started, 'joint.save', { key: key(), id, version, data });

/** The first bytes say that it is a picture; what it shows doesn't matter here. */
const picture = () => Buffer.concat([Buffer.from('89504e470d0a1a0a', 'hex'), randomBytes(40)]);

async function attach(jointId: string, name: string, content: Buffer, mediaType: 'image/png' | 'text/plain') {
  const owner = { kind: 'joint', id: jointId } as const;
  const data = { owner, name, mediaType, content: content.toString('base64'), personId, remarks: '' };
  await ask(started, 'attachment.add', { key: key(), data });
  const { rows } = await ask(started, 'attachment.list', owner);
  return rows.find((row) => row.name === name)?.hash ?? '';
}

test('a joint is found by line, system, drawing, valve and test pack', async () => {
  const identity = {
    line: 'L-4711',
    system: 'flushing oil',
    drawing: 'ISO-88',
    valve: 'XV-9',
    testPack: 'TP-3',
  };
  const { id } = await save({ ...jointA(unitId, 'J-0100'), identity });
  for (const text of ['l-4711', 'flushing', 'iso-88', 'XV-9', 'tp-3']) {
    const found = await ask(started, 'joint.list', {
      text,
      unitId: null,
      sort: 'tag',
      direction: 'asc',
      page: 1,
      pageSize: 10,
    });
    expect(found.rows.map((row) => row.id)).toEqual([id]);
  }
});

test('a file kept with a joint is listed there and in its history', async () => {
  const { id } = await save(jointA(unitId, 'J-0101'));
  await attach(id, 'south side.png', picture(), 'image/png');
  const history = await ask(started, 'joint.history', { id, page: 1, pageSize: 10 });
  expect(history.total).toBe(2);
  expect(history.rows[0]).toMatchObject({ kind: 'file added', summary: 'south side.png', by: 'A. Person' });
});

test('the photo is one of the pictures kept with this joint', async () => {
  const { id } = await save(jointA(unitId, 'J-0102'));
  const other = await save(jointA(unitId, 'J-0103'));
  const own = await attach(id, 'own.png', picture(), 'image/png');
  const strange = await attach(other.id, 'other.png', picture(), 'image/png');
  const note = await attach(id, 'note.txt', Buffer.from('a note'), 'text/plain');
  for (const photo of [strange, note, 'f'.repeat(64)]) {
    const input = { key: key(), id, version: 1, data: { ...jointA(unitId, 'J-0102'), identity: { photo } } };
    expect(await askBadly(started, 'joint.save', input)).toMatchObject({
      code: 'invalid_input',
      details: [
        { field: 'data.identity.photo', value: photo, allowed: 'a picture that is kept with this joint' },
      ],
    });
  }
  expect((await save({ ...jointA(unitId, 'J-0102'), identity: { photo: own } }, id, 1)).version).toBe(2);
});

test('the confusable joints of the newest version count, and all of it is rebuilt from the events', async () => {
  const named = (...tags: string[]) => ({ confusableWith: tags.map((tag) => ({ tag })) });
  const { id } = await save({ ...jointA(unitId, 'J-0104'), identity: named('J-0105', 'j-0105', 'J-0106') });
  await save({ ...jointA(unitId, 'J-0104'), identity: named('J-0107') }, id, 1);
  const database = new Database(join(folder, 'register.sqlite'), { readonly: true });
  const keys = database.prepare('select tag_key from joint_confusable where joint_id = ?').pluck().all(id);
  expect(keys).toEqual(['j-0107']);
  const again = await rebuilt(database);
  expect(projectedTables(database)).toEqual(expect.arrayContaining(['joint_attachment', 'joint_confusable']));
  for (const table of projectedTables(database)) {
    expect(rowsOf(again, table), table).toEqual(rowsOf(database, table));
  }
  database.close();
});
