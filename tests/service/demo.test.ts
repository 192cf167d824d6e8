import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { firstBreak } from '../../core/audit/chain.ts';
import { sha256 } from '../../electron/service/chain/sha256.ts';
import { CONFIRMED, UNCONFIRMED } from '../../seed/one-source.ts';
import { demoPlant } from '../../seed/plant.ts';
import { ask, key, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { projectedTables, rebuilt, rowsOf } from './rebuild.ts';

// Half past midnight at the site, the day before in UTC.
const NOW = '2027-02-09T23:30:00Z';
const TODAY = '2027-02-10';
const plant = demoPlant({ today: TODAY });
let folder: string;
let started: TestService;
let database: Database.Database;

beforeAll(async () => {
  folder = temporaryFolder();
  started = startService(folder, NOW);
  await ask(started, 'register.create', { key: key(), data: { content: 'demo' } });
  database = new Database(join(folder, 'register.sqlite'), { readonly: true });
});
afterAll(async () => {
  database.close();
  await started.service.close();
});

const count = (sql: string) =>
  database.prepare<[], { n: number }>(`select count(*) as n from ${sql}`).get()?.n;

test('the invented plant says that it is invented, and all of it is there', async () => {
  const state = await ask(started, 'register.state', {});
  expect(state).toMatchObject({
    state: 'open',
    demo: true,
    joints: plant.joints.length,
    tools: plant.tools.length,
  });
  expect(state.siteName).toMatch(/invented/i);
  expect(count('certificate')).toBe(plant.certificates.length);
  expect(count('tightening')).toBe(plant.events.filter(({ kind }) => kind === 'tightening').length);
  expect(count('breakout')).toBe(plant.events.filter(({ kind }) => kind === 'breakout').length);
  expect(count('event')).toBe(state.events);
  expect(count('job')).toBe(plant.campaign.jobs.length);
  expect(count(`event where kind = 'joint stepped'`)).toBe(plant.life.steps.length);
});

test('joints of the amine unit stand in states of every kind, one of them with work to decide', async () => {
  const states = database
    .prepare<[], { state: string; deviation: number }>(
      'select state, deviation_id is not null as deviation from joint_standing order by state',
    )
    .all();
  expect(states.map(({ state }) => state)).toEqual([
    'broken',
    'held',
    'in service',
    'in service',
    'isolated',
    'isolated',
    'leak watch',
    'made up',
    'scheduled',
  ]);
  expect(states.filter(({ deviation }) => deviation === 1)).toEqual([{ state: 'isolated', deviation: 1 }]);
});

test('the plant stands at the site’s today: one certificate lapsed the day before', async () => {
  const { rows } = await ask(started, 'tool.list', {
    text: '',
    class: null,
    sort: 'validUntil',
    direction: 'asc',
    page: 1,
    pageSize: 200,
  });
  const lapsed = rows.flatMap(({ validUntil }) =>
    validUntil !== null && validUntil < TODAY ? [validUntil] : [],
  );
  expect(lapsed).toEqual(['2027-02-09']);
  const latest = database
    .prepare<[], { at: string }>(
      `select happened_at as at from event where kind like '% recorded' order by happened_at_utc desc limit 1`,
    )
    .get()?.at;
  expect(latest).toBe(plant.events.at(-1)?.happenedAt);
});

test('most work followed an issued setting; where the card refused, the work is kept and flagged', () => {
  const withSetting = plant.events.filter((event) => event.withSetting).length;
  const followed =
    (count('tightening where setting_id is not null') ?? 0) +
    (count('breakout where setting_id is not null') ?? 0);
  expect(followed).toBe(count('setting'));
  expect(followed).toBeGreaterThan(withSetting / 2);
  expect(count(`tightening where flags like '%refusal%'`)).toBeGreaterThan(0);
  expect(count(`tightening where flags like '%Certificate lapsed%'`)).toBeGreaterThan(0);
});

test('work on rows nobody confirmed is recorded without a setting; on the confirmed ones it followed one', () => {
  const settingsOf = (tags: readonly string[], work: string) =>
    tags.map(
      (tag) => count(`${work} join joint on joint.id = ${work}.joint_id where joint.tag = '${tag}'`) ?? 0,
    );
  expect(count('table_confirmation')).toBe(plant.confirmations.flatMap(({ values }) => values).length);
  const sum = (counts: readonly number[]) => counts.reduce((all, one) => all + one, 0);
  expect(sum(settingsOf(UNCONFIRMED, 'setting'))).toBe(0);
  expect(sum(settingsOf(UNCONFIRMED, 'tightening'))).toBeGreaterThan(0);
  expect(sum(settingsOf(CONFIRMED, 'setting'))).toBeGreaterThan(0);
  expect(count(`tightening where flags like '%one source only, not confirmed%'`)).toBeGreaterThan(0);
});

test('its chain holds, its records run forward in time, and its columns can be rebuilt', async () => {
  const rows = database
    .prepare<
      [],
      { sequence: number; previous_hash: string; hash: string; body: string; recorded_at: string }
    >('select sequence, previous_hash, hash, body, recorded_at from event order by sequence')
    .all();
  const links = rows.map(({ previous_hash: previousHash, ...row }) => ({ ...row, previousHash }));
  expect(firstBreak(sha256, links)).toBeNull();
  const recorded = rows.map((row) => row.recorded_at);
  expect(recorded).toEqual(recorded.toSorted());
  const fresh = await rebuilt(database);
  for (const table of projectedTables(database)) {
    expect(rowsOf(fresh, table).length, table).toBe(rowsOf(database, table).length);
    expect(rowsOf(fresh, table), table).toEqual(rowsOf(database, table));
  }
});

test('every joint opens with its resolved values, history and chart', async () => {
  const list = await ask(started, 'joint.list', {
    text: '',
    unitId: null,
    sort: 'lastEvent',
    direction: 'desc',
    page: 1,
    pageSize: 200,
  });
  expect(list.total).toBe(plant.joints.length);
  for (const { id } of list.rows.slice(0, 20)) {
    const chart = await ask(started, 'joint.chart', { id });
    const history = await ask(started, 'joint.history', { id, page: 1, pageSize: 200 });
    expect(
      history.rows.filter(({ kind }) => kind === 'tightening' || kind === 'breakout').length,
    ).toBeGreaterThan(0);
    expect(chart.total).toBeGreaterThan(0);
    expect((await ask(started, 'joint.get', { id })).resolved.length).toBeGreaterThan(0);
  }
});
