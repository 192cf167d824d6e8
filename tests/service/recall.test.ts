import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { CaseDecision, CaseInput, CloseInput, DecisionInput } from '../../core/contract/recall.ts';
import { ask, askBadly, key } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { projectedTables, rebuilt, rowsOf } from './rebuild.ts';
import {
  caseOn,
  check,
  comparison,
  FAILED,
  FAILING,
  type RecallPlant,
  recallPlant,
  record,
  tighten,
} from './recall-plant.ts';
import { breakoutOf, certify } from './records.ts';

let plant: RecallPlant;
let folder: string;
beforeEach(async () => {
  folder = temporaryFolder();
  plant = await recallPlant(folder);
});
afterEach(() => plant.started.service.close());

const preview = (data: CaseInput) => ask(plant.started, 'case.preview', { data });
const open = (data: CaseInput) => ask(plant.started, 'case.open', { key: key(), data });
const get = (id: string) => ask(plant.started, 'case.get', { id });

const decision = (
  caseId: string,
  eventIds: string[],
  as: CaseDecision,
  reason = 'looked at in the field',
): DecisionInput => ({
  caseId,
  eventIds,
  decision: as,
  reason,
  personId: plant.personId,
  happenedAt: '2026-08-02T09:00:00+02:00',
});

const closing = (caseId: string, personId: string): CloseInput => ({
  caseId,
  personId,
  happenedAt: '2026-08-03T09:00:00+02:00',
  conclusion: 'all joints decided',
  measures: 'interval halved',
});

/** A broken load, one that is kept, and the failing certificate. */
async function planted() {
  const broken = await tighten(plant, { tag: 'J-BROKEN', day: '2026-05-01', bar: 270, least: 360 });
  const kept = await tighten(plant, { tag: 'J-KEPT', day: '2026-02-01' });
  const { id: certificateId } = await certify(plant.started, plant, FAILING);
  return { broken, kept, data: caseOn(plant, { kind: 'certificate', certificateId }) };
}

test('a case from opening to closing: barred at once, decided joint by joint, approved by somebody else, frozen', async () => {
  const { broken, kept, data } = await planted();
  const { id } = await open(data);
  const tool = await ask(plant.started, 'tool.get', { id: plant.tools.driveId ?? '' });
  expect(tool.data.status).toBe('quarantined');
  const opened = await get(id);
  expect(opened.summary).toMatchObject({
    number: 'OT-0001',
    state: 'open',
    subject: 'drive unit W-1',
    affected: 2,
    decided: 0,
    openedBy: 'A. Person',
  });
  expect(opened.recall.affected.map(({ eventId }) => eventId)).toEqual([broken.eventId, kept.eventId]);

  const release = await askBadly(plant.started, 'tool.move', {
    key: key(),
    data: {
      toolIds: [plant.tools.driveId],
      step: 'release from quarantine',
      happenedAt: '2026-08-20T09:00:00+02:00',
      personId: plant.personId,
      holderId: null,
      condition: null,
      place: '',
      reference: '',
      reason: 'back from the laboratory',
    },
  });
  expect(JSON.stringify(release.details)).toContain('OT-0001');

  const early = await askBadly(plant.started, 'case.close', {
    key: key(),
    data: closing(id, plant.approverId),
  });
  expect(early).toMatchObject({ code: 'refused', details: [{ value: expect.stringContaining('J-BROKEN') }] });

  await ask(plant.started, 'case.decide', {
    key: key(),
    data: decision(id, [broken.eventId], 'monitor', 'no leak seen'),
  });
  await ask(plant.started, 'case.decide', {
    key: key(),
    data: decision(id, [broken.eventId], 'retighten', 'weeps'),
  });
  const decided = await get(id);
  expect(decided.recall.affected[0]?.decision).toMatchObject({ decision: 'retighten', reason: 'weeps' });
  expect(decided.summary.decided).toBe(1);

  const alone = await askBadly(plant.started, 'case.close', {
    key: key(),
    data: closing(id, plant.personId),
  });
  expect(alone).toMatchObject({ code: 'refused', details: [{ field: 'data.personId' }] });
  await ask(plant.started, 'case.close', { key: key(), data: closing(id, plant.approverId) });

  const closed = await get(id);
  expect(closed.summary).toMatchObject({ state: 'closed', affected: 2, decided: 1 });
  expect(closed.closed).toMatchObject({ person: 'B. Engineer', measures: 'interval halved', since: [] });
  const load = decided.recall.affected[0]?.realLoad ?? Number.NaN;
  expect(closed.recall.affected[0]?.realLoad).toBe(Number(load.toPrecision(12)));

  const late = await tighten(plant, { tag: 'J-LATE', day: '2026-04-01' });
  const after = await get(id);
  expect(after.closed?.since).toEqual([expect.stringContaining('J-LATE')]);
  expect(after.recall).toEqual(closed.recall);
  // A good check that turns up after closing doesn't move the window the case was closed with.
  await check(plant, comparison(plant, '2026-04-15'));
  expect((await get(id)).closed?.since).toEqual(after.closed?.since);
  const lateRecord = await ask(plant.started, 'event.get', { id: late.eventId });
  expect(lateRecord.cases).toMatchObject([{ number: 'OT-0001', state: 'closed', worst: 'kept' }]);
  const again = await askBadly(plant.started, 'case.decide', {
    key: key(),
    data: decision(id, [late.eventId], 'accept'),
  });
  expect(again.code).toBe('refused');
  const list = (state: 'open' | 'closed') =>
    ask(plant.started, 'case.list', { state, page: 1, pageSize: 10 });
  expect((await list('open')).total).toBe(0);
  expect((await list('closed')).rows.map(({ number }) => number)).toEqual(['OT-0001']);
});

test('the columns of a case come out of the bodies alone', async () => {
  const { broken, data } = await planted();
  const { id } = await open(data);
  await ask(plant.started, 'case.decide', { key: key(), data: decision(id, [broken.eventId], 'retighten') });
  await ask(plant.started, 'case.close', { key: key(), data: closing(id, plant.approverId) });
  await plant.started.service.close();
  const source = new Database(join(folder, 'register.sqlite'), { readonly: true });
  const target = await rebuilt(source);
  const tables = projectedTables(source).filter((table) => table.startsWith('recall_'));
  expect(tables).toEqual(['recall_case', 'recall_closure', 'recall_decision']);
  for (const table of tables) {
    expect(rowsOf(source, table)).toHaveLength(1);
    expect(rowsOf(target, table)).toEqual(rowsOf(source, table));
  }
  source.close();
});

test('a record says which cases reach it', async () => {
  const { broken, kept, data } = await planted();
  const after = await tighten(plant, { tag: 'J-AFTER', day: '2026-06-20' });
  const none = await ask(plant.started, 'event.get', { id: broken.eventId });
  expect(none.cases).toEqual([]);
  const { id } = await open(data);
  const casesOf = async (eventId: string) => (await ask(plant.started, 'event.get', { id: eventId })).cases;
  expect(await casesOf(broken.eventId)).toEqual([
    { id, number: 'OT-0001', state: 'open', error: expect.closeTo(-0.08, 2), worst: 'broken' },
  ]);
  expect(await casesOf(kept.eventId)).toMatchObject([{ worst: 'kept' }]);
  expect(await casesOf(after.eventId)).toEqual([]);
});

test('a load that was broken out or tightened anew is told so and needs no decision', async () => {
  const { broken, kept, data } = await planted();
  const readings = Array.from({ length: 12 }, (_, index) => ({
    bolt: index + 1,
    outcome: 'turned' as const,
    torque: null,
    dialled: { text: '280', unit: 'bar' as const },
  }));
  await ask(plant.started, 'event.recordBreakout', {
    key: key(),
    data: breakoutOf(plant, { jointId: broken.jointId, happenedAt: '2026-07-01T10:00:00+02:00', readings }),
  });
  await record(plant, kept.jointId, '2026-07-02');
  const { affected } = await preview(data);
  expect(affected.map(({ tag, redoneAt }) => [tag, redoneAt?.slice(0, 10)])).toEqual([
    ['J-BROKEN', '2026-07-01'],
    ['J-KEPT', '2026-07-02'],
  ]);
  const { id } = await open(data);
  await ask(plant.started, 'case.close', { key: key(), data: closing(id, plant.personId) });
  expect((await get(id)).summary.state).toBe('closed');
});

test('a tightening with the suspect wrench itself, or of some studs only, redoes nothing', async () => {
  const { broken, kept, data } = await planted();
  await record(plant, kept.jointId, '2026-05-20');
  await ask(plant.started, 'event.recordBreakout', {
    key: key(),
    data: breakoutOf(plant, { jointId: broken.jointId, happenedAt: '2026-07-01T10:00:00+02:00' }),
  });
  const { affected } = await preview(data);
  expect(affected.map(({ redoneAt }) => redoneAt)).toEqual([null, null, null]);
  const partly = affected.find(({ eventId }) => eventId === broken.eventId);
  expect(partly?.basis).toContain('broken out in part on 2026-07-01, 3 of 12 studs');
});

test('a breakout in the window is told, not judged', async () => {
  const { broken, data } = await planted();
  await ask(plant.started, 'event.recordBreakout', {
    key: key(),
    data: breakoutOf(plant, { jointId: broken.jointId, happenedAt: '2026-04-01T10:00:00+02:00' }),
  });
  const { otherUses, affected } = await preview(data);
  expect(otherUses).toMatchObject([{ tag: 'J-BROKEN', happenedAt: '2026-04-01T10:00:00+02:00' }]);
  expect(affected).toHaveLength(2);
});

test('without any good evidence every use counts, and it says so', async () => {
  const hose = { kind: 'tool' as const, toolId: plant.tools.hoseIds[0] ?? '' };
  await tighten(plant, { tag: 'J-1', day: '2026-01-05' });
  await tighten(plant, { tag: 'J-2', day: '2026-02-05' });
  const all = await preview(
    caseOn(plant, { kind: 'statement', text: 'wrong oil', error: null }, { subject: hose }),
  );
  expect(all.window).toMatchObject({ from: null, fromBasis: expect.stringContaining('every use counts') });
  expect(all.affected.map(({ tag, worst, realLoad }) => [tag, worst, realLoad])).toEqual([
    ['J-2', 'not known', null],
    ['J-1', 'not known', null],
  ]);
  const since = await preview(
    caseOn(plant, { kind: 'statement', text: 'dropped', error: -0.5 }, { since: '2026-02-01' }),
  );
  expect(since.window.fromBasis).toBe('first suspect day as entered: 2026-02-01');
  expect(since.affected.map(({ tag, worst, error }) => [tag, worst, error])).toEqual([
    ['J-2', 'broken', -0.5],
  ]);
  expect(since.subject).toBe('drive unit W-1');
});

test('work done after a failed check counts until the tool is barred', async () => {
  const before = await tighten(plant, { tag: 'J-BEFORE', day: '2026-04-01' });
  plant.started.setNow('2026-05-10T12:00:00Z');
  const checkId = await check(plant, comparison(plant, '2026-05-01', FAILED));
  plant.started.setNow('2026-09-01T12:00:00Z');
  const between = await tighten(plant, { tag: 'J-BETWEEN', day: '2026-05-05' });
  await tighten(plant, { tag: 'J-BARRED', day: '2026-05-20' });
  const { affected, window } = await preview(caseOn(plant, { kind: 'check', checkId }));
  expect(affected.map(({ eventId }) => eventId).toSorted()).toEqual(
    [before.eventId, between.eventId].toSorted(),
  );
  expect(window.toBasis).toContain('barred on 2026-05-10');
});

test('limits are those of the joint as it stood when it was tightened', async () => {
  const { jointId } = await tighten(plant, { tag: 'J-1', day: '2026-02-05' });
  const { version, data } = await ask(plant.started, 'joint.get', { id: jointId });
  const limits = { ...data.limits, boltStressMin: { text: '450', unit: 'MPa' as const } };
  await ask(plant.started, 'joint.save', { key: key(), id: jointId, version, data: { ...data, limits } });
  const { id: certificateId } = await certify(plant.started, plant, FAILING);
  const { affected } = await preview(caseOn(plant, { kind: 'certificate', certificateId }));
  expect(affected.map(({ worst }) => worst)).toEqual(['kept']);
});

const REFUSED: readonly [string, (data: CaseInput) => CaseInput, string, string][] = [
  [
    'a certificate of another tool',
    (data) => ({ ...data, subject: { kind: 'tool', toolId: plant.tools.pumpId ?? '' } }),
    'invalid_input',
    'data.basis.certificateId',
  ],
  [
    'a day that has not come',
    (data) => ({ ...data, happenedAt: '2026-12-01T09:00:00+01:00' }),
    'invalid_input',
    'data.happenedAt',
  ],
  [
    'a person who is not on the register',
    (data) => ({ ...data, personId: crypto.randomUUID() }),
    'not_found',
    'data.personId',
  ],
  [
    'a nut factor of a tool',
    (data) => ({
      ...data,
      basis: { kind: 'statement', text: 'x', error: null, nutFactor: { text: '0.2', unit: 'one' } },
    }),
    'invalid_input',
    'data.basis.nutFactor',
  ],
  [
    'a check that is not on the register',
    (data) => ({ ...data, basis: { kind: 'check', checkId: crypto.randomUUID() } }),
    'not_found',
    'data.basis.checkId',
  ],
];

test.each(REFUSED)('a case is not opened on %s, and nothing is written', async (_, change, code, field) => {
  const { data } = await planted();
  const error = await askBadly(plant.started, 'case.open', { key: key(), data: change(data) });
  expect(error).toMatchObject({ code, details: [{ field }] });
  expect((await ask(plant.started, 'case.list', { state: null, page: 1, pageSize: 10 })).total).toBe(0);
  const tool = await ask(plant.started, 'tool.get', { id: plant.tools.driveId ?? '' });
  expect(tool.data.status).toBe('available');
});

test('evidence that says all is well opens no case, and one piece of evidence opens one', async () => {
  const { data } = await planted();
  const tool = await ask(plant.started, 'tool.get', { id: plant.tools.driveId ?? '' });
  const good = tool.certificates.find(({ data: certificate }) => certificate.number === 'C-1')?.id ?? '';
  const sound = await askBadly(plant.started, 'case.open', {
    key: key(),
    data: { ...data, basis: { kind: 'certificate', certificateId: good } },
  });
  expect(sound).toMatchObject({ code: 'invalid_input', details: [{ value: 'C-1' }] });
  const passed = await check(plant, comparison(plant, '2026-03-01'));
  const fine = await askBadly(plant.started, 'case.open', {
    key: key(),
    data: { ...data, basis: { kind: 'check', checkId: passed } },
  });
  expect(fine).toMatchObject({ code: 'invalid_input', details: [{ field: 'data.basis.checkId' }] });
  await open(data);
  const twice = await askBadly(plant.started, 'case.open', { key: key(), data });
  expect(twice).toMatchObject({ code: 'duplicate', details: [{ value: 'OT-0001' }] });
});

test('where two people decided, either of them may approve', async () => {
  const { broken, kept, data } = await planted();
  const { id } = await open(data);
  await ask(plant.started, 'case.decide', { key: key(), data: decision(id, [broken.eventId], 'retighten') });
  const other = { ...decision(id, [kept.eventId], 'accept'), personId: plant.approverId };
  await ask(plant.started, 'case.decide', { key: key(), data: other });
  await ask(plant.started, 'case.close', { key: key(), data: closing(id, plant.personId) });
  expect((await get(id)).summary).toMatchObject({ state: 'closed', decided: 2 });
});

test('a good check that is entered late narrows an open case, and what it clears is no longer counted', async () => {
  const { kept, data } = await planted();
  const { id } = await open(data);
  await ask(plant.started, 'case.decide', { key: key(), data: decision(id, [kept.eventId], 'accept') });
  expect((await get(id)).summary).toMatchObject({ affected: 2, decided: 1 });
  await check(plant, comparison(plant, '2026-03-15'));
  const narrowed = await get(id);
  expect(narrowed.summary).toMatchObject({ affected: 1, decided: 0 });
  expect(narrowed.recall.affected.map(({ tag }) => tag)).toEqual(['J-BROKEN']);
});

test('a decision is about a record the case lists', async () => {
  const { data } = await planted();
  const outside = await tighten(plant, { tag: 'J-AFTER', day: '2026-06-20' });
  const { id } = await open(data);
  const error = await askBadly(plant.started, 'case.decide', {
    key: key(),
    data: decision(id, [outside.eventId], 'accept'),
  });
  expect(error).toMatchObject({ code: 'invalid_input', details: [{ field: 'data.eventIds.0' }] });
});
