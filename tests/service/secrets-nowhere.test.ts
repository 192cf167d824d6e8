import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Answer } from '../../core/contract/errors.ts';
import { REQUEST_KINDS, REQUEST_NAMES, type RequestName } from '../../core/contract/names.ts';
import { makeVerifiedBackup } from '../../electron/service/register/backup.ts';
import { startLoopback } from '../../electron/transport/loopback.ts';
import { ask, createEmpty, key, startService, type TestService } from './ask.ts';
import { addMember, beginWith, type Member, signInAs } from './crew.ts';
import { temporaryFolder } from './folder.ts';
import { enterPlant, settingFor, type TestPlant, tighteningOf } from './records.ts';
import { SOUND } from './sound-inputs.ts';

/** Typed into every field that takes a secret; looked for in everything that comes out again. */
const KNOWN = ['kestrel-over-the-moor', 'quarry-lamp-seven', 'never-the-right-one'] as const;
const [OWN, GIVEN, WRONG] = KNOWN;

let folder: string;
let started: TestService;
let plant: TestPlant;
let administrator: Member;
const answers: { name: string; answer: Answer<unknown> }[] = [];

beforeAll(async () => {
  folder = temporaryFolder();
  started = startService(folder);
  await createEmpty(started);
  plant = await enterPlant(started);
  const { service } = started;
  const handle = service.handle.bind(service);
  service.handle = async (name, input, session) => {
    const answer = await handle(name, input, session);
    answers.push({ name, answer });
    return answer;
  };
  administrator = await beginWith(started);
  const engineer = await addMember(started, administrator, 'Ed Engineer', ['engineer']);
  const { token } = await ask(engineer.window, 'access.changeSecret', {
    currentSecret: engineer.secret,
    secret: OWN,
  });
  const own = await signInAs(started, engineer.name, OWN);
  await ask(administrator.window, 'access.giveSecret', {
    key: key(),
    personId: plant.personId,
    secret: GIVEN,
  });
  for (const [name, input] of [
    ['access.signIn', { name: engineer.name, secret: WRONG }],
    ['access.signIn', { name: WRONG, secret: WRONG }],
    ['access.changeSecret', { currentSecret: WRONG, secret: GIVEN }],
    ['access.giveSecret', { key: key(), personId: engineer.personId, secret: GIVEN, note: GIVEN }],
    ['access.begin', { personId: null, name: 'Another', secret: OWN }],
    ['joint.list', { secret: OWN }],
  ] as const) {
    expect((await service.handle(name, input, token)).ok, name).toBe(false);
  }
  await ask(own, 'event.recordTightening', { key: key(), data: tighteningOf(plant) });
  const database = new Database(join(folder, 'register.sqlite'));
  await makeVerifiedBackup(database, join(folder, 'backups', 'copy.sqlite'));
  database.close();
});
afterAll(() => started.service.close());

/** Everything asked by somebody who may ask everything, with an input that is sound where one is known. */
async function askEverything(): Promise<number> {
  const roles = ['planner', 'keeper', 'engineer', 'technician', 'administrator'] as const;
  const { window, personId } = await addMember(started, administrator, 'May Everything', roles);
  const page = { page: 1, pageSize: 50 };
  const list = { text: '', unitId: null, sort: 'tag', direction: 'asc', ...page };
  const inputs: Partial<Record<RequestName, readonly unknown[]>> = {
    'joint.list': [list],
    'joint.get': [{ id: plant.jointId }],
    'joint.history': [{ id: plant.jointId, ...page }],
    'competence.list': [{ personId: null }],
    'setting.list': [{ jointId: null, ...page }],
    'setting.compute': [settingFor(plant)],
    'case.list': [{ state: null, ...page }],
    'batch.list': [{ text: '', ...page }],
  };
  let answered = 0;
  for (const name of REQUEST_NAMES) {
    if (name === 'access.signOut') continue;
    const sound = SOUND[name]?.({ plant, personId, choice: null });
    for (const input of [...(inputs[name] ?? []), ...(sound === undefined ? [] : [sound]), {}]) {
      const answer = await window.service.handle(name, input);
      if (answer.ok && REQUEST_KINDS[name] === 'read') answered += 1;
    }
  }
  return answered;
}

function filesBelow(path: string): string[] {
  return readdirSync(path, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name));
}

/** As it was typed, and as a careless program would write it. */
const forms = (secret: string) => [
  secret,
  secret.toUpperCase(),
  encodeURIComponent(secret),
  Buffer.from(secret).toString('base64').replace(/=+$/, ''),
  Buffer.from(secret).toString('hex'),
  Buffer.from(secret, 'utf16le').toString('latin1'),
];

test('no answer to any request holds a secret, whether it was right, wrong or in the wrong field', async () => {
  expect(await askEverything()).toBeGreaterThan(15);
  expect(answers.length).toBeGreaterThan(100);
  for (const { name, answer } of answers) {
    const text = JSON.stringify(answer);
    for (const secret of KNOWN) {
      for (const form of forms(secret)) expect(text.includes(form), `${name} ${form}`).toBe(false);
    }
  }
});

test('no file of the register, its backups and attachments holds one', () => {
  const files = filesBelow(folder);
  expect(files.some((file) => file.endsWith('register.sqlite'))).toBe(true);
  expect(files.some((file) => file.includes('backups'))).toBe(true);
  for (const file of files) {
    const bytes = readFileSync(file).toString('latin1');
    for (const secret of KNOWN) {
      for (const form of forms(secret)) expect(bytes.includes(form), `${file} ${form}`).toBe(false);
    }
  }
  expect(readFileSync(join(folder, 'backups', 'copy.sqlite')).toString('latin1')).toContain('Ed Engineer');
});

test('neither the log of the service nor that of the way to it holds one, nor the header with the session', async () => {
  const lines: string[] = [];
  const loopback = await startLoopback({
    service: started.service,
    pageFolder: folder,
    log: (line) => lines.push(line),
  });
  const send = (body: string, session: string) =>
    fetch(`${loopback.origin}/request/access.signIn`, {
      method: 'POST',
      headers: {
        'content-type': 'application/json',
        origin: loopback.origin,
        'x-studbook-token': loopback.token,
        'x-studbook-session': session,
      },
      body,
    });
  const replies = [
    await send(JSON.stringify({ name: 'Ed Engineer', secret: OWN }), WRONG),
    await send(`{"secret": "${OWN}`, WRONG),
  ];
  for (const reply of replies) {
    const text = `${JSON.stringify([...reply.headers])}${await reply.text()}`;
    expect(text.length).toBeGreaterThan(50);
    for (const secret of KNOWN) expect(text).not.toContain(secret);
  }
  await loopback.close();
  const logged = `${JSON.stringify(started.log)}${lines.join('\n')}`;
  for (const secret of KNOWN) expect(logged).not.toContain(secret);
});
