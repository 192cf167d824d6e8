import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Answer } from '../../core/contract/errors.ts';
import { REQUEST_KINDS, REQUEST_NAMES, type RequestName } from '../../core/contract/names.ts';
import { requests } from '../../core/contract/requests.ts';
import type { Role } from '../../core/contract/roles.ts';
import { RIGHTS_MATRIX, ROLE_NAMES } from '../laws/rights-matrix.ts';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { addMember, beginWith, type Member } from './crew.ts';
import { temporaryFolder } from './folder.ts';
import { enterPlant, type TestPlant, tighteningOf } from './records.ts';
import { SOUND } from './sound-inputs.ts';

let started: TestService;
let plant: TestPlant;
const crew = new Map<Role, Member>();
let nobody: Member;

beforeAll(async () => {
  started = startService(temporaryFolder());
  await createEmpty(started);
  plant = await enterPlant(started);
  const administrator = await beginWith(started);
  crew.set('administrator', administrator);
  for (const role of ROLE_NAMES) {
    if (role !== 'administrator')
      crew.set(role, await addMember(started, administrator, `The ${role}`, [role]));
  }
  nobody = await addMember(started, administrator, 'Without a role', []);
});
afterAll(() => started.service.close());

function memberWith(role: Role): Member {
  const member = crew.get(role);
  if (member === undefined) throw new Error(`fixture: no ${role}`);
  return member;
}

/** What says that a role was not enough, apart from refusals of the handlers themselves. */
const byRole = (answer: Answer<unknown>) =>
  !answer.ok && answer.error.details.some(({ field }) => field === 'role');

test('every request that some role may not ask is sent with an input that is sound', () => {
  const narrow = RIGHTS_MATRIX.filter(({ who }) => typeof who !== 'string' && who.length < ROLE_NAMES.length);
  expect(narrow.length).toBeGreaterThan(20);
  for (const { request, choice } of narrow) {
    const sound = SOUND[request as RequestName];
    expect(sound, `add a sound input for ${request} to tests/service/sound-inputs.ts`).toBeDefined();
    const parsed = requests[request as RequestName].input.safeParse(
      sound?.({ plant, personId: plant.personId, choice }),
    );
    expect(parsed.error?.issues, request).toBeUndefined();
  }
});

describe.each(RIGHTS_MATRIX.filter(({ who }) => who !== 'anybody'))(
  '$request $choice',
  ({ request, choice, who }) => {
    const name = request as RequestName;
    const send = ({ window, personId }: Member) =>
      window.service.handle(name, SOUND[name]?.({ plant, personId, choice }) ?? {});

    test('each role through the service', async () => {
      for (const role of ROLE_NAMES) {
        const may = who === 'own' || who.includes(role);
        const answer = await send(memberWith(role));
        expect(byRole(answer), `${role}: ${JSON.stringify(answer)}`).toBe(!may);
        expect(answer.ok ? '' : answer.error.code).not.toBe('not_signed_in');
        expect(answer.ok ? '' : answer.error.code).not.toBe('internal');
        if (!may && !answer.ok) {
          expect(answer.error.code).toBe('refused');
          for (const allowed of who) expect(answer.error.message).toContain(allowed);
        }
      }
    });

    test('nobody signed in, before the input is looked at', async () => {
      expect(await started.service.handle(name, {})).toMatchObject({
        ok: false,
        error: { code: 'not_signed_in' },
      });
      expect(await started.service.handle(name, { nonsense: 1 }, 'x')).toMatchObject({
        ok: false,
        error: { code: 'not_signed_in' },
      });
    });
  },
);

test('somebody without a role reads and writes nothing', async () => {
  const list = { text: '', unitId: null, sort: 'tag', direction: 'asc', page: 1, pageSize: 10 };
  for (const [name, input] of [
    ['joint.list', list],
    ['person.list', {}],
    ['event.recordTightening', { key: key(), data: tighteningOf(plant) }],
  ] as const) {
    expect((await askBadly(nobody.window, name, input)).message, name).toMatch(/Without a role has no role/);
  }
  expect((await ask(nobody.window, 'access.state', {})).person?.roles).toEqual([]);
});

test('a refused write leaves nothing behind', async () => {
  const events = async () => (await ask(started, 'register.state', {})).events;
  const before = await events();
  const { window, personId } = memberWith('technician');
  for (const name of REQUEST_NAMES) {
    const sound = SOUND[name];
    const row = RIGHTS_MATRIX.find(({ request, who }) => request === name && !who.includes('technician'));
    if (sound === undefined || row === undefined || row.who === 'own') continue;
    expect(
      byRole(await window.service.handle(name, sound({ plant, personId, choice: row.choice }))),
      name,
    ).toBe(true);
  }
  expect(await events()).toBe(before);
});

describe('nobody signs for another', () => {
  const SIGNED: readonly (readonly [RequestName, Role, string | null])[] = [
    ['tool.move', 'keeper', 'issue'],
    ['tool.check', 'technician', null],
    ['attachment.add', 'technician', null],
    ['case.open', 'engineer', null],
    ['case.decide', 'engineer', null],
    ['case.close', 'engineer', null],
    ['joint.step', 'engineer', 'hold'],
    ['deviation.decide', 'engineer', null],
    ['event.sign', 'technician', 'did'],
    ['setting.issue', 'planner', null],
    ['job.save', 'planner', null],
    ['plan.approve', 'engineer', null],
    ['tableValue.confirm', 'engineer', null],
  ];

  test.each(SIGNED)('%s by a %s', async (name, role, choice) => {
    const member = memberWith(role);
    const other = memberWith(role === 'engineer' ? 'planner' : 'engineer');
    const error = await askBadly(
      member.window,
      name,
      SOUND[name]?.({ plant, personId: other.personId, choice }),
    );
    expect(error.code).toBe('refused');
    expect(error.message).toBe(`Nobody signs for another: ${member.name} is signed in`);
    expect(error.details).toEqual([
      { field: expect.stringMatching(/personId$|^data\.by$/), value: other.personId, allowed: member.name },
    ]);
    const own = await member.window.service.handle(
      name,
      SOUND[name]?.({ plant, personId: member.personId, choice }),
    );
    expect(JSON.stringify(own)).not.toMatch(/Nobody signs for another/);
  });

  test('every write with a field for one person is among them, or told by one of several', () => {
    const named = REQUEST_NAMES.filter((name) => {
      const person = (value: object): boolean =>
        Object.entries(value).some(
          ([field, inner]) =>
            field === 'personId' ||
            field === 'by' ||
            (typeof inner === 'object' && inner !== null && person(inner)),
        );
      const input = SOUND[name]?.({ plant, personId: plant.personId, choice: null });
      return REQUEST_KINDS[name] === 'write' && input !== undefined && person(input);
    });
    // These name whom it is about, not who does it.
    const about = ['access.giveSecret', 'competence.save'];
    expect(named.toSorted()).toEqual([...SIGNED.map(([name]) => name), ...about].toSorted());
  });
});
