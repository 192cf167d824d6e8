import { afterAll, beforeAll, expect, test } from 'vitest';
import { ask, createEmpty, key, startService, type TestService } from './ask.ts';
import { addMember, beginWith, type Member, signInAs, someSecret } from './crew.ts';
import { temporaryFolder } from './folder.ts';

const at = (time: string) => `2026-03-16T${time}Z`;

let started: TestService;
let administrator: Member;
let engineer: Member;

beforeAll(async () => {
  started = startService(temporaryFolder(), at('08:00:00'));
  await createEmpty(started);
});
afterAll(() => started.service.close());

test('without sign-in nobody is known to be there', async () => {
  expect(await ask(started, 'access.present', {})).toEqual({ rows: [], total: 0 });
  expect(await ask(started, 'access.stay', {})).toEqual({});
});

test('each person once, since when, and how many windows; nothing of a token or a secret', async () => {
  administrator = await beginWith(started);
  engineer = await addMember(started, administrator, 'Ed Engineer', ['engineer']);
  started.setNow(at('08:10:00'));
  await signInAs(started, engineer.name, engineer.secret);
  started.setNow(at('08:20:00'));
  const { rows } = await ask(administrator.window, 'access.present', {});
  expect(rows.toSorted((a, b) => a.windows - b.windows)).toEqual([
    {
      personId: administrator.personId,
      since: '2026-03-16T09:00:00+01:00',
      lastAsked: '2026-03-16T09:20:00+01:00',
      windows: 1,
    },
    {
      personId: engineer.personId,
      since: '2026-03-16T09:00:00+01:00',
      lastAsked: '2026-03-16T09:10:00+01:00',
      windows: 2,
    },
  ]);
});

test('who types stays; who only looks whether they are there does not', async () => {
  started.setNow(at('08:29:00'));
  await ask(engineer.window, 'access.stay', {});
  await ask(administrator.window, 'access.state', {});
  started.setNow(at('08:55:00'));
  const { rows } = await ask(engineer.window, 'access.present', {});
  expect(rows.map(({ personId }) => personId)).toEqual([engineer.personId]);
});

test('who signed out, and whose secret was given anew, is not there', async () => {
  const window = await signInAs(started, administrator.name, administrator.secret);
  const given = { key: key(), personId: engineer.personId, secret: someSecret() };
  await ask(window, 'access.giveSecret', given);
  const present = async () => (await ask(window, 'access.present', {})).rows.map(({ personId }) => personId);
  expect(await present()).toEqual([administrator.personId]);
  const other = await signInAs(started, administrator.name, administrator.secret);
  expect((await ask(window, 'access.present', {})).rows[0]?.windows).toBe(2);
  await ask(other, 'access.signOut', {});
  expect((await ask(window, 'access.present', {})).rows[0]?.windows).toBe(1);
});
