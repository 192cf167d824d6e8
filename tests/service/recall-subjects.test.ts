import { afterEach, beforeEach, expect, test } from 'vitest';
import type { TighteningInput } from '../../core/contract/event.ts';
import type { CaseInput } from '../../core/contract/recall.ts';
import type { ToolInput } from '../../core/contract/tool.ts';
import { ask, key } from './ask.ts';
import {
  caseOn,
  check,
  comparison,
  FAILING,
  type RecallPlant,
  recallPlant,
  tighten,
} from './recall-plant.ts';
import { certify, jointA, saveJoint, tighteningOf } from './records.ts';

let plant: RecallPlant;
beforeEach(async () => {
  plant = await recallPlant();
});
afterEach(() => plant.started.service.close());

const preview = (data: CaseInput) => ask(plant.started, 'case.preview', { data });

async function addTool(number: string, properties: ToolInput['properties']): Promise<string> {
  const data: ToolInput = { number, serial: '', status: 'available', place: '', properties, remarks: '' };
  return (await ask(plant.started, 'tool.save', { key: key(), id: null, version: null, data })).id;
}

async function recordOn(tag: string, changes: Partial<TighteningInput>): Promise<string> {
  const joint = await saveJoint(plant.started, jointA(plant.unitId, tag));
  const data = tighteningOf(plant, {
    jointId: joint.id,
    happenedAt: '2026-02-05T09:00:00+01:00',
    ...changes,
  });
  return (await ask(plant.started, 'event.recordTightening', { key: key(), data })).id;
}

const aboutTool = (toolId: string) => ({ subject: { kind: 'tool' as const, toolId } });

test('a gauge: what it showed goes through the line of the wrench', async () => {
  await tighten(plant, { tag: 'J-1', day: '2026-02-05', bar: 260, least: 200 });
  const gaugeId = plant.tools.gaugeId ?? '';
  const points = [0, 250, 500, 750, 1000].map((bar) => ({
    indicated: { text: String(bar), unit: 'bar' as const },
    reference: { text: String(bar * 0.9), unit: 'bar' as const },
  }));
  const { id: certificateId } = await ask(plant.started, 'certificate.add', {
    key: key(),
    data: {
      number: 'CG-2',
      toolId: gaugeId,
      withToolIds: [],
      laboratory: 'Laboratory of the test',
      calibratedOn: '2026-06-10',
      validUntil: '2027-06-09',
      validityBasis: 'site rule, 12 months',
      result: 'outside limits',
      condition: 'as found',
      measured: { kind: 'gauge', points },
      remarks: '',
    },
  });
  const { affected } = await preview(
    caseOn(
      plant,
      { kind: 'certificate', certificateId },
      { subject: { kind: 'tool', toolId: gaugeId }, happenedAt: '2026-06-11T09:00:00+02:00' },
    ),
  );
  // Worked joint A's line: T = −5.73214 + 1.49956·p with p in bar; 234 bar were there where 260 were shown.
  const at = (bar: number) => -5.73214 + 1.49956 * bar;
  expect(affected).toMatchObject([{ tag: 'J-1', role: 'gauge', interval: null }]);
  expect(affected[0]?.error).toBeCloseTo(at(234) / at(260) - 1, 5);
  expect(affected[0]?.error).not.toBeCloseTo(-0.1, 3);
});

test('a batch of lubricant with another nut factor scales every load it was set with', async () => {
  await tighten(plant, { tag: 'J-1', day: '2026-02-05' });
  const other = (joint: Parameters<NonNullable<Parameters<typeof tighten>[1]['change']>>[0]) => ({
    ...joint,
    lubricant:
      joint.lubricant === null || joint.lubricant === undefined ? null : { ...joint.lubricant, batch: 'L-2' },
  });
  await tighten(plant, { tag: 'J-2', day: '2026-02-05', change: other });
  const { rows } = await ask(plant.started, 'batch.list', { text: 'l-1', page: 1, pageSize: 10 });
  expect(rows).toMatchObject([{ kind: 'lubricant', number: 'L-1', uses: 1 }]);
  const subject = { kind: 'batch' as const, batchId: rows[0]?.id ?? '' };
  const { affected, subject: name } = await preview(
    caseOn(
      plant,
      { kind: 'statement', text: 'measured', error: null, nutFactor: { text: '0.2', unit: 'one' } },
      { subject },
    ),
  );
  expect(name).toBe('lubricant nickel-based anti-seize, batch L-1');
  expect(affected.map(({ tag }) => tag)).toEqual(['J-1']);
  // F = T/(K·D): 0.16/0.20 of the load.
  expect(affected[0]?.error).toBeCloseTo(-0.2, 12);
  expect((affected[0]?.realLoad ?? 0) / (affected[0]?.intendedLoad ?? 1)).toBeCloseTo(0.8, 12);
  expect(affected[0]?.deliveredTorque).toBe(affected[0]?.intendedTorque);
});

test('a batch of studs is found in the joints whose records name it, and what was read goes before what was planned', async () => {
  const heat = (number: string) => ({ kind: 'stud' as const, name: 'ASTM A193 B7', number });
  const first = await recordOn('J-1', { batches: [heat('H-77'), { ...heat('L-9'), kind: 'lubricant' }] });
  await recordOn('J-2', { batches: [heat('H-78')] });
  const second = await recordOn('J-3', { batches: [heat('h-77')] });
  await recordOn('J-4', {});
  const { rows } = await ask(plant.started, 'batch.list', { text: 'h-77', page: 1, pageSize: 10 });
  expect(rows).toMatchObject([{ kind: 'stud', name: 'ASTM A193 B7', number: 'H-77', uses: 2 }]);
  const basis = { kind: 'statement' as const, text: 'soft studs', error: null, nutFactor: null };
  const { affected } = await preview(
    caseOn(plant, basis, { subject: { kind: 'batch', batchId: rows[0]?.id ?? '' } }),
  );
  expect(affected.map(({ eventId }) => eventId).sort()).toEqual([first, second].sort());
  const recorded = await ask(plant.started, 'event.get', { id: first });
  expect(recorded.batches.map(({ kind, number }) => `${kind} ${number}`)).toEqual([
    'stud H-77',
    'lubricant L-9',
  ]);
  // What nobody read is taken from the joint.
  const unread = await ask(plant.started, 'event.get', { id: second });
  expect(unread.batches.map(({ kind }) => kind)).toEqual(['stud', 'lubricant']);
});

test('an error taken over from another combination of parts keeps nothing', async () => {
  const { id: otherId } = await ask(plant.started, 'tool.save', {
    key: key(),
    id: null,
    version: null,
    data: {
      number: 'K-2',
      serial: '',
      status: 'available',
      place: '',
      properties: {
        class: 'cassette',
        acrossFlats: { text: '1-7/16', unit: 'in' },
        looseness: null,
        ratedTorque: null,
        family: 'F2',
        headRadius: null,
      },
      remarks: '',
    },
  });
  await tighten(plant, { tag: 'J-OWN', day: '2026-02-05' });
  await tighten(
    { ...plant, tools: { ...plant.tools, cassetteId: otherId } },
    { tag: 'J-OTHER', day: '2026-02-06' },
  );
  const { id: certificateId } = await certify(plant.started, plant, FAILING);
  const { affected } = await preview(caseOn(plant, { kind: 'certificate', certificateId }));
  expect(affected.map(({ tag, worst }) => [tag, worst])).toEqual([
    ['J-OTHER', 'not sure'],
    ['J-OWN', 'kept'],
  ]);
  expect(affected[0]?.basis).toContain('another combination');
});

test('a further wrench on the same pump is judged by its own lines', async () => {
  const second = await addTool('W-2', {
    class: 'drive unit',
    ratedTorque: { text: '2000', unit: 'N.m' },
    ratedPressure: { text: '700', unit: 'bar' },
    family: 'F2',
    headRadius: null,
  });
  const own = { ...plant, tools: { ...plant.tools, driveId: second, cassetteId: null } };
  await certify(plant.started, own, { number: 'C-21' });
  const further = [{ driveId: second, cassetteId: null, reducerIds: [], hoseIds: [] }];
  await recordOn('J-TWO', { tools: { ...plant.tools, further } });
  await recordOn('J-ONE', {});
  const { id: certificateId } = await certify(plant.started, own, { ...FAILING, number: 'C-22' });
  const { affected } = await preview(
    caseOn(plant, { kind: 'certificate', certificateId }, aboutTool(second)),
  );
  expect(affected.map(({ tag, role }) => [tag, role])).toEqual([['J-TWO', 'drive unit']]);
  // Worked joint A's line at 260 bar, and the planted one 8 % under it.
  expect(affected[0]?.intendedTorque).toBeCloseTo(384.15, 1);
  expect(affected[0]?.error).toBeCloseTo(-0.08, 2);
});

test('a hand torque wrench: its comparisons stand along the torque it was set to', async () => {
  const toolId = await addTool('T-1', {
    class: 'hand torque wrench',
    least: { text: '100', unit: 'N.m' },
    most: { text: '800', unit: 'N.m' },
    torqueGraduation: { text: '5', unit: 'N.m' },
  });
  const noTools = {
    driveId: null,
    cassetteId: null,
    reducerIds: [],
    pumpId: null,
    gaugeId: null,
    hoseIds: [],
  };
  await recordOn('J-HAND', {
    method: 'hand torque wrench',
    tools: noTools,
    dialled: null,
    torque: { text: '300', unit: 'N.m' },
    torqueTool: {
      toolId,
      number: 'T-1',
      scale: {
        by: 'torque',
        least: { text: '100', unit: 'N.m' },
        most: { text: '800', unit: 'N.m' },
        graduation: { text: '5', unit: 'N.m' },
      },
    },
  });
  const at = (intended: string, reference: string) => ({
    pressure: null,
    intended: { text: intended, unit: 'N.m' as const },
    reference: { text: reference, unit: 'N.m' as const },
  });
  const checkId = await check(plant, {
    ...comparison(plant, '2026-05-01'),
    toolId,
    result: 'failed',
    comparisons: [at('200', '190'), at('400', '360')],
  });
  const { affected } = await preview(caseOn(plant, { kind: 'check', checkId }, aboutTool(toolId)));
  // −5 % at 200 N·m and −10 % at 400 N·m: −7.5 % at 300 N·m.
  expect(affected).toMatchObject([{ tag: 'J-HAND', role: 'hand torque wrench', intendedTorque: 300 }]);
  expect(affected[0]?.error).toBeCloseTo(-0.075, 12);
  expect(affected[0]?.deliveredTorque).toBeCloseTo(277.5, 9);
});

test('a pump has no line: its loads are not known unless an error is stated', async () => {
  await recordOn('J-1', {});
  const pump = aboutTool(plant.tools.pumpId ?? '');
  const bare = await preview(caseOn(plant, { kind: 'statement', text: 'pulsates', error: null }, pump));
  expect(bare.affected).toMatchObject([{ role: 'pump', error: null, realLoad: null, worst: 'not known' }]);
  expect(bare.affected[0]?.intendedLoad).toBeGreaterThan(1e5);
  const stated = await preview(caseOn(plant, { kind: 'statement', text: 'pulsates', error: -0.1 }, pump));
  const [one] = stated.affected;
  expect((one?.realLoad ?? 0) / (one?.intendedLoad ?? 1)).toBeCloseTo(0.9, 12);
});

test('a hose that failed its leak test says nothing about torque', async () => {
  await recordOn('J-1', {});
  const toolId = plant.tools.hoseIds[0] ?? '';
  const checkId = await check(plant, {
    ...comparison(plant, '2026-05-01'),
    toolId,
    kind: 'leak test',
    comparisons: [],
    limit: null,
    result: 'failed',
    leak: {
      pressure: { text: '700', unit: 'bar' },
      minutes: 5,
      fallAdvance: { text: '60', unit: 'bar' },
      fallRetract: null,
    },
  });
  const { affected } = await preview(caseOn(plant, { kind: 'check', checkId }, aboutTool(toolId)));
  expect(affected).toMatchObject([{ role: 'hose', error: null, worst: 'not known' }]);
  expect(affected[0]?.basis).toContain('a failed leak test says nothing about torque');
});

test('a tensioned joint keeps its recorded load: evidence about torque does not reach it', async () => {
  await recordOn('J-1', {
    method: 'tensioner',
    dialled: null,
    torque: null,
    load: { text: '120', unit: 'kN' },
  });
  const { affected } = await preview(
    caseOn(plant, { kind: 'statement', text: 'low', error: null }, aboutTool(plant.tools.pumpId ?? '')),
  );
  expect(affected).toMatchObject([{ intendedLoad: 120e3, realLoad: null, worst: 'not known' }]);
});

test('batches are found by words of their kind, name and number, accents and case aside', async () => {
  const base = jointA(plant.unitId, 'J-ACCENT');
  const lubricant = base.lubricant ?? null;
  if (lubricant === null) throw new Error('fixture: no lubricant');
  const joint = await saveJoint(plant.started, {
    ...base,
    lubricant: { ...lubricant, name: 'Kupferpaste für Ölnebel', batch: 'Ö-77' },
  });
  const data = tighteningOf(plant, { jointId: joint.id, happenedAt: '2026-02-05T09:00:00+01:00' });
  await ask(plant.started, 'event.recordTightening', { key: key(), data });
  await recordOn('J-PLAIN', {});
  const found = async (text: string, page = 1, pageSize = 10) =>
    ask(plant.started, 'batch.list', { text, page, pageSize });
  expect((await found('o-77 FUR')).rows).toMatchObject([{ number: 'Ö-77', uses: 1 }]);
  expect((await found('nothing of the kind')).total).toBe(0);
  const second = await found('', 2, 1);
  expect(second).toMatchObject({ total: 2, rows: [{ number: 'L-1' }] });
});

test('a batch of gaskets changes no load, and what the joint stands with it is not known', async () => {
  const base = jointA(plant.unitId, 'J-GASKET');
  const gasket = base.gasket === null || base.gasket === undefined ? null : { ...base.gasket, batch: 'GB-9' };
  const joint = await saveJoint(plant.started, { ...base, gasket });
  await ask(plant.started, 'event.recordTightening', {
    key: key(),
    data: tighteningOf(plant, { jointId: joint.id, happenedAt: '2026-02-05T09:00:00+01:00' }),
  });
  const { rows } = await ask(plant.started, 'batch.list', { text: 'gb-9', page: 1, pageSize: 10 });
  expect(rows).toHaveLength(1);
  const { affected } = await preview(
    caseOn(
      plant,
      { kind: 'statement', text: 'wrong filler', error: null },
      { subject: { kind: 'batch', batchId: rows[0]?.id ?? '' } },
    ),
  );
  expect(affected).toMatchObject([{ tag: 'J-GASKET', error: 0, limits: [], worst: 'not known' }]);
  expect(affected[0]?.realLoad).toBe(affected[0]?.intendedLoad);
});
