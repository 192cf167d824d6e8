import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { eventHash, NO_PREVIOUS } from '../../core/audit/chain.ts';
import type { RequestInput } from '../../core/contract/requests.ts';
import { sha256 } from '../../electron/service/chain/sha256.ts';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { addMember, beginWith, type Member } from './crew.ts';
import { temporaryFolder } from './folder.ts';
import { enterPlant, settingFor, type TestPlant, tighteningOf } from './records.ts';
import { verified } from './verified.ts';

let folder: string;
let started: TestService;
let plant: TestPlant;
let eventId: string;
let hash: string;
let byName: string;
let administrator: Member;
let engineer: Member;
let technician: Member;

type Signing = RequestInput<'event.sign'>;

const signing = (changes: Partial<Signing['data']> & { secret?: string | null }): Signing => {
  const { secret = null, ...data } = changes;
  return {
    key: key(),
    secret,
    data: { eventId, hash, meaning: 'witnessed', personId: plant.personId, ...data },
  };
};

const own = (member: Member, changes: Partial<Signing['data']> = {}) =>
  signing({ personId: member.personId, secret: member.secret, ...changes });

beforeAll(async () => {
  folder = temporaryFolder();
  started = startService(folder);
  await createEmpty(started);
  plant = await enterPlant(started);
  const data = tighteningOf(plant);
  ({ id: eventId } = await ask(started, 'event.recordTightening', { key: key(), data }));
  ({ hash } = await ask(started, 'event.get', { id: eventId }));
});
afterAll(() => started.service.close());

test('without sign-in a signature is a claim, and says so', async () => {
  const { id } = await ask(started, 'event.sign', signing({ meaning: 'did' }));
  byName = id;
  const record = await ask(started, 'history.record', { id: eventId });
  expect(record).toMatchObject({ kind: 'tightening recorded', hash, recordedBy: null });
  expect(eventHash(sha256, record.previousHash, record.body)).toBe(hash);
  expect(record.signatures).toEqual([
    {
      id,
      meaning: 'did',
      personId: plant.personId,
      person: 'A. Person',
      knownBy: 'name',
      signedAt: '2026-03-16T12:00:00.000Z',
      matches: true,
    },
  ]);
  const { rows } = await ask(started, 'joint.history', { id: plant.jointId, page: 1, pageSize: 10 });
  expect(rows.find(({ kind }) => kind === 'signed')).toMatchObject({
    eventId: id,
    signedId: eventId,
    by: 'A. Person',
    summary: 'tightening recorded: did it, signed without sign-in',
  });
});

test('a signature changes nothing at the joint: the next pass is not held up by it', async () => {
  const { seen } = await ask(started, 'pass.open', { jointId: plant.jointId });
  expect(seen).toBe(eventId);
});

test('what does not hold is refused, and nothing is signed', async () => {
  const before = await ask(started, 'register.state', {});
  const other = await ask(started, 'person.save', {
    key: key(),
    id: null,
    version: null,
    data: { name: 'B. Person', role: '' },
  });
  const cases: readonly (readonly [Parameters<typeof signing>[0], string, RegExp])[] = [
    [
      { personId: other.id, hash: hash.replace(/^./, (digit) => (digit === '0' ? '1' : '0')) },
      'refused',
      /does not have the content/,
    ],
    [{ meaning: 'did', personId: other.id }, 'refused', /Only who is named in the record.*A\. Person/],
    [{ meaning: 'approved' }, 'refused', /Nobody witnesses, reviews or approves what they did themselves/],
    [{ meaning: 'did' }, 'duplicate', /has signed already: did it/],
    [{ eventId: byName, meaning: 'reviewed', personId: other.id }, 'invalid_input', /not signed/],
    [{ eventId: other.id, personId: other.id }, 'not_found', /no such record/],
    [{ personId: eventId }, 'not_found', /no such person/],
    [{ personId: other.id, secret: 'whatever it is' }, 'invalid_input', /without sign-in/],
  ];
  for (const [changes, code, message] of cases) {
    const error = await askBadly(started, 'event.sign', signing(changes));
    expect([code, error.message]).toEqual([error.code, expect.stringMatching(message)]);
  }
  expect((await ask(started, 'register.state', {})).events).toBe(before.events + 1);
});

test('with sign-in the secret is asked for again with each signature', async () => {
  administrator = await beginWith(started);
  engineer = await addMember(started, administrator, 'Eve Engineer', ['engineer']);
  technician = await addMember(started, administrator, 'Tim Technician', ['technician']);
  const bare = await askBadly(technician.window, 'event.sign', { ...own(technician), secret: null });
  expect(bare).toMatchObject({ code: 'invalid_input', details: [{ field: 'secret' }] });
  const wrong = await askBadly(technician.window, 'event.sign', {
    ...own(technician),
    secret: 'not the secret',
  });
  expect(wrong).toMatchObject({ code: 'refused', message: 'The secret is not right; nothing was written' });
  const input = own(technician);
  const first = await ask(technician.window, 'event.sign', input);
  // An answer that was lost on the way: asked again, it is the same signature.
  expect(await ask(technician.window, 'event.sign', input)).toEqual({ ...first, alreadyRecorded: true });
  await ask(engineer.window, 'event.sign', own(engineer, { meaning: 'approved' }));
  const { signatures } = await ask(engineer.window, 'history.record', { id: eventId });
  expect(signatures.map(({ person, meaning, knownBy }) => `${person} ${meaning} ${knownBy}`)).toEqual([
    'A. Person did name',
    'Tim Technician witnessed secret',
    'Eve Engineer approved secret',
  ]);
});

test('a technician can not approve, and nobody signs for another', async () => {
  const approving = await askBadly(technician.window, 'event.sign', own(technician, { meaning: 'approved' }));
  expect(approving).toMatchObject({ code: 'refused', details: [{ field: 'role', allowed: 'engineer' }] });
  const forAnother = own(engineer, { meaning: 'reviewed' });
  expect(
    await askBadly(technician.window, 'event.sign', {
      ...forAnother,
      data: { ...forAnother.data, meaning: 'witnessed' },
    }),
  ).toMatchObject({
    code: 'refused',
    message: 'Nobody signs for another: Tim Technician is signed in',
  });
});

test('guessing the secret of a signature has to wait, and each wrong one is told', async () => {
  const guess = () =>
    askBadly(technician.window, 'event.sign', { ...own(technician), secret: 'a guess at it' });
  let error = await guess();
  for (let count = 0; count < 10 && !/Too many/.test(error.message); count++) error = await guess();
  expect(error).toMatchObject({ code: 'refused', message: expect.stringMatching(/Too many wrong secrets/) });
  // Not even the right one is looked at before then.
  expect((await askBadly(technician.window, 'event.sign', own(technician))).message).toMatch(/Too many/);
  const { rows } = await ask(administrator.window, 'audit.list', {
    group: 'sign-in',
    personId: technician.personId,
    from: null,
    to: null,
    page: 1,
    pageSize: 50,
  });
  const wrong = rows.filter(({ what }) => what === 'Wrong secret');
  expect(wrong.length).toBeGreaterThanOrEqual(5);
  expect(wrong[0]?.detail).toBe('signature, Tim Technician');
});

test('secrets of signatures are in no file and no log', () => {
  for (const file of ['register.sqlite', 'register.sqlite-wal']) {
    const bytes = readFileSync(join(folder, file));
    for (const { secret } of [engineer, technician, administrator]) {
      expect(bytes.includes(secret), `${file} holds a secret`).toBe(false);
    }
  }
  expect(JSON.stringify(started.log)).not.toContain('secret ');
});

test('what was refused is kept in a chain of its own, with who asked and what stood against it', async () => {
  const events = (await ask(administrator.window, 'register.state', {})).events;
  const issuing = {
    key: key(),
    data: { ...settingFor(plant), tools: { ...settingFor(plant).tools, driveId: null } },
    personId: engineer.personId,
  };
  for (let count = 0; count < 2; count++) {
    expect((await askBadly(engineer.window, 'setting.issue', { ...issuing, key: key() })).code).toBe(
      'refused',
    );
  }
  expect((await askBadly(technician.window, 'history.export', {})).code).toBe('refused');
  expect((await ask(administrator.window, 'register.state', {})).events).toBe(events);
  const page = { from: null, to: null, page: 1, pageSize: 50 };
  const { rows } = await ask(administrator.window, 'audit.list', {
    group: 'refused',
    personId: null,
    ...page,
  });
  expect(rows.slice(0, 2)).toMatchObject([
    { what: 'history.export', who: 'Tim Technician', eventId: null },
    { what: 'setting.issue', who: 'Eve Engineer', jointId: plant.jointId },
  ]);
  // Those of the register without sign-in say that the name is a claim.
  expect(rows.at(-1)?.who).toMatch(/, by name only$/);
  // Asked twice within the minute it is one act; wrong secrets are told as events and not here.
  expect(rows.filter(({ what }) => what === 'setting.issue')).toHaveLength(1);
  expect(rows.filter(({ detail }) => /secret/i.test(detail))).toEqual([]);
  const database = new Database(join(folder, 'register.sqlite'), { readonly: true });
  const links = database
    .prepare<[], { previous: string; hash: string; body: string }>(
      'select previous_hash as previous, hash, body from refusal order by sequence',
    )
    .all();
  database.close();
  expect(links).toHaveLength(rows.length);
  let previous = NO_PREVIOUS;
  for (const link of links) {
    expect(link.previous).toBe(previous);
    expect(link.hash).toBe(eventHash(sha256, link.previous, link.body));
    previous = link.hash;
  }
});

test('the audit trail is filtered by kind, person and day, and read by those who answer for it', async () => {
  const page = { page: 1, pageSize: 100 };
  const all = { group: null, personId: null, from: null, to: null, ...page };
  const { rows, total } = await ask(engineer.window, 'audit.list', all);
  expect(total).toBe(rows.length);
  expect(new Set(rows.map(({ group }) => group))).toEqual(
    new Set(['refused', 'sign-in', 'people and roles', 'register data', 'signatures']),
  );
  expect(rows.map(({ at }) => at)).toEqual(
    rows
      .map(({ at }) => at)
      .toSorted()
      .toReversed(),
  );
  const signatures = await ask(engineer.window, 'audit.list', {
    ...all,
    group: 'signatures',
    personId: engineer.personId,
  });
  expect(signatures.rows.map(({ detail }) => detail)).toEqual(['Eve Engineer approved it']);
  expect((await ask(engineer.window, 'audit.list', { ...all, from: '2026-03-17' })).total).toBe(0);
  expect((await ask(engineer.window, 'audit.list', { ...all, to: '2026-03-15' })).total).toBe(0);
  expect(
    (await ask(engineer.window, 'audit.list', { ...all, from: '2026-03-16', to: '2026-03-16' })).total,
  ).toBe(total);
  expect(
    (await askBadly(engineer.window, 'audit.list', { ...all, from: '2026-03-17', to: '2026-03-16' })).code,
  ).toBe('invalid_input');
  expect((await askBadly(technician.window, 'audit.list', all)).code).toBe('refused');
});

test('a register with signatures and refusals is sound, and both were looked at', async () => {
  const result = await verified(administrator.window, { depth: 'everything' });
  expect(result.findings).toEqual([]);
  const looked = new Map(result.looked.map(({ what, count }) => [what, count]));
  expect(looked.get('signatures')).toBe(3);
  expect(looked.get('refusals kept')).toBeGreaterThan(3);
});
