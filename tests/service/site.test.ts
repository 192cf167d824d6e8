import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { PassPlanInput, SiteRowInput } from '../../core/contract/site.ts';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { projectedTables, rebuilt, rowsOf } from './rebuild.ts';
import {
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
beforeEach(async () => {
  folder = temporaryFolder();
  started = startService(folder);
  await createEmpty(started);
  plant = await enterPlant(started);
  await certify(started, plant);
});
afterEach(() => started.service.close());

const q = <U extends string>(text: string, unit: U) => ({ text, unit });
const fresh = () => ({ key: key(), id: null, version: null });

const HALVES: PassPlanInput = {
  name: 'Halves in groups',
  source: 'invented procedure 7',
  groupSize: 3,
  steps: [
    { name: 'Half', fraction: q('50', 'percent'), order: 'groups', tools: 2, stopWhen: 'the tool stalls' },
    { name: 'Full', fraction: q('100', 'percent'), order: 'circular', tools: 1, stopWhen: 'no nut turns' },
  ],
  checks: ['gap at four places after the first step'],
};

const GIRTH: SiteRowInput = {
  kind: 'flange',
  key: 'Girth flange E-310',
  source: 'invented drawing 310-4',
  count: 36,
  thread: '1-1/8-8 8UN',
  circle: q('1219', 'mm'),
  studLength: null,
  grip: q('210', 'mm'),
};

const ALLOY: SiteRowInput = {
  kind: 'stud grade',
  key: 'Site alloy 1',
  source: 'invented data sheet',
  bands: [
    {
      over: q('0', 'in'),
      upTo: q('1', 'in'),
      yieldStrength: q('640', 'MPa'),
      tensileStrength: q('800', 'MPa'),
    },
    { over: q('1', 'in'), upTo: q('2', 'in'), yieldStrength: q('600', 'MPa') },
  ],
};

const GASKET: SiteRowInput = {
  kind: 'gasket',
  key: 'corrugated, graphite faced',
  source: 'invented data sheet',
  values: { thickness: q('3', 'mm'), seatingStress: q('50', 'MPa') },
};

const PASTE: SiteRowInput = {
  kind: 'lubricant',
  key: 'site paste',
  source: 'invented test 12',
  values: {
    nutFactor: q('0.15', 'one'),
    nutFactorCv: q('8', 'percent'),
    frictionThread: null,
    frictionBearing: null,
    evidence: 'measured',
  },
};

test('rows of all four kinds are kept with their source and offered beside the shipped ones', async () => {
  for (const data of [GIRTH, ALLOY, GASKET, PASTE]) {
    const written = await ask(started, 'siteRow.save', { ...fresh(), data });
    expect(written.version).toBe(1);
  }
  const { rows, total } = await ask(started, 'siteRow.list', { kind: null, text: '' });
  expect(total).toBe(4);
  expect(rows.map(({ data }) => data.kind)).toEqual(['flange', 'gasket', 'lubricant', 'stud grade']);
  const found = await ask(started, 'siteRow.list', { kind: 'lubricant', text: 'TEST 12' });
  expect(found.rows.map(({ data }) => data.key)).toEqual(['site paste']);
  const choices = await ask(started, 'reference.choices', {});
  expect(choices.siteRows).toHaveLength(4);
  expect(choices.siteRows.every(({ origin }) => origin === 'site')).toBe(true);
  expect(choices.grades).toContain('Site alloy 1');
  expect(choices.grades).toContain('ASTM A193 B7');
});

test('a retired row is kept, but not offered any more', async () => {
  const { id } = await ask(started, 'siteRow.save', { ...fresh(), data: GIRTH });
  const data = { ...GIRTH, retired: true };
  expect(await ask(started, 'siteRow.save', { key: key(), id, version: 1, data })).toMatchObject({
    version: 2,
  });
  expect((await ask(started, 'reference.choices', {})).siteRows).toEqual([]);
  expect((await ask(started, 'siteRow.list', { kind: null, text: '' })).rows[0]?.data.retired).toBe(true);
});

test('an edit from an older version is a conflict and changes nothing', async () => {
  const { id } = await ask(started, 'siteRow.save', { ...fresh(), data: ALLOY });
  await ask(started, 'siteRow.save', { key: key(), id, version: 1, data: { ...ALLOY, source: 'sheet B' } });
  const late = { key: key(), id, version: 1, data: { ...ALLOY, source: 'sheet C' } };
  expect((await askBadly(started, 'siteRow.save', late)).code).toBe('conflict');
  const { rows } = await ask(started, 'siteRow.list', { kind: 'stud grade', text: '' });
  expect(rows[0]).toMatchObject({ version: 2, data: { source: 'sheet B' } });
});

test.each([
  ['stud grade', { ...ALLOY, key: 'A193 Gr B7' }, 'ASTM A193 B7'],
  ['flange', { ...GIRTH, key: 'asme b16.5 nps 8 class 300' }, 'ASME B16.5 NPS 8 Class 300'],
])('a %s that ships can not be overwritten, and the answer names it', async (_, data, shipped) => {
  const error = await askBadly(started, 'siteRow.save', { ...fresh(), data });
  expect(error.code).toBe('duplicate');
  expect(error.message).toContain(shipped);
  expect((await ask(started, 'siteRow.list', { kind: null, text: '' })).total).toBe(0);
});

test('a row needs a source, keeps its name, and has its name to itself', async () => {
  expect(
    await askBadly(started, 'siteRow.save', { ...fresh(), data: { ...GIRTH, source: ' ' } }),
  ).toMatchObject({
    code: 'invalid_input',
    details: [{ field: 'data.source', allowed: 'needed' }],
  });
  const { id } = await ask(started, 'siteRow.save', { ...fresh(), data: GIRTH });
  const renamed = { key: key(), id, version: 1, data: { ...GIRTH, key: 'Other' } };
  expect(await askBadly(started, 'siteRow.save', renamed)).toMatchObject({
    code: 'invalid_input',
    details: [{ field: 'data.key' }],
  });
  const twin = { ...fresh(), data: { ...GIRTH, key: 'GIRTH  flange e-310' } };
  expect((await askBadly(started, 'siteRow.save', twin)).code).toBe('duplicate');
});

test('strength ranges that overlap or end before they begin are refused by field', async () => {
  const [first, second] = ALLOY.bands;
  const overlapping = { ...ALLOY, bands: [first, { ...second, over: q('0.5', 'in') }] };
  expect((await askBadly(started, 'siteRow.save', { ...fresh(), data: overlapping })).details).toMatchObject([
    { field: 'data.bands.1.over' },
  ]);
  const reversed = { ...ALLOY, bands: [{ ...first, over: q('2', 'in') }] };
  expect((await askBadly(started, 'siteRow.save', { ...fresh(), data: reversed })).details).toMatchObject([
    { field: 'data.bands.0.upTo' },
  ]);
});

test('a joint takes studs and circle from the site’s flange and its strength from the site’s grade', async () => {
  await ask(started, 'siteRow.save', { ...fresh(), data: GIRTH });
  await ask(started, 'siteRow.save', { ...fresh(), data: ALLOY });
  const base = jointA(plant.unitId, 'J-0310');
  const bolting = {
    ...base.bolting,
    count: null,
    thread: null,
    circle: null,
    grade: 'Site alloy 1',
    yieldStrength: null,
  };
  const flange = { kind: 'custom' as const, description: 'girth flange', siteRow: 'Girth flange E-310' };
  const { id } = await saveJoint(started, { ...base, flange, bolting });
  const value = async (name: string) =>
    (await ask(started, 'joint.get', { id })).resolved.find((one) => one.name === name);
  expect(await value('Studs')).toMatchObject({
    si: 36,
    source: 'Girth flange E-310, site table: invented drawing 310-4',
  });
  expect(await value('Yield strength')).toMatchObject({ si: 600e6 });
  const listed = async () =>
    (
      await ask(started, 'joint.list', {
        text: 'J-0310',
        unitId: null,
        sort: 'tag',
        direction: 'asc',
        page: 1,
        pageSize: 5,
      })
    ).rows[0]?.bolting;
  expect(await listed()).toBe('36 × 1-1/8-8 8UN');
  const row = (await ask(started, 'siteRow.list', { kind: 'flange', text: '' })).rows[0];
  await ask(started, 'siteRow.save', {
    key: key(),
    id: row?.id ?? '',
    version: 1,
    data: { ...GIRTH, count: 40 },
  });
  expect(await listed()).toBe('40 × 1-1/8-8 8UN');
  await expectRebuilt();
});

test('a joint can not name a site flange that is not there', async () => {
  const flange = { kind: 'custom' as const, description: 'girth flange', siteRow: 'nowhere' };
  const data = { ...jointA(plant.unitId, 'J-0311'), flange };
  expect(await askBadly(started, 'joint.save', { ...fresh(), data })).toMatchObject({
    code: 'not_found',
    details: [{ field: 'data.flange.siteRow', value: 'nowhere' }],
  });
});

test('a site’s plan is refused until somebody approves it, and again after an edit', async () => {
  const { id: planId } = await ask(started, 'plan.save', { ...fresh(), data: HALVES });
  const data = settingFor(plant, { planId });
  const issue = { key: key(), data, personId: plant.personId };
  const refused = await askBadly(started, 'setting.issue', issue);
  expect(refused).toMatchObject({ code: 'refused', details: [{ field: 'plan_not_approved' }] });

  const approval = { key: key(), id: planId, version: 1, personId: plant.personId };
  await ask(started, 'plan.approve', approval);
  const { id } = await ask(started, 'setting.issue', { ...issue, key: key() });
  const { card } = await ask(started, 'setting.get', { id });
  expect(card.planName).toBe('Halves in groups');
  expect(card.passes.map(({ name, fraction, tools }) => [name, fraction, tools])).toEqual([
    ['Snug', null, 1],
    ['Half', 0.5, 2],
    ['Full', 1, 1],
  ]);
  expect(card.passes[1]?.groups).toEqual([
    [1, 2, 3],
    [7, 8, 9],
    [4, 5, 6],
    [10, 11, 12],
  ]);

  const edited = { ...HALVES, checks: [] };
  await ask(started, 'plan.save', { key: key(), id: planId, version: 1, data: edited });
  const plan = (await ask(started, 'plan.list', {})).rows.find((row) => row.id === planId);
  expect(plan).toMatchObject({ origin: 'site', version: 2, approved: null });
  expect((await askBadly(started, 'setting.issue', { ...issue, key: key() })).code).toBe('refused');
  expect((await ask(started, 'setting.get', { id })).card).toEqual(card);
  await expectRebuilt();
});

test('an approval is for the version a person saw, once, by a person on the register', async () => {
  const { id } = await ask(started, 'plan.save', { ...fresh(), data: HALVES });
  const approve = (version: number, personId = plant.personId) => ({ key: key(), id, version, personId });
  expect((await askBadly(started, 'plan.approve', approve(2))).code).toBe('conflict');
  expect((await askBadly(started, 'plan.approve', approve(1, id))).code).toBe('not_found');
  await ask(started, 'plan.approve', approve(1));
  expect((await askBadly(started, 'plan.approve', approve(1))).message).toContain('A. Person has approved');
  const choices = await ask(started, 'reference.choices', {});
  expect(choices.passPlans.find((plan) => plan.id === id)).toMatchObject({ origin: 'site', approved: true });
  expect(choices.passPlans[0]).toMatchObject({ origin: 'shipped', approved: true });
});

test('a plan that ships can be overwritten neither by name nor by id', async () => {
  const named = await askBadly(started, 'plan.save', {
    ...fresh(),
    data: { ...HALVES, name: 'staged THIRDS' },
  });
  expect(named).toMatchObject({ code: 'duplicate', details: [{ field: 'data.name' }] });
  expect(named.message).toContain('Staged thirds');
  const byId = await askBadly(started, 'plan.save', {
    key: key(),
    id: 'staged-thirds',
    version: 1,
    data: HALVES,
  });
  expect(byId).toMatchObject({ code: 'duplicate', details: [{ field: 'id' }] });
});

test('a plan rises to the whole target, and groups need their size', async () => {
  const [half, full] = HALVES.steps;
  const fields = async (data: unknown) =>
    (await askBadly(started, 'plan.save', { ...fresh(), data })).details.map(({ field }) => field);
  expect(await fields({ ...HALVES, steps: [half] })).toEqual(['data.steps.0.fraction']);
  expect(await fields({ ...HALVES, steps: [full, half] })).toEqual([
    'data.steps.1.fraction',
    'data.steps.1.fraction',
  ]);
  expect(await fields({ ...HALVES, groupSize: null })).toEqual(['data.groupSize']);
  expect(await fields({ ...HALVES, steps: [] })).toContain('data.steps');
});

test('work done by an unapproved plan is recorded and flagged', async () => {
  const { id: planId } = await ask(started, 'plan.save', { ...fresh(), data: HALVES });
  const approval = { key: key(), id: planId, version: 1, personId: plant.personId };
  await ask(started, 'plan.approve', approval);
  const data = settingFor(plant, { planId });
  const setting = await ask(started, 'setting.issue', { key: key(), data, personId: plant.personId });
  await ask(started, 'plan.save', { key: key(), id: planId, version: 1, data: { ...HALVES, checks: [] } });
  const { id } = await ask(started, 'event.recordTightening', {
    key: key(),
    data: tighteningOf(plant, { settingId: setting.id }),
  });
  expect((await ask(started, 'event.get', { id })).flags).toContain('refusal: Pass plan not approved');
});

test('a retired plan is not offered and not approved, and a setting issued with it keeps it', async () => {
  const { id: planId } = await ask(started, 'plan.save', { ...fresh(), data: HALVES });
  const approve = (version: number) => ({ key: key(), id: planId, version, personId: plant.personId });
  await ask(started, 'plan.approve', approve(1));
  const data = settingFor(plant, { planId });
  const { id } = await ask(started, 'setting.issue', { key: key(), data, personId: plant.personId });
  const offered = async () => (await ask(started, 'reference.choices', {})).passPlans.map((plan) => plan.id);
  expect(await offered()).toContain(planId);

  const retired = { key: key(), id: planId, version: 1, data: { ...HALVES, retired: true } };
  expect(await ask(started, 'plan.save', retired)).toMatchObject({ version: 2 });
  expect(await offered()).not.toContain(planId);
  expect((await ask(started, 'plan.list', {})).rows.at(-1)).toMatchObject({ data: { retired: true } });
  expect(await askBadly(started, 'plan.approve', approve(2))).toMatchObject({
    code: 'invalid_input',
    details: [{ value: HALVES.name, allowed: 'a plan that is not retired' }],
  });
  const card = await ask(started, 'setting.compute', data);
  expect(card.issuable).toBe(false);
  const sheet = await ask(started, 'setting.get', { id });
  expect(sheet.card.passes.map(({ name }) => name)).toEqual(['Snug', 'Half', 'Full']);
  expect((await ask(started, 'setting.recompute', { id })).differences).toEqual([]);
});

test('a plan kept before plans could be retired is not retired, and saving it unchanged writes nothing', async () => {
  const { id } = await ask(started, 'plan.save', { ...fresh(), data: HALVES });
  const register = new Database(join(folder, 'register.sqlite'));
  register.prepare("update pass_plan set data = json_remove(data, '$.retired') where id = ?").run(id);
  register.close();
  expect((await ask(started, 'plan.list', {})).rows.at(-1)).toMatchObject({ data: { retired: false } });
  const again = await ask(started, 'plan.save', { key: key(), id, version: 1, data: HALVES });
  expect(again.version).toBe(1);
});

/** EN 1092-1 rows with one source only are in the tables; the first that resolves is taken. */
async function doubtfulJoint() {
  const base = jointA(plant.unitId, 'J-0400');
  const choices = await ask(started, 'reference.choices', {});
  const standards = choices.flangeStandards.flatMap(({ standard, sizes }) =>
    sizes.flatMap(({ size, ratings }) => ratings.map((rating) => ({ standard, size, rating }))),
  );
  const bolting = { ...base.bolting, count: null, thread: null, circle: null };
  const saved = await saveJoint(started, base);
  let version = saved.version ?? 1;
  for (const { standard, size, rating } of standards) {
    const flange = {
      kind: 'standard',
      standard,
      size,
      rating,
      facing: 'raised face',
    } as (typeof base)['flange'];
    const edit = { key: key(), id: saved.id, version, data: { ...base, flange, bolting } };
    version = (await ask(started, 'joint.save', edit)).version ?? version;
    const card = await ask(started, 'setting.compute', settingFor(plant, { jointId: saved.id }));
    const found = card.findings.find(
      ({ code, confirm }) => code === 'table_value_unconfirmed' && confirm?.table === standard,
    );
    if (found?.confirm) return { jointId: saved.id, confirm: found.confirm };
  }
  throw new Error('no row of the flange tables waits for a confirmation');
}

test('a confirmed table value no longer stands against a setting, and the card says who confirmed it', async () => {
  const { jointId, confirm } = await doubtfulJoint();
  const data = { ...confirm, personId: plant.personId, sourceSeen: 'own copy of the standard' };
  await ask(started, 'tableValue.confirm', { key: key(), data });
  const card = await ask(started, 'setting.compute', settingFor(plant, { jointId }));
  const about = (code: string) =>
    card.findings.filter((finding) => finding.code === code && finding.source.startsWith(confirm.table));
  expect(about('table_value_unconfirmed')).toEqual([]);
  expect(about('table_value_confirmed')[0]).toMatchObject({ severity: 'note', confirm: null });
  expect(about('table_value_confirmed')[0]?.detail).toContain(
    'A. Person, 2026-03-16, own copy of the standard',
  );
  const { resolved } = await ask(started, 'joint.get', { id: jointId });
  expect(resolved.some(({ status }) => status?.endsWith('confirmed by A. Person'))).toBe(true);
  expect((await ask(started, 'tableValue.list', {})).rows).toHaveLength(confirm.values.length);
  await expectRebuilt();
});

test('only a value that the table has now can be confirmed', async () => {
  const confirm = { table: 'ASME B16.5', key: '8 | 300', personId: plant.personId, sourceSeen: 'own copy' };
  const badly = async (change: object) => {
    const values = [{ field: 'count', value: '12' }];
    return askBadly(started, 'tableValue.confirm', { key: key(), data: { ...confirm, values, ...change } });
  };
  expect(await badly({ key: '8 | 301' })).toMatchObject({
    code: 'not_found',
    details: [{ field: 'data.key' }],
  });
  expect(await badly({ values: [{ field: 'colour', value: 'x' }] })).toMatchObject({
    details: [{ field: 'data.values.0.field' }],
  });
  expect(await badly({ values: [{ field: 'count', value: '13' }] })).toMatchObject({
    details: [{ field: 'data.values.0.value', allowed: '12, as the table has it now' }],
  });
  expect((await badly({ personId: plant.jointId })).code).toBe('not_found');
  expect((await ask(started, 'tableValue.list', {})).total).toBe(0);
});

/** Everything outside the log follows from the log. */
async function expectRebuilt(): Promise<void> {
  const source = new Database(join(folder, 'register.sqlite'), { readonly: true });
  const copy = await rebuilt(source);
  const tables = projectedTables(source);
  expect(tables).toEqual(expect.arrayContaining(['site_row', 'pass_plan', 'table_confirmation']));
  for (const table of tables) expect(rowsOf(copy, table), table).toEqual(rowsOf(source, table));
  source.close();
}
