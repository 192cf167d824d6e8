import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { EventBody } from '../../electron/service/chain/events.ts';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { addMember, at, beginWith, type Member, signInAs, someSecret } from './crew.ts';
import { temporaryFolder } from './folder.ts';
import { projectedTables, rebuilt, rowsOf } from './rebuild.ts';

let folder: string;
let started: TestService;
let administrator: Member;
let engineer: Member;

const DAY = '2026-03-16T';

beforeAll(async () => {
  folder = temporaryFolder();
  started = startService(folder, `${DAY}08:00:00Z`);
  await createEmpty(started);
  administrator = await beginWith(started);
  engineer = await addMember(started, administrator, 'Ed Engineer', ['engineer']);
});
afterAll(() => started.service.close());

function opened<T>(read: (database: Database.Database) => T): T {
  const database = new Database(join(folder, 'register.sqlite'), { readonly: true });
  try {
    return read(database);
  } finally {
    database.close();
  }
}

const bodies = (): EventBody[] =>
  opened((database) =>
    database
      .prepare<[], { body: string }>('select body from event order by sequence')
      .all()
      .map(({ body }) => JSON.parse(body) as EventBody),
  );

const joints = { text: '', unitId: null, sort: 'tag', direction: 'asc', page: 1, pageSize: 10 } as const;

describe('a register without sign-in', () => {
  let open: TestService;
  beforeAll(async () => {
    open = startService(temporaryFolder());
    await createEmpty(open);
  });
  afterAll(() => open.service.close());

  test('says so, answers everybody and signs nobody in', async () => {
    expect((await ask(open, 'register.state', {})).signIn).toBe('none');
    expect(await ask(open, 'access.state', {})).toMatchObject({ signIn: 'none', person: null });
    expect((await ask(open, 'joint.list', joints)).total).toBe(0);
    const error = await askBadly(open, 'access.signIn', { name: 'A', secret: 'anything at all' });
    expect(error.code).toBe('refused');
    expect(error.message).toMatch(/without sign-in/);
    await ask(open, 'access.signOut', {});
  });

  test('gives nobody roles or secrets for later', async () => {
    const data = { name: 'A', role: '' };
    const { id } = await ask(open, 'person.save', { key: key(), id: null, version: null, data });
    const roles = { key: key(), id, version: null, roles: ['administrator'] };
    expect((await askBadly(open, 'person.saveRoles', roles)).message).toMatch(/works without sign-in/);
    const given = { key: key(), personId: id, secret: someSecret() };
    expect((await askBadly(open, 'access.giveSecret', given)).message).toMatch(/works without sign-in/);
    const change = { currentSecret: 'a', secret: someSecret() };
    expect((await askBadly(open, 'access.changeSecret', change)).message).toMatch(/works without sign-in/);
  });

  test('can be made with an administrator, who signs in', async () => {
    const own = startService(temporaryFolder());
    const secret = someSecret();
    const state = await ask(own, 'register.create', {
      key: key(),
      data: { content: 'empty', siteName: 'S', timeZone: 'UTC', administrator: { name: 'Ann', secret } },
    });
    expect(state.signIn).toBe('required');
    expect((await askBadly(own, 'joint.list', joints)).code).toBe('not_signed_in');
    const window = await signInAs(own, 'ann ', secret);
    expect((await ask(window, 'access.state', {})).person).toMatchObject({
      name: 'Ann',
      roles: ['administrator'],
    });
    await own.service.close();
  });
});

describe('sign-in', () => {
  test('begins once and is never undone, also by a restart', async () => {
    const again = { personId: null, name: 'B', secret: someSecret() };
    expect((await askBadly(started, 'access.begin', again)).code).toBe('conflict');
    expect((await askBadly(administrator.window, 'access.begin', again)).code).toBe('conflict');
    expect((await ask(started, 'register.state', {})).signIn).toBe('required');
  });

  test('nothing but the register’s state is answered to a window at which nobody is signed in', async () => {
    for (const window of [started, at(started, null), at(started, ''), at(started, 'x'.repeat(43))]) {
      const error = await askBadly(window, 'joint.list', joints);
      expect(error).toMatchObject({ code: 'not_signed_in', details: [] });
      const unit = { key: key(), id: null, version: null, data: { name: 'U' } };
      expect((await askBadly(window, 'unit.save', unit)).code).toBe('not_signed_in');
      expect((await ask(window, 'access.state', {})).person).toBeNull();
    }
  });

  test('the input of a stranger is not even looked at', async () => {
    expect((await askBadly(started, 'joint.list', { what: 'is this' })).code).toBe('not_signed_in');
    expect((await askBadly(engineer.window, 'joint.list', { what: 'is this' })).code).toBe('invalid_input');
  });

  test('each event says who was signed in', async () => {
    const data = { name: 'Unit of the engineer' };
    const { id } = await ask(engineer.window, 'unit.save', { key: key(), id: null, version: null, data });
    const event = bodies().find(({ data: saved }) => 'id' in saved && saved.id === id);
    expect(event?.recordedBy).toBe(engineer.personId);
  });

  test('a name is found however it is written; nobody else’s secret opens it', async () => {
    await signInAs(started, '  ED   engineer', engineer.secret);
    const wrong = { name: engineer.name, secret: administrator.secret };
    expect(await askBadly(started, 'access.signIn', wrong)).toEqual({
      code: 'not_signed_in',
      message: 'Name or secret is not right',
      details: [],
    });
  });

  test('a secret is the same in either spelling of its letters', async () => {
    const member = await addMember(started, administrator, 'Eva', ['technician']);
    const composed = 'Schlüssel für Eva';
    await ask(member.window, 'access.changeSecret', {
      currentSecret: member.secret,
      secret: composed.normalize('NFD'),
    });
    await signInAs(started, 'Eva', composed.normalize('NFC'));
    expect(composed.normalize('NFD')).not.toBe(composed.normalize('NFC'));
  });
});

describe('a session', () => {
  test('is over half an hour after the last request, and looking at it keeps nobody there', async () => {
    started.setNow(`${DAY}08:00:00Z`);
    const window = await signInAs(started, engineer.name, engineer.secret);
    started.setNow(`${DAY}08:29:00Z`);
    expect((await ask(window, 'unit.list', {})).rows).toBeDefined();
    started.setNow(`${DAY}08:58:00Z`);
    expect((await ask(window, 'access.state', {})).person?.name).toBe(engineer.name);
    started.setNow(`${DAY}08:59:01Z`);
    expect((await ask(window, 'access.state', {})).person).toBeNull();
    expect((await askBadly(window, 'unit.list', {})).code).toBe('not_signed_in');
  });

  test('is over after twelve hours, however busy', async () => {
    started.setNow(`${DAY}08:00:00Z`);
    const window = await signInAs(started, engineer.name, engineer.secret);
    for (let minutes = 20; minutes <= 720; minutes += 20) {
      started.setNow(new Date(Date.parse(`${DAY}08:00:00Z`) + minutes * 60_000).toISOString());
      await ask(window, 'unit.list', {});
    }
    started.setNow(`${DAY}20:00:01Z`);
    expect((await askBadly(window, 'unit.list', {})).code).toBe('not_signed_in');
    started.setNow(`${DAY}08:00:00Z`);
  });

  test('ends when its person signs out, at that window alone', async () => {
    const one = await signInAs(started, engineer.name, engineer.secret);
    const other = await signInAs(started, engineer.name, engineer.secret);
    await ask(one, 'access.signOut', {});
    expect((await askBadly(one, 'unit.list', {})).code).toBe('not_signed_in');
    expect((await ask(other, 'unit.list', {})).rows).toBeDefined();
  });

  test('ends at every window when the secret is changed, by the person or by an administrator', async () => {
    const member = await addMember(started, administrator, 'Tom Changes', ['technician']);
    const other = await signInAs(started, member.name, member.secret);
    const secret = someSecret();
    const change = { currentSecret: member.secret, secret };
    const { token } = await ask(member.window, 'access.changeSecret', change);
    for (const window of [member.window, other]) {
      expect((await askBadly(window, 'unit.list', {})).code).toBe('not_signed_in');
    }
    const own = at(started, token);
    expect((await ask(own, 'unit.list', {})).rows).toBeDefined();
    const given = { key: key(), personId: member.personId, secret: someSecret() };
    await ask(administrator.window, 'access.giveSecret', given);
    expect((await askBadly(own, 'unit.list', {})).code).toBe('not_signed_in');
    expect((await askBadly(started, 'access.signIn', { name: member.name, secret })).code).toBe(
      'not_signed_in',
    );
  });

  test('loses a role in the moment it is taken away', async () => {
    const member = await addMember(started, administrator, 'Pia Planner', ['planner']);
    const unit = (name: string) => ({ key: key(), id: null, version: null, data: { name } });
    await ask(member.window, 'unit.save', unit('Unit of Pia'));
    await ask(administrator.window, 'person.saveRoles', {
      key: key(),
      id: member.personId,
      version: 1,
      roles: ['technician'],
    });
    const error = await askBadly(member.window, 'unit.save', unit('Another'));
    expect(error.message).toBe(
      'This is for planner or engineer; Pia Planner has technician. Nothing was done',
    );
    expect(error.details).toEqual([{ field: 'role', value: 'technician', allowed: 'planner or engineer' }]);
  });

  test('is gone with the process: a token is worth nothing to the next', async () => {
    const own = temporaryFolder();
    const first = startService(own);
    await createEmpty(first);
    const { secret, name } = await beginWith(first);
    const { token } = await ask(first, 'access.signIn', { name, secret });
    await first.service.close();
    const next = startService(own);
    expect((await ask(next, 'register.state', {})).signIn).toBe('required');
    expect((await askBadly(at(next, token), 'joint.list', joints)).code).toBe('not_signed_in');
    await next.service.close();
  });
});

describe('a secret given by an administrator', () => {
  test('opens nothing until it is changed to another one', async () => {
    const data = { name: 'Nia New', role: '' };
    const { id } = await ask(administrator.window, 'person.save', {
      key: key(),
      id: null,
      version: null,
      data,
    });
    const given = someSecret();
    await ask(administrator.window, 'access.giveSecret', { key: key(), personId: id, secret: given });
    const window = await signInAs(started, 'Nia New', given);
    expect((await ask(window, 'access.state', {})).person?.secretToBeChanged).toBe(true);
    expect((await askBadly(window, 'joint.list', joints)).message).toMatch(/choose one of your own first/);
    const same = { currentSecret: given, secret: given };
    expect((await askBadly(window, 'access.changeSecret', same)).details[0]?.allowed).toMatch(/another one/);
    const short = { currentSecret: given, secret: 'short' };
    expect((await askBadly(window, 'access.changeSecret', short)).details).toEqual([
      { field: 'secret', value: '', allowed: 'at least 12 characters' },
    ]);
    const wrong = { currentSecret: 'not this one', secret: someSecret() };
    expect((await askBadly(window, 'access.changeSecret', wrong)).details[0]).toMatchObject({
      field: 'currentSecret',
      value: '',
    });
    const { person } = await ask(window, 'access.changeSecret', {
      currentSecret: given,
      secret: someSecret(),
    });
    expect(person.secretToBeChanged).toBe(false);
    const people = await ask(administrator.window, 'person.list', {});
    expect(people.rows.find((row) => row.id === id)).toMatchObject({ secret: 'own', roles: [] });
  });

  test('is not given to oneself, nor under a name somebody else signs in with', async () => {
    const { window, personId } = administrator;
    const own = { key: key(), personId, secret: someSecret() };
    expect((await askBadly(window, 'access.giveSecret', own)).code).toBe('invalid_input');
    const data = { name: 'ED ENGINEER', role: '' };
    const twin = await ask(window, 'person.save', { key: key(), id: null, version: null, data });
    const given = { key: key(), personId: twin.id, secret: someSecret() };
    expect((await askBadly(window, 'access.giveSecret', given)).code).toBe('duplicate');
    const rename = { key: key(), id: twin.id, version: 1, data: { name: 'Someone', role: '' } };
    await ask(window, 'person.save', rename);
    await ask(window, 'access.giveSecret', { ...given, key: key() });
    const back = { key: key(), id: twin.id, version: 2, data };
    expect((await askBadly(window, 'person.save', back)).code).toBe('duplicate');
  });

  test('somebody who signs in is renamed by an administrator alone', async () => {
    const planner = await addMember(started, administrator, 'Per Planner', ['planner']);
    const people = await ask(planner.window, 'person.list', {});
    const { id, version } = people.rows.find(({ name }) => name === engineer.name) ?? { id: '', version: 0 };
    const renamed = { key: key(), id, version, data: { name: 'Somebody else', role: '' } };
    expect((await askBadly(planner.window, 'person.save', renamed)).code).toBe('refused');
    const trade = { key: key(), id, version, data: { name: engineer.name, role: 'integrity engineer' } };
    await ask(planner.window, 'person.save', trade);
  });

  test('the last administrator who can sign in stays one', async () => {
    const { window, personId } = administrator;
    const roles = { key: key(), id: personId, version: 1, roles: ['engineer' as const] };
    expect((await askBadly(window, 'person.saveRoles', roles)).message).toMatch(/only administrator/);
    const second = await addMember(started, administrator, 'Ben Second', ['administrator']);
    const other = { key: key(), id: second.personId, version: 1, roles: ['technician' as const] };
    await ask(window, 'person.saveRoles', other);
    expect((await askBadly(window, 'person.saveRoles', { ...roles, key: key() })).code).toBe('refused');
  });
});

describe('what is left behind', () => {
  test('the history tells who signed in and whose secret was changed', () => {
    const kinds = new Set(bodies().map(({ kind }) => kind));
    const told = ['sign-in begun', 'signed in', 'sign-in failed', 'secret changed', 'person roles saved'];
    for (const kind of told) expect(kinds).toContain(kind);
  });

  test('no secret, nothing made of one and no token is in file, log or event', async () => {
    const member = await addMember(started, administrator, 'Sam Secretive', ['technician']);
    const given = { key: key(), personId: member.personId, secret: someSecret() };
    await ask(administrator.window, 'access.giveSecret', given);
    // The same key with another secret is the same request: nothing of the secret is in the receipt.
    const repeated = await ask(administrator.window, 'access.giveSecret', { ...given, secret: someSecret() });
    expect(repeated.alreadyRecorded).toBe(true);
    const wrong = someSecret();
    await askBadly(started, 'access.signIn', { name: member.name, secret: wrong });
    await askBadly(started, 'access.signIn', { name: wrong, secret: 'typed into the wrong field' });
    const { token } = await ask(started, 'access.signIn', { name: engineer.name, secret: engineer.secret });
    const kept = [administrator, engineer, member].map(({ secret }) => secret);
    const hidden = [...kept, given.secret, wrong, token, 'typed into the wrong field'];
    const files = readdirSync(folder).filter((name) => name.startsWith('register.sqlite'));
    expect(files).toContain('register.sqlite');
    const bytes = Buffer.concat(files.map((name) => readFileSync(join(folder, name)))).toString('latin1');
    expect(bytes).toContain(administrator.name);
    for (const text of hidden) expect(bytes.includes(text), text).toBe(false);
    expect(started.log).toEqual([]);

    const hashes = opened((database) =>
      database.prepare<[], { salt: Buffer; hash: Buffer }>('select salt, hash from person_secret').all(),
    );
    expect(hashes.length).toBeGreaterThan(5);
    expect(new Set(hashes.map(({ salt }) => salt.toString('hex'))).size).toBe(hashes.length);
    const history = JSON.stringify(bodies());
    for (const { salt, hash } of hashes) {
      for (const value of [salt, hash]) {
        for (const form of ['hex', 'base64', 'base64url'] as const) {
          expect(history.includes(value.toString(form))).toBe(false);
        }
      }
    }
  });

  test('an answer does not repeat the secret that was sent, whatever is wrong with it', async () => {
    const secret = `${someSecret()}\u0000`;
    const inputs: [string, unknown][] = [
      ['access.signIn', { name: engineer.name, secret }],
      ['access.signIn', { name: engineer.name, secret, more: { secret } }],
      ['access.signIn', { name: engineer.name, secret: [secret] }],
      ['access.signIn', [{ secret }]],
      ['access.giveSecret', { key: key(), personId: engineer.personId, secret: 'x'.repeat(201) }],
      ['access.begin', { personId: null, name: '', secret }],
      ['register.create', { key: key(), data: { content: 'empty', administrator: { name: '', secret } } }],
      ['unit.save', { secret }],
    ];
    for (const [name, input] of inputs) {
      const answer = JSON.stringify(await administrator.window.service.handle(name, input));
      expect(answer, name).toMatch(/"ok":false/);
      expect(answer.includes(secret.slice(0, -1)), name).toBe(false);
      expect(answer.includes('xxxx'), name).toBe(false);
    }
  });

  test('roles, competences and the begin of sign-in can be rebuilt from the events', async () => {
    const data = { personId: engineer.personId, scheme: 'EN 1591-4', issuedOn: '2024-05-02' };
    await ask(administrator.window, 'competence.save', { key: key(), id: null, version: null, data });
    const database = new Database(join(folder, 'register.sqlite'), { readonly: true });
    const fresh = await rebuilt(database);
    const tables = projectedTables(database);
    for (const table of ['sign_in', 'person_roles', 'competence']) {
      expect(tables).toContain(table);
      expect(rowsOf(fresh, table).length, table).toBeGreaterThan(0);
    }
    for (const table of tables) expect(rowsOf(fresh, table), table).toEqual(rowsOf(database, table));
    expect(tables).not.toContain('person_secret');
    database.close();
  });
});

test('competences are listed with their last good day, and edited by version', async () => {
  let window = await signInAs(started, engineer.name, engineer.secret);
  const data = {
    personId: engineer.personId,
    scheme: 'EN 1591-4',
    certificate: 'K-1',
    methods: ['hydraulic wrench' as const],
    issuedOn: '2021-03-17',
  };
  const first = await ask(window, 'competence.save', { key: key(), id: null, version: null, data });
  const listed = async () =>
    (await ask(window, 'competence.list', { personId: engineer.personId })).rows.find(
      ({ id }) => id === first.id,
    );
  expect(await listed()).toMatchObject({
    lastGoodDay: '2026-03-16',
    state: 'in date',
    person: engineer.name,
  });
  started.setNow('2026-03-17T08:00:00Z');
  const later = await signInAs(started, engineer.name, engineer.secret);
  expect((await ask(later, 'competence.list', { personId: null })).rows).toContainEqual(
    expect.objectContaining({ id: first.id, state: 'expired' }),
  );
  started.setNow(`${DAY}08:00:00Z`);
  window = await signInAs(started, engineer.name, engineer.secret);
  const edit = { key: key(), id: first.id, version: 1, data: { ...data, withdrawn: true } };
  await ask(window, 'competence.save', edit);
  expect((await listed())?.state).toBe('withdrawn');
  const stale = { ...edit, key: key(), data };
  expect((await askBadly(window, 'competence.save', stale)).code).toBe('conflict');
  const other = { ...edit, key: key(), version: 2, data: { ...data, personId: administrator.personId } };
  expect((await askBadly(window, 'competence.save', other)).code).toBe('invalid_input');
});
