import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { CampaignInput, JobInput } from '../../core/contract/campaign.ts';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { campaignOf, saveCampaign, saveJob } from './campaign.ts';
import { temporaryFolder } from './folder.ts';
import { enterPlant, type TestPlant } from './records.ts';

let started: TestService;
let plant: TestPlant;
let campaignId: string;

beforeEach(async () => {
  started = startService(temporaryFolder());
  await createEmpty(started);
  plant = await enterPlant(started);
  campaignId = (await saveCampaign(started, campaignOf(plant))).id;
});
afterEach(() => started.service.close());

const page = { page: 1, pageSize: 50 };
const job = (number: string, changes: Partial<JobInput> = {}) =>
  saveJob(started, plant, { campaignId, number, ...changes });

/** Sends something that must be refused, and sees that nothing was recorded. */
async function refused(name: 'campaign.save' | 'job.save', input: object) {
  const { events } = await ask(started, 'register.state', {});
  const error = await askBadly(started, name, { key: key(), id: null, version: null, ...input });
  expect((await ask(started, 'register.state', {})).events).toBe(events);
  return error;
}

const badCampaign = (changes: Partial<CampaignInput>) =>
  refused('campaign.save', { data: { ...campaignOf(plant), name: 'Another', ...changes } });
const badJob = (changes: Partial<JobInput>) =>
  refused('job.save', {
    data: { campaignId, number: 'N-9', jointId: plant.jointId, scope: 'make', ...changes },
    personId: plant.personId,
    reason: 'on the list',
  });

describe('a campaign', () => {
  test('keeps its crews, sets and test packs, and counts its jobs', async () => {
    await job('N-1');
    const second = await job('N-2');
    await saveJob(started, plant, { campaignId, number: 'N-2', dropped: true }, second);
    const row = await ask(started, 'campaign.get', { id: campaignId });
    expect(row).toMatchObject({
      version: 1,
      jobs: 1,
      dropped: 1,
      data: { name: 'Spring', travelMinutes: 15, crews: [{ name: 'Day' }], sets: [{ name: 'Set 1' }] },
    });
    const list = await ask(started, 'campaign.list', { closed: false, ...page });
    expect(list.rows.map(({ id }) => id)).toEqual([campaignId]);
  });

  test.each<[string, Partial<CampaignInput>, string, RegExp]>([
    ['ends before it starts', { endsAt: '2026-03-01T06:00:00+01:00' }, 'data.endsAt', /later than the start/],
    ['lasts for years', { endsAt: '2029-03-01T06:00:00+01:00' }, 'data.endsAt', /at most 400 days/],
    ['has a name that is taken', { name: 'spring' }, 'data.name', /not in use/],
    ['names a pack twice', { testPacks: ['P1', 'p1'] }, 'data.testPacks', /at most once/],
  ])('that %s is refused', async (_, changes, field, allowed) => {
    const error = await badCampaign(changes);
    expect(error.details).toEqual([
      { field, value: expect.any(String), allowed: expect.stringMatching(allowed) },
    ]);
  });

  test('names people and tools of the register only, and hours of the clock', async () => {
    const [crew] = campaignOf(plant).crews ?? [];
    if (crew === undefined) throw new Error('fixture: no crew');
    const stranger = '00000000-0000-7000-8000-000000000001';
    const unknown = await badCampaign({ crews: [{ ...crew, personIds: [stranger] }] });
    expect(unknown).toMatchObject({
      code: 'not_found',
      details: [{ field: 'data.crews.0.personIds.0', value: stranger }],
    });
    const hours = await badCampaign({ crews: [{ ...crew, shifts: [{ from: '25:00', to: '06:00' }] }] });
    expect(hours.details).toEqual([
      {
        field: 'data.crews.0.shifts.0.from',
        value: '25:00',
        allowed: 'a time of day as HH:MM, 00:00 to 23:59',
      },
    ]);
  });

  test('keeps the crews its jobs name', async () => {
    await job('N-1', { crews: ['Day'] });
    const error = await refused('campaign.save', {
      id: campaignId,
      version: 1,
      data: { ...campaignOf(plant), crews: [] },
    });
    expect(error.details).toEqual([
      { field: 'data.crews', value: 'Day', allowed: 'kept: job N-1 names it; change that job first' },
    ]);
  });
});

test('a list of jobs is previewed against its campaign, written with its name, and written again changes nothing', async () => {
  const text = 'number,joint,scope,after\nN-1,j-0001,break and make,\nN-2,J-0001,make,N-1\nN-3,J-77,make,';
  const file = {
    kind: 'jobs' as const,
    fileName: 'scope.csv',
    content: Buffer.from(text).toString('base64'),
    options: {
      encoding: 'utf-8' as const,
      delimiter: ',' as const,
      decimalSign: '.' as const,
      units: { length: 'mm', stress: 'MPa', pressure: 'bar', torque: 'N.m', temperature: 'degC' },
    },
    campaignId,
  };
  const report = await ask(started, 'import.preview', file);
  expect(report).toMatchObject({ fileFault: null, good: 2, added: 2, faultyRows: 1 });
  const { fingerprint } = report;
  const write = (leaveOutFaulty: boolean) => ({ key: key(), data: { ...file, fingerprint, leaveOutFaulty } });
  expect((await askBadly(started, 'import.confirm', write(false))).code).toBe('invalid_input');
  const done = await ask(started, 'import.confirm', write(true));
  expect(done).toMatchObject({ added: 2, changed: 0, leftOut: 1 });
  const { rows } = await ask(started, 'job.changes', { campaignId, ...page });
  expect(rows.map(({ number, reason, by }) => [number, reason, by])).toEqual([
    ['N-2', 'list scope.csv', 'not recorded'],
    ['N-1', 'list scope.csv', 'not recorded'],
  ]);
  const again = await ask(started, 'import.confirm', write(true));
  expect(again).toMatchObject({ added: 0, changed: 0, unchanged: 2 });
  const other = { ...file, campaignId: plant.jointId };
  expect(await askBadly(started, 'import.preview', other)).toMatchObject({
    code: 'not_found',
    details: [{ field: 'campaignId', value: plant.jointId }],
  });
});

describe('a job', () => {
  test('stands on the list with its joint, and is found by number, tag and pack', async () => {
    await job('N-10', { testPack: 'TP-1' });
    await job('N-9', { testPack: 'TP-2', system: 'Steam' });
    const list = (more: object) => ask(started, 'job.list', { campaignId, ...more, ...page });
    const numbers = async (more: object) => (await list(more)).rows.map(({ data }) => data.number);
    expect(await numbers({})).toEqual(['N-9', 'N-10']);
    expect(await numbers({ testPack: 'tp-1' })).toEqual(['N-10']);
    expect(await numbers({ system: 'steam' })).toEqual(['N-9']);
    expect(await numbers({ text: 'j-0001 n-9' })).toEqual(['N-9']);
    expect(await numbers({ scope: 'break' })).toEqual([]);
    const [row] = (await list({})).rows;
    expect(row).toMatchObject({ tag: 'J-0001', state: 'unassessed', criticality: null });
  });

  test('tells what each version changed, by whom and why', async () => {
    const first = await job('N-1');
    const data = { campaignId, number: 'N-1', scope: 'break' as const, gapMinutes: 90 };
    await saveJob(started, plant, data, first, 'gasket is late');
    const { rows, total } = await ask(started, 'job.changes', { campaignId, ...page });
    expect(total).toBe(2);
    expect(rows[0]).toMatchObject({ number: 'N-1', version: 2, by: 'A. Person', reason: 'gasket is late' });
    expect(rows[0]?.changes).toEqual([
      { field: 'scope', from: 'break and make', to: 'break' },
      { field: 'work between', from: '', to: '90 min' },
    ]);
    expect(rows[1]?.changes).toContainEqual({ field: 'number', from: '', to: 'N-1' });
    const later = { campaignId, since: '2027-01-01T00:00:00Z', ...page };
    expect(await ask(started, 'job.changes', later)).toEqual({ rows: [], total: 0 });
  });

  test.each<[string, Partial<JobInput>, string, RegExp]>([
    [
      'a window that ends before it starts',
      { earliest: '2026-04-02T06:00:00+02:00', latest: '2026-04-01T06:00:00+02:00' },
      'data.latest',
      /later than the earliest start/,
    ],
    ['a window after the campaign', { earliest: '2026-06-02T06:00:00+02:00' }, 'data.earliest', /before the/],
    ['a crew nobody knows', { crews: ['Night'] }, 'data.crews', /one of: Day/],
    ['a bolt set the joint lacks', { boltSet: 2 }, 'data.boltSet', /0 to 0, as J-0001 has/],
    ['a job nobody knows before it', { after: ['N-77'] }, 'data.after', /numbers of jobs of this campaign/],
    ['itself before it', { after: ['N-9'] }, 'data.after', /without a ring: N-9 waits for N-9/],
    [
      'a part fixed that it does not have',
      { locked: [{ part: 'break', set: 'Set 1', crew: 'Day', startsAt: '2026-04-01T08:00:00+02:00' }] },
      'data.locked',
      /"make" alone/,
    ],
  ])('with %s is refused by name', async (_, changes, field, allowed) => {
    const error = await badJob(changes);
    expect(error.details).toEqual([
      { field, value: expect.any(String), allowed: expect.stringMatching(allowed) },
    ]);
  });

  test('of an unknown joint, with a number that is taken or in a closed campaign is refused', async () => {
    const stranger = '00000000-0000-7000-8000-000000000001';
    expect(await badJob({ jointId: stranger })).toMatchObject({
      code: 'not_found',
      details: [{ field: 'data.jointId', value: stranger }],
    });
    const taken = await job('N-9');
    expect(await badJob({ number: 'n-9' })).toMatchObject({ code: 'duplicate' });
    await ask(started, 'campaign.save', {
      key: key(),
      id: campaignId,
      version: 1,
      data: { ...campaignOf(plant), closed: true },
    });
    const closed = await askBadly(started, 'job.save', {
      key: key(),
      id: taken.id,
      version: 1,
      data: { campaignId, number: 'N-9', jointId: plant.jointId, scope: 'make' },
      personId: plant.personId,
      reason: 'late',
    });
    expect(closed.details[0]).toMatchObject({ field: 'data.campaignId', value: 'Spring' });
  });

  test('that closes a ring of jobs names the ring', async () => {
    await job('N-1');
    await job('N-2', { after: ['N-1'] });
    const first = (await ask(started, 'job.list', { campaignId, ...page })).rows[0];
    const error = await askBadly(started, 'job.save', {
      key: key(),
      id: first?.id,
      version: 1,
      data: { ...first?.data, after: ['N-2'] },
      personId: plant.personId,
      reason: 'order',
    });
    expect(error.details[0]?.allowed).toMatch(
      /N-1 waits for N-2 waits for N-1|N-2 waits for N-1 waits for N-2/,
    );
  });
});

test('materials are those of the joint, with what is not known named', async () => {
  await job('N-1');
  await job('N-2', { scope: 'break' });
  await job('N-3', { dropped: true });
  const { rows, notKnown, finding } = await ask(started, 'campaign.materials', { id: campaignId });
  expect(rows.map(({ kind, what, pieces, jobs }) => [kind, what, pieces, jobs])).toEqual([
    ['gasket', 'NPS 8 Class 300, spiral wound, inner ring, 3.2 mm', 1, ['N-1']],
    ['stud', '7/8-9 UNC, ASTM A193 B7, 139.7 mm long', 24, ['N-1', 'N-2']],
    ['nut', expect.stringMatching(/^7\/8-9 UNC, 36\.5\d? mm across flats$/), 48, ['N-1', 'N-2']],
    ['lubricant', 'nickel-based anti-seize', 12, ['N-1']],
  ]);
  expect(notKnown.map(({ number, words }) => [number, words])).toEqual([
    ['N-1', 'studs that may seize: too few openings on record'],
    ['N-2', 'studs that may seize: too few openings on record'],
  ]);
  expect(finding).toContain('2 jobs: 1 new gasket of 1 kind, 24 studs of 1 kind with 0 spare.');
});
