import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import type { RequestError } from '../../core/contract/errors.ts';
import type { EventBody } from '../../electron/service/chain/events.ts';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { addMember, beginWith, type Member, signInAs } from './crew.ts';
import { temporaryFolder } from './folder.ts';

const FIRST_DAY = Date.parse('2026-03-16T08:00:00Z');

let folder: string;
let started: TestService;
let member: Member;
let administrator: Member;
let day = 0;

/** Each test has a day and a person of its own: what was counted the day before is past. */
const after = (seconds: number) => new Date(FIRST_DAY + (day * 86_400 + seconds) * 1000).toISOString();
const wrong = (name: string) => askBadly(started, 'access.signIn', { name, secret: 'not this secret' });
const right = () => started.service.handle('access.signIn', { name: member.name, secret: member.secret });

beforeAll(async () => {
  folder = temporaryFolder();
  started = startService(folder, after(0));
  await createEmpty(started);
  administrator = await beginWith(started);
});
afterAll(() => started.service.close());

beforeEach(async () => {
  day += 2;
  started.setNow(after(0));
  const window = await signInAs(started, administrator.name, administrator.secret);
  member = await addMember(started, { ...administrator, window }, `Tom Technician ${day}`, ['technician']);
});

async function wrongTimes(name: string, count: number): Promise<RequestError[]> {
  const errors: RequestError[] = [];
  for (let time = 0; time < count; time += 1) errors.push(await wrong(name));
  return errors;
}

const history = () => {
  const database = new Database(join(folder, 'register.sqlite'), { readonly: true });
  const rows = database
    .prepare<[string], { body: string }>(
      `select body from event where kind in ('sign-in failed', 'locked out') and recorded_at >= ? order by sequence`,
    )
    .all(after(0))
    .map(({ body }) => JSON.parse(body) as EventBody);
  database.close();
  return rows.map(({ kind, data }) => ({ kind, ...data }));
};

test('five wrong secrets are answered alike; then the right one is not looked at until the wait is over', async () => {
  const errors = await wrongTimes(member.name, 5);
  expect(new Set(errors.map(({ code }) => code))).toEqual(new Set(['not_signed_in']));
  const locked = await right();
  expect(locked).toMatchObject({ ok: false, error: { code: 'refused' } });
  expect(JSON.stringify(locked)).toMatch(/Too many wrong secrets.*in 30 s, from \d\d:00:30 on/);
  started.setNow(after(29));
  expect((await right()).ok).toBe(false);
  started.setNow(after(30));
  expect((await right()).ok).toBe(true);
  expect((await wrongTimes(member.name, 4)).every(({ code }) => code === 'not_signed_in')).toBe(true);
  expect((await right()).ok).toBe(true);
});

test('guessing on makes the wait longer, and trying during it changes nothing', async () => {
  await wrongTimes(member.name, 5);
  started.setNow(after(30));
  await wrong(member.name);
  started.setNow(after(60));
  expect((await wrongTimes(member.name, 20)).every(({ code }) => code === 'refused')).toBe(true);
  started.setNow(after(89));
  expect((await right()).ok).toBe(false);
  started.setNow(after(90));
  expect((await right()).ok).toBe(true);
});

test('the wait outlives a restart', async () => {
  await wrongTimes(member.name, 5);
  await started.service.close();
  started = startService(folder, after(10));
  expect((await right()).ok).toBe(false);
  started.setNow(after(30));
  expect((await right()).ok).toBe(true);
});

test('a name that nobody has is answered the same, word for word, and waits the same', async () => {
  const known = await wrongTimes(member.name, 7);
  const unknown = await wrongTimes('Nobody Here', 7);
  expect(unknown).toEqual(known);
  expect(known.map(({ code }) => code)).toEqual([...Array(5).fill('not_signed_in'), 'refused', 'refused']);
});

test('somebody without a secret is as unknown as nobody', async () => {
  const window = await signInAs(started, administrator.name, administrator.secret);
  const data = { name: 'Without Secret', role: '' };
  await ask(window, 'person.save', { key: key(), id: null, version: null, data });
  expect(await wrong(data.name)).toEqual(await wrong('Nobody At All'));
});

test('the history tells each wrong secret and each wait, and nothing of what was typed for nobody', async () => {
  await wrongTimes(member.name, 5);
  await wrong('my own secret by mistake');
  expect(history()).toEqual([
    ...Array(5).fill({ kind: 'sign-in failed', personId: member.personId, use: 'sign-in' }),
    { kind: 'locked out', personId: member.personId, until: after(30) },
    { kind: 'sign-in failed', personId: null, use: 'sign-in' },
  ]);
});

test('a signed-in window is no way round the wait', async () => {
  const window = await signInAs(started, member.name, member.secret);
  const change = { currentSecret: 'not this secret', secret: 'another long secret' };
  for (let time = 0; time < 5; time += 1) {
    expect((await askBadly(window, 'access.changeSecret', change)).message).toMatch(/not right/);
  }
  const error = await askBadly(window, 'access.changeSecret', { ...change, currentSecret: member.secret });
  expect(error.message).toMatch(/Too many wrong secrets/);
  expect((await right()).ok).toBe(false);
  expect(history().filter(({ kind }) => kind === 'sign-in failed')).toEqual(
    Array(5).fill({ kind: 'sign-in failed', personId: member.personId, use: 'change of the secret' }),
  );
});

test('many names together wait as well', async () => {
  for (let name = 0; name < 40; name += 1) {
    expect((await wrong(`Guess ${name}`)).code).toBe('not_signed_in');
  }
  expect((await wrong('Guess 41')).code).toBe('refused');
  expect((await right()).ok).toBe(false);
  started.setNow(after(600));
  expect((await right()).ok).toBe(true);
});

test('a clock that is set back does not lock anybody out for ever', async () => {
  started.setNow('2036-03-16T08:00:00Z');
  await wrongTimes(member.name, 5);
  started.setNow(after(0));
  expect((await right()).ok).toBe(false);
  started.setNow(after(30));
  expect((await right()).ok).toBe(true);
});

test('a name that nobody has takes as long as a wrong secret', async () => {
  const own = temporaryFolder();
  const cost = { cost: 2 ** 14, blockSize: 8, parallelization: 1 };
  const slow = startService(own, after(0), cost);
  await createEmpty(slow);
  const { name } = await beginWith(slow);
  // Time of the processor, which other programs on the machine do not stretch as they do that of the clock.
  const took = async (of: string) => {
    const began = process.cpuUsage();
    await askBadly(slow, 'access.signIn', { name: of, secret: 'not this secret' });
    // Both kinds together: the split between them is counted in ticks, too coarse for one sign-in.
    const { user, system } = process.cpuUsage(began);
    return user + system;
  };
  // In turns, and often enough that the least of each is one that a busy neighbour core did not slow.
  let known = Number.POSITIVE_INFINITY;
  let unknown = Number.POSITIVE_INFINITY;
  for (let turn = 0; turn < 8; turn += 1) {
    known = Math.min(known, await took(name));
    unknown = Math.min(unknown, await took('Nobody'));
  }
  expect(unknown).toBeGreaterThan(known * 0.6);
  expect(known).toBeGreaterThan(unknown * 0.6);
  await slow.service.close();
});
