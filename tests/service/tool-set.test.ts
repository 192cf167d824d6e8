import { afterEach, expect, test } from 'vitest';
import type { ToolSetInput } from '../../core/contract/setting.ts';
import type { ToolInput } from '../../core/contract/tool.ts';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { certify, enterPlant, settingFor, type TestPlant, tighteningOf } from './records.ts';

let started: TestService;
afterEach(() => started.service.close());

const q = <U extends string>(text: string, unit: U) => ({ text, unit });

async function saveTool(number: string, properties: ToolInput['properties']): Promise<string> {
  const data: ToolInput = {
    number,
    serial: '',
    status: 'available',
    place: 'tool room',
    properties,
    remarks: '',
  };
  const { id } = await ask(started, 'tool.save', { key: key(), id: null, version: null, data });
  return id;
}

const coupler = (number: string) =>
  saveTool(number, { class: 'coupler', ratedPressure: q('700', 'bar'), coupling: 'S1' });

const counterhold = () =>
  saveTool('B-1', {
    class: 'counterhold wrench',
    acrossFlats: q('1-7/16', 'in'),
    looseness: q('0.3', 'mm'),
    ratedTorque: q('2000', 'N.m'),
  });

const squareDrive = () =>
  saveTool('SD-1', {
    class: 'square-drive head',
    square: q('1', 'in'),
    acrossFlats: q('1-7/16', 'in'),
    looseness: q('0.3', 'mm'),
    headRadius: q('21', 'mm'),
    ratedTorque: q('2000', 'N.m'),
    family: 'F2',
  });

const secondDrive = () =>
  saveTool('W-2', {
    class: 'drive unit',
    ratedTorque: q('2000', 'N.m'),
    ratedPressure: q('700', 'bar'),
    family: 'F2',
    headRadius: q('30', 'mm'),
  });

const hose = (number: string) =>
  saveTool(number, { class: 'hose', ratedPressure: q('700', 'bar'), madeOn: '2025-01-01' });

const handWrench = () =>
  saveTool('HW-1', {
    class: 'hand torque wrench',
    least: q('100', 'N.m'),
    most: q('500', 'N.m'),
    torqueGraduation: q('5', 'N.m'),
  });

async function begin(): Promise<TestPlant> {
  started = startService(temporaryFolder());
  await createEmpty(started);
  const plant = await enterPlant(started);
  await certify(started, plant);
  return plant;
}

test('every part of a set that was used is found again at the record, a second wrench with its own place', async () => {
  const plant = await begin();
  const tools: ToolSetInput = {
    ...plant.tools,
    couplerIds: [await coupler('K-1A'), await coupler('K-1B')],
    counterholdId: await counterhold(),
    further: [
      {
        driveId: await secondDrive(),
        cassetteId: await squareDrive(),
        reducerIds: [],
        hoseIds: [await hose('H-2')],
      },
    ],
  };
  const { id } = await ask(started, 'event.recordTightening', {
    key: key(),
    data: tighteningOf(plant, { tools }),
  });
  const event = await ask(started, 'event.get', { id });
  const used = event.tools.map(({ role, number }) => [role, number]);
  expect(used).toHaveLength(11);
  expect(used).toEqual(
    expect.arrayContaining([
      ['drive unit', 'W-1'],
      ['drive unit', 'W-2'],
      ['cassette', 'K-1'],
      ['square-drive head', 'SD-1'],
      ['hose', 'H-1'],
      ['hose', 'H-2'],
      ['coupler', 'K-1A'],
      ['coupler', 'K-1B'],
      ['counterhold wrench', 'B-1'],
    ]),
  );
});

test('a square-drive head is traced as one from tool to joint, in settings, records and cases', async () => {
  const plant = await begin();
  const headId = await squareDrive();
  const tools: ToolSetInput = { ...plant.tools, cassetteId: headId };
  const { id: settingId } = await ask(started, 'setting.issue', {
    key: key(),
    data: settingFor(plant, { tools }),
    personId: plant.personId,
  });
  const { id } = await ask(started, 'event.recordTightening', {
    key: key(),
    data: tighteningOf(plant, { tools, settingId }),
  });
  const page = { page: 1, pageSize: 10 };
  const { rows, total } = await ask(started, 'tool.uses', { id: headId, ...page });
  expect(rows.map(({ eventId, role }) => [eventId, role])).toEqual([[id, 'square-drive head']]);
  expect(total).toBe(1);
  const { affected } = await ask(started, 'case.preview', {
    data: {
      subject: { kind: 'tool', toolId: headId },
      basis: { kind: 'statement', text: 'teeth slip', error: -0.1, nutFactor: null },
      happenedAt: '2026-03-16T12:00:00+01:00',
      personId: plant.personId,
      remarks: '',
    },
  });
  expect(affected.map(({ eventId, role, error }) => [eventId, role, error])).toEqual([
    [id, 'square-drive head', -0.1],
  ]);
  expect((await ask(started, 'tool.uses', { id: plant.tools.cassetteId ?? '', ...page })).total).toBe(0);
});

test('a part named in two places, and a part of another class, are refused by their field', async () => {
  const plant = await begin();
  const { driveId, cassetteId } = plant.tools;
  const twice = { driveId, cassetteId: null, reducerIds: [], hoseIds: [] };
  const compute = (tools: Partial<ToolSetInput>) =>
    askBadly(started, 'setting.compute', settingFor(plant, { tools: { ...plant.tools, ...tools } }));
  expect((await compute({ further: [twice] })).details[0]?.field).toBe('tools.further');
  expect((await compute({ counterholdId: plant.tools.pumpId })).details[0]).toMatchObject({
    field: 'tools.counterholdId',
    value: 'P-1, a pump',
    allowed: 'a counterhold wrench',
  });
  const further = [{ driveId: cassetteId, cassetteId: null, reducerIds: [], hoseIds: [] }];
  expect((await compute({ cassetteId: null, further })).details[0]?.field).toBe('tools.further.0.driveId');
});

test('a hand torque wrench of the register brings its own scale and certificate, whatever was typed', async () => {
  const plant = await begin();
  const toolId = await handWrench();
  const typedScale = {
    by: 'torque' as const,
    least: q('1', 'N.m'),
    most: q('9', 'N.m'),
    graduation: q('1', 'N.m'),
  };
  const torqueTool = {
    toolId,
    number: 'typed',
    scale: typedScale,
    certificate: 'typed',
    validUntil: '2030-01-01',
  };
  const bare = { driveId: null, cassetteId: null, reducerIds: [], pumpId: null, gaugeId: null, hoseIds: [] };
  const data = settingFor(plant, { tools: bare, method: 'hand torque wrench', torqueTool });
  const before = await ask(started, 'setting.compute', data);
  expect(before.toolSetting).toMatchObject({ tool: 'HW-1', text: '385 N·m' });
  expect(before.findings.map(({ code }) => code)).toContain('certificate_missing');
  expect(before.issuable).toBe(false);
  await ask(started, 'certificate.add', {
    key: key(),
    data: {
      number: 'CH-1',
      toolId,
      withToolIds: [],
      laboratory: 'Laboratory of the test',
      calibratedOn: '2026-01-10',
      validUntil: '2027-01-09',
      validityBasis: 'site rule, 12 months',
      result: 'within limits',
      condition: 'as left',
      measured: {
        kind: 'hand torque',
        points: ['100', '300', '500'].map((text) => ({ set: q(text, 'N.m'), reference: q(text, 'N.m') })),
      },
      remarks: '',
    },
  });
  expect(
    (await ask(started, 'setting.compute', data)).findings.filter(({ severity }) => severity === 'refusal'),
  ).toEqual([]);
  const { id } = await ask(started, 'event.recordTightening', {
    key: key(),
    data: tighteningOf(plant, {
      tools: bare,
      method: 'hand torque wrench',
      torqueTool,
      dialled: null,
      torque: q('385', 'N.m'),
    }),
  });
  expect((await ask(started, 'event.get', { id })).tools).toEqual([
    { id: toolId, number: 'HW-1', role: 'hand torque wrench' },
  ]);
  const battery = settingFor(plant, { tools: bare, method: 'battery torque tool', torqueTool });
  expect((await askBadly(started, 'setting.compute', battery)).details[0]?.field).toBe('torqueTool.toolId');
});

test('the register says which parts suit a joint, and why the others don’t', async () => {
  const plant = await begin();
  await squareDrive();
  await secondDrive();
  await saveTool('K-9', {
    class: 'cassette',
    acrossFlats: q('36', 'mm'),
    looseness: null,
    ratedTorque: q('2000', 'N.m'),
    family: 'F2',
    headRadius: q('21', 'mm'),
  });
  const rows = await ask(started, 'setting.suits', settingFor(plant));
  expect(rows.map(({ number, state }) => [number, state])).toEqual([
    ['W-1', 'suits'],
    ['W-2', 'does not suit'],
    ['K-1', 'suits'],
    ['K-9', 'does not suit'],
    ['SD-1', 'suits'],
    ['P-1', 'suits'],
    ['G-1', 'suits'],
    ['H-1', 'suits'],
  ]);
  expect(rows.find(({ number }) => number === 'W-1')).toMatchObject({
    ratings: '700 bar, 2000 N·m',
    validUntil: '2027-01-09',
    needsCertificate: true,
    status: 'available',
  });
  expect(rows.find(({ number }) => number === 'W-2')?.reasons).toEqual([
    expect.stringContaining('No certificate'),
  ]);
  expect(rows.find(({ number }) => number === 'K-9')?.reasons).toEqual([
    expect.stringContaining('Opening too small for the nut'),
  ]);
});
