import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { EventBody, EventDataByKind } from '../../electron/service/chain/events.ts';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { addMember, beginWith, type Member } from './crew.ts';
import { temporaryFolder } from './folder.ts';
import {
  breakoutOf,
  certify,
  enterPlant,
  jointA,
  saveJoint,
  settingFor,
  type TestPlant,
  tighteningOf,
} from './records.ts';

let folder: string;
let started: TestService;
let plant: TestPlant;
let tightTarget: string;
let engineer: Member;
let planner: Member;
let technician: Member;
let administrator: Member;

const REASON = 'compared with the master gauge this morning, 0.4 % apart';
const LAPSED = { code: 'certificate_lapsed', reason: REASON } as const;

beforeAll(async () => {
  folder = temporaryFolder();
  started = startService(folder);
  await createEmpty(started);
  plant = await enterPlant(started);
  // Lapsed the day before the job.
  await certify(started, plant, { calibratedOn: '2025-03-16', validUntil: '2026-03-15' });
  const above = jointA(plant.unitId, 'J-0002');
  const limit = { text: '300', unit: 'MPa' } as const;
  ({ id: tightTarget } = await saveJoint(started, {
    ...above,
    limits: { ...above.limits, boltStressMax: limit },
  }));
});
afterAll(() => started.service.close());

const issue = (personId: string, overrides: readonly object[] = [], jointId = plant.jointId) => ({
  key: key(),
  data: { ...settingFor(plant), jointId },
  personId,
  overrides: [...overrides] as (typeof LAPSED)[],
});

test('without sign-in nobody overrides a refusal', async () => {
  const card = await ask(started, 'setting.compute', settingFor(plant));
  const refusals = card.findings.filter(({ severity }) => severity === 'refusal');
  expect(refusals.map(({ code }) => code)).toEqual(['certificate_lapsed']);
  const error = await askBadly(started, 'setting.issue', issue(plant.personId, [LAPSED]));
  expect(error.code).toBe('refused');
  expect(error.message).toMatch(/Without sign-in nobody overrides/);
});

describe('with sign-in', () => {
  beforeAll(async () => {
    administrator = await beginWith(started);
    engineer = await addMember(started, administrator, 'Ed Engineer', ['engineer']);
    planner = await addMember(started, administrator, 'Pia Planner', ['planner']);
    technician = await addMember(started, administrator, 'Tom Technician', ['technician']);
  });

  test('a planner issues, but overrides nothing; the refusal names who may', async () => {
    const error = await askBadly(planner.window, 'setting.issue', issue(planner.personId, [LAPSED]));
    expect(error).toEqual({
      code: 'refused',
      message: 'This is overridden by engineer alone: Certificate lapsed',
      details: [{ field: 'role', value: 'planner', allowed: 'engineer' }],
    });
  });

  test('a technician issues nothing at all', async () => {
    const error = await askBadly(technician.window, 'setting.issue', issue(technician.personId, [LAPSED]));
    expect(error.message).toMatch(/^This is for planner or engineer; Tom Technician has technician/);
  });

  test('without an override the refusal blocks the engineer too', async () => {
    const error = await askBadly(engineer.window, 'setting.issue', issue(engineer.personId));
    expect(error.message).toBe('The setting can not be issued: Certificate lapsed');
  });

  test.each([
    ['no reason', { code: 'certificate_lapsed', reason: '  ' }, 'invalid_input'],
    ['a finding that does not exist', { code: 'everything', reason: REASON }, 'invalid_input'],
    ['a refusal that does not stand', { code: 'hub_in_the_way', reason: REASON }, 'invalid_input'],
    ['a code that stands, but as a note', { code: 'check_not_made', reason: REASON }, 'invalid_input'],
  ])('%s is refused', async (_, override, code) => {
    const error = await askBadly(engineer.window, 'setting.issue', issue(engineer.personId, [override]));
    expect(error.code).toBe(code);
    expect(error.details[0]?.field).toMatch(/^overrides\.0\./);
  });

  test('a limit that is exceeded is nobody’s to override', async () => {
    const both = [LAPSED, { code: 'above_bolt_limit', reason: REASON }];
    const error = await askBadly(
      engineer.window,
      'setting.issue',
      issue(engineer.personId, both, tightTarget),
    );
    expect(error.message).toBe('Nobody may override this: Bolt stress above its limit');
    const one = await askBadly(
      engineer.window,
      'setting.issue',
      issue(engineer.personId, [LAPSED], tightTarget),
    );
    expect(one.message).toBe('The setting can not be issued: Bolt stress above its limit');
  });

  test('the engineer overrides with a reason, and event, sheet and list show it', async () => {
    const { id } = await ask(engineer.window, 'setting.issue', issue(engineer.personId, [LAPSED]));
    const sheet = await ask(engineer.window, 'setting.get', { id });
    expect(sheet.overrides).toEqual([
      {
        code: 'certificate_lapsed',
        reason: REASON,
        findings: [
          {
            subject: 'W-1',
            title: 'Certificate lapsed',
            detail: 'Certificate C-1 was valid until 2026-03-15; the job starts on 2026-03-16.',
          },
        ],
      },
    ]);
    expect(sheet.card.issuable).toBe(false);
    expect(sheet.issuedBy).toBe(engineer.name);
    const list = await ask(engineer.window, 'setting.list', { jointId: null, page: 1, pageSize: 10 });
    expect(list.rows.map(({ overrides }) => overrides)).toEqual([1]);
    expect((await ask(engineer.window, 'setting.recompute', { id })).equal).toBe(true);

    const record = { key: key(), data: tighteningOf(plant, { settingId: id }) };
    const { id: eventId } = await ask(technician.window, 'event.recordTightening', record);
    expect((await ask(technician.window, 'event.get', { id: eventId })).flags).toEqual([
      'refusal: Certificate lapsed; set aside in setting S-0001',
    ]);
    const without = { key: key(), data: tighteningOf(plant) };
    const { id: other } = await ask(technician.window, 'event.recordTightening', without);
    expect((await ask(technician.window, 'event.get', { id: other })).flags).toContain(
      'refusal: Certificate lapsed',
    );
  });
});

describe('competence on the job’s day', () => {
  const paper = (personId: string, changes: object) => ({
    key: key(),
    id: null,
    version: null,
    data: {
      personId,
      scheme: 'EN 1591-4',
      certificate: 'K-7',
      methods: ['hydraulic wrench' as const],
      issuedOn: '2024-01-10',
      ...changes,
    },
  });
  const recordedBy = async (...people: Member[]) => {
    const data = tighteningOf(plant, { personIds: people.map(({ personId }) => personId) });
    const { id } = await ask(technician.window, 'event.recordTightening', { key: key(), data });
    const { flags, notes } = await ask(technician.window, 'event.get', { id });
    return { flags: flags.filter((flag) => /qualified|competence/.test(flag)), notes };
  };

  test('nobody’s is known: a note for each, and no flag', async () => {
    expect(await recordedBy(technician, engineer)).toEqual({
      flags: [],
      notes: [
        'competence of Tom Technician not known: no competence is recorded',
        'competence of Ed Engineer not known: no competence is recorded',
      ],
    });
  });

  test('in date, over after five years, and for another method', async () => {
    const { window } = administrator;
    await ask(window, 'competence.save', paper(technician.personId, {}));
    await ask(window, 'competence.save', paper(planner.personId, { issuedOn: '2021-03-16' }));
    await ask(window, 'competence.save', paper(engineer.personId, { methods: ['tensioner'] }));
    expect(await recordedBy(technician)).toEqual({ flags: [], notes: [] });
    expect(await recordedBy(technician, planner, engineer)).toEqual({
      flags: [
        'competence of Pia Planner expired: EN 1591-4, K-7 counted until 2026-03-15',
        'Ed Engineer is not qualified: EN 1591-4, K-7: not for a hydraulic wrench',
      ],
      notes: [],
    });
  });

  test('where competences are kept, having none is flagged, on a breakout too', async () => {
    const none = 'competence of Ada Administrator not known: no competence is recorded';
    expect(await recordedBy(administrator)).toEqual({ flags: [none], notes: [] });
    const data = breakoutOf(plant, { personIds: [administrator.personId] });
    const { id } = await ask(technician.window, 'event.recordBreakout', { key: key(), data });
    expect((await ask(technician.window, 'event.get', { id })).flags).toContain(none);
  });

  test('the issuer’s is kept with the setting as it stood', async () => {
    const { id } = await ask(engineer.window, 'setting.issue', issue(engineer.personId, [LAPSED]));
    expect((await ask(engineer.window, 'setting.get', { id })).issuerCompetence).toEqual({
      state: 'not qualified',
      reason: 'EN 1591-4, K-7: not for a hydraulic wrench',
    });
    const database = new Database(join(folder, 'register.sqlite'), { readonly: true });
    const row = database.prepare<[string], { body: string }>('select body from event where id = ?').get(id);
    database.close();
    const body = JSON.parse(row?.body ?? '{}') as EventBody;
    expect(body.recordedBy).toBe(engineer.personId);
    expect((body.data as EventDataByKind['setting issued']).overrides).toHaveLength(1);
  });

  test('a register that keeps no competences and asks nobody who they are tells nothing of them', async () => {
    const other = startService(temporaryFolder());
    await createEmpty(other);
    const there = await enterPlant(other);
    const { id } = await ask(other, 'event.recordTightening', { key: key(), data: tighteningOf(there) });
    expect((await ask(other, 'event.get', { id })).notes).toEqual([]);
    await ask(other, 'competence.save', paper(there.personId, { issuedOn: '2020-01-01' }));
    const next = await ask(other, 'event.recordTightening', { key: key(), data: tighteningOf(there) });
    expect((await ask(other, 'event.get', { id: next.id })).flags).toContain(
      'competence of A. Person expired: EN 1591-4, K-7 counted until 2024-12-31',
    );
    await other.service.close();
  });
});
