import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { eventHash, NO_PREVIOUS } from '../../core/audit/chain.ts';
import { merkleHead, type OriginHead } from '../../core/audit/merkle.ts';
import { sha256 } from '../../electron/service/chain/sha256.ts';
import { linkHash } from '../../electron/service/history/link-hash.ts';
import { prefixHeads } from '../../electron/service/history/prefix-heads.ts';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { breakoutOf, certify, enterPlant, settingFor, tighteningOf } from './records.ts';
import { ended, verified } from './verified.ts';

let folder: string;
let started: TestService;

beforeAll(async () => {
  folder = temporaryFolder();
  started = startService(folder);
  await createEmpty(started);
  const plant = await enterPlant(started);
  await certify(started, plant);
  const issue = { key: key(), data: settingFor(plant), personId: plant.personId };
  const { id: settingId } = await ask(started, 'setting.issue', issue);
  await ask(started, 'event.recordTightening', { key: key(), data: tighteningOf(plant, { settingId }) });
  await ask(started, 'event.recordBreakout', { key: key(), data: breakoutOf(plant) });
  const content = Buffer.from('invented paper').toString('base64');
  const owner = { kind: 'tool' as const, id: plant.tools.driveId ?? '' };
  const named = { owner, name: 'paper.txt', mediaType: 'text/plain' as const, remarks: '' };
  await ask(started, 'attachment.add', {
    key: key(),
    data: { ...named, content, personId: plant.personId },
  });
});
afterAll(() => started.service.close());

test.each(['chain', 'everything'] as const)('a register nobody touched is sound: %s', async (depth) => {
  const state = await ask(started, 'register.state', {});
  const result = await verified(started, { depth });
  expect(result).toMatchObject({ sound: true, findings: [], findingsTotal: 0, depth });
  expect(result).toMatchObject({ events: state.events, head: state.head });
  expect(result.origins).toHaveLength(1);
  const looked = new Map(result.looked.map(({ what, count }) => [what, count]));
  expect(looked.get('records')).toBe(state.events);
  expect(looked.get('files')).toBe(1);
  expect(looked.get('tables, indexes and triggers')).toBeGreaterThan(100);
  expect(looked.get('rows that name a record')).toBeGreaterThan(20);
  expect(looked.has('rows worked out again')).toBe(depth === 'everything');
  expect(result.notLooked).toHaveLength(depth === 'everything' ? 0 : 1);
});

test('an earlier head is found again, with the record and the day at which it stood', async () => {
  const before = await ask(started, 'register.state', {});
  const person = { name: 'Later', role: '' };
  await ask(started, 'person.save', { key: key(), id: null, version: null, data: person });
  const head = before.head ?? '';
  for (const events of [before.events, null]) {
    const { sound, comparisons } = await verified(started, { earlier: { head, events } });
    expect(sound).toBe(true);
    expect(comparisons.find(({ source }) => source === 'typed')).toMatchObject({
      outcome: 'reached',
      at: { events: before.events, sequence: before.events, recordedAt: '2026-03-16T12:00:00.000Z' },
    });
  }
  const now = await ask(started, 'register.state', {});
  const newest = await verified(started, { earlier: { head: now.head ?? '' } });
  expect(newest.comparisons[0]).toMatchObject({ outcome: 'is the newest', at: { events: now.events } });
});

test('the hash of a record is told from a head, and a head of elsewhere is in no history', async () => {
  const { head } = await ask(started, 'register.state', {});
  const database = new Database(join(folder, 'register.sqlite'), { readonly: true });
  const hash = String(database.prepare('select hash from event where sequence = 3').pluck().get());
  database.close();
  const record = await verified(started, { earlier: { head: hash } });
  expect(record.comparisons[0]).toMatchObject({ outcome: 'is a record', at: { sequence: 3 } });
  expect(record.sound).toBe(true);
  const stranger = createHash('sha256')
    .update(head ?? '')
    .digest('hex');
  const result = await verified(started, { earlier: { head: stranger } });
  expect(result.sound).toBe(false);
  expect(result.findings.map(({ kind }) => kind)).toEqual(['head not reached']);
});

test('work in the background can be cancelled, and only one runs at a time', async () => {
  const job = await ask(started, 'history.verify', { depth: 'everything' });
  expect(job).toMatchObject({ state: 'running', task: 'verify', verification: null });
  expect((await askBadly(started, 'history.verify', {})).code).toBe('busy');
  expect((await askBadly(started, 'history.export', {})).code).toBe('busy');
  const cancelled = await ask(started, 'history.cancel', { id: job.id });
  expect(cancelled).toMatchObject({ state: 'cancelled', verification: null });
  expect(await ask(started, 'history.progress', { id: null })).toEqual(cancelled);
  expect((await askBadly(started, 'history.cancel', { id: key() })).code).toBe('not_found');
  expect((await verified(started)).sound).toBe(true);
});

test('the answer keeps coming while a verification runs', async () => {
  const job = await ask(started, 'history.verify', { depth: 'everything' });
  const { name } = { name: 'Written meanwhile' };
  await ask(started, 'unit.save', { key: key(), id: null, version: null, data: { name } });
  const done = await ended(started, job);
  expect(done).toMatchObject({ state: 'done', verification: { sound: true } });
  expect(done.done).toBe(done.total);
});

test('an export has every text as it was hashed, and comes in pieces as it lies in the folder', async () => {
  const state = await ask(started, 'register.state', {});
  const { exported } = await ended(started, await ask(started, 'history.export', {}));
  expect(exported).toMatchObject({ events: state.events, head: state.head, attachments: 1 });
  const name = exported?.name ?? '';
  const file = readFileSync(join(folder, 'exports', name));
  const pieces: Buffer[] = [];
  for (let from: number | null = 0; from !== null; ) {
    const part: { content: string; next: number | null } = await ask(started, 'history.exportPart', {
      name,
      from,
    });
    pieces.push(Buffer.from(part.content, 'base64'));
    from = part.next;
  }
  expect(Buffer.concat(pieces).equals(file)).toBe(true);
  const lines = file
    .toString('utf8')
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Record<string, string>);
  expect(lines[0]).toMatchObject({ format: 'studbook-history', version: 1, head: state.head });
  expect(lines.at(-1)).toMatchObject({ type: 'end', events: state.events, head: state.head });
  const events = lines.filter(({ type }) => type === 'event');
  expect(events).toHaveLength(state.events);
  let previous = NO_PREVIOUS;
  for (const { previousHash = '', hash, body = '' } of events) {
    expect(previousHash).toBe(previous);
    expect(hash).toBe(eventHash(sha256, previousHash, body));
    previous = hash ?? '';
  }
  // A second one in the same second stands beside the first.
  await ended(started, await ask(started, 'history.export', {}));
  expect(readdirSync(join(folder, 'exports'))).toHaveLength(2);
  const { sound, comparisons } = await verified(started);
  expect(sound).toBe(true);
  expect(comparisons.map(({ source, outcome }) => `${source} ${outcome}`)).toEqual([
    'export is the newest',
    'export is the newest',
  ]);
});

test.each(['../register.sqlite', 'history-20260316T120000Z.jsonl.unfinished', '/etc/passwd'])(
  'no other file is handed out as an export: %s',
  async (name) => {
    expect(existsSync(join(folder, 'register.sqlite'))).toBe(true);
    expect((await askBadly(started, 'history.exportPart', { name, from: 0 })).code).toBe('invalid_input');
  },
);

test('the quick hash of a link is the one core defines', () => {
  for (const body of ['', '{}', '{"name":"Prüfgröße ‖ 漢字 😀"}', 'x'.repeat(100_000)]) {
    for (const before of [NO_PREVIOUS, 'ab'.repeat(32)]) {
      expect(linkHash(before, body)).toBe(eventHash(sha256, before, body));
    }
  }
});

test('heads of prefixes are those of core over the newest record of each origin', () => {
  const database = new Database(':memory:');
  database.exec('create table event (id text, origin_id text, sequence int, hash text, recorded_at text)');
  const insert = database.prepare('insert into event values (?, ?, ?, ?, ?)');
  const order = ['b', 'b', 'a', 'b', 'c', 'a', 'd', 'e', 'c'];
  const newest = new Map<string, OriginHead>();
  const expected = order.map((originId, index) => {
    const sequence = (newest.get(originId)?.sequence ?? 0) + 1;
    const hash = index.toString(16).repeat(64);
    insert.run(`e${index}`, originId, sequence, hash, '');
    newest.set(originId, { originId, sequence, hash });
    return merkleHead(sha256, [...newest.values()]);
  });
  expect([...prefixHeads(database, order.length)].map(({ head }) => head)).toEqual(expected);
  expect([...prefixHeads(database, 3)]).toHaveLength(3);
});
