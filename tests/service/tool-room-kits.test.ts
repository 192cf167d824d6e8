import { afterEach, beforeEach, expect, test } from 'vitest';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { certify, enterPlant, type TestPlant } from './records.ts';
import { kitOf, saveKit } from './tool-room.ts';

let started: TestService;
let plant: TestPlant;

beforeEach(async () => {
  started = startService(temporaryFolder());
  await createEmpty(started);
  plant = await enterPlant(started);
});
afterEach(() => started.service.close());

const page = { page: 1, pageSize: 10 };
const refusedKit = async (data: unknown, which: object = { id: null, version: null }) => {
  const { events } = await ask(started, 'register.state', {});
  const error = await askBadly(started, 'kit.save', { key: key(), ...which, data });
  expect((await ask(started, 'register.state', {})).events).toBe(events);
  return error;
};

test('a kit shows its tools as they stand, its joints, and what is due before its last day', async () => {
  const { id } = await saveKit(started, kitOf(plant));
  const kit = await ask(started, 'kit.get', { id });
  expect(kit).toMatchObject({
    version: 1,
    tools: [{ number: 'W-1', class: 'drive unit', status: 'available', holder: null, place: 'tool room' }],
    joints: [{ tag: 'J-0001' }],
    clashes: [],
  });
  expect(kit.tools[0]?.due).toEqual([expect.stringMatching(/^Certificate, overdue: no certificate/)]);
  await certify(started, plant);
  expect((await ask(started, 'kit.get', { id })).tools[0]?.due).toEqual([]);
});

test('a certificate that lapses before the kit’s last day is due for it', async () => {
  await certify(started, plant, { validUntil: '2026-03-18' });
  const { id } = await saveKit(started, kitOf(plant));
  expect((await ask(started, 'kit.get', { id })).tools[0]?.due).toEqual([
    expect.stringMatching(/^Certificate, overdue after 2026-03-18: certificate C-1/),
  ]);
});

test('kits that hold a tool on the same days are named to each other; closed ones and other days are not', async () => {
  const first = await saveKit(started, kitOf(plant));
  const second = await saveKit(
    started,
    kitOf(plant, { name: 'Vessel V-2', from: '2026-03-20', to: '2026-03-25' }),
  );
  await saveKit(started, kitOf(plant, { name: 'Later', from: '2026-04-01', to: '2026-04-02' }));
  await saveKit(started, kitOf(plant, { name: 'Done', closed: true }));
  const clashes = async (id: string) => (await ask(started, 'kit.get', { id })).clashes;
  expect(await clashes(first.id)).toEqual([
    { number: 'W-1', kit: 'Vessel V-2', from: '2026-03-20', to: '2026-03-25' },
  ]);
  expect(await clashes(second.id)).toEqual([
    { number: 'W-1', kit: 'Exchanger E-1', from: '2026-03-16', to: '2026-03-20' },
  ]);
});

test('kits are listed by their first day; closed ones on request', async () => {
  await saveKit(started, kitOf(plant, { name: 'B', from: '2026-04-01', to: '2026-04-02' }));
  await saveKit(started, kitOf(plant, { name: 'A' }));
  await saveKit(started, kitOf(plant, { name: 'C', closed: true, from: '2026-01-01' }));
  const names = async (closed: boolean) => {
    const { rows, total } = await ask(started, 'kit.list', { closed, ...page });
    expect(total).toBe(rows.length);
    return rows.map(({ data }) => data.name);
  };
  expect(await names(false)).toEqual(['A', 'B']);
  expect(await names(true)).toEqual(['C', 'A', 'B']);
});

test('an edit changes the tools of a kit and starts from the version that was seen', async () => {
  const { id } = await saveKit(started, kitOf(plant));
  const data = kitOf(plant, { toolIds: [plant.tools.gaugeId ?? '', plant.tools.pumpId ?? ''] });
  expect(await ask(started, 'kit.save', { key: key(), id, version: 1, data })).toMatchObject({ version: 2 });
  const kit = await ask(started, 'kit.get', { id });
  expect(kit.tools.map(({ number }) => number)).toEqual(['G-1', 'P-1']);
  expect((await refusedKit(data, { id, version: 1 })).code).toBe('conflict');
});

test('a kit that can not be is named by field', async () => {
  const missing = '00000000-0000-7000-8000-000000000001';
  const id = plant.tools.driveId ?? '';
  expect((await refusedKit(kitOf(plant, { to: '2026-03-15' }))).details).toMatchObject([
    { field: 'data.to' },
  ]);
  expect((await refusedKit(kitOf(plant, { toolIds: [id, id] }))).details).toMatchObject([
    { field: 'data.toolIds' },
  ]);
  expect((await refusedKit(kitOf(plant, { toolIds: [id, missing] }))).details).toMatchObject([
    { field: 'data.toolIds.1', value: missing },
  ]);
  expect((await refusedKit(kitOf(plant, { jointIds: [missing] }))).details).toMatchObject([
    { field: 'data.jointIds.0' },
  ]);
  await saveKit(started, kitOf(plant));
  expect(await refusedKit(kitOf(plant, { name: 'exchanger  e-1' }))).toMatchObject({ code: 'duplicate' });
  expect((await askBadly(started, 'kit.get', { id: missing })).code).toBe('not_found');
});
