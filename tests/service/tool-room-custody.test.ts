import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { enterPlant, type TestPlant } from './records.ts';
import { kitOf, move, moveOf, saveKit, statusOf, stepOf } from './tool-room.ts';

let folder: string;
let started: TestService;
let plant: TestPlant;

beforeEach(async () => {
  folder = temporaryFolder();
  started = startService(folder);
  await createEmpty(started);
  plant = await enterPlant(started);
});
afterEach(() => started.service.close());

const events = async () => (await ask(started, 'register.state', {})).events;
const refusedMove = async (data: unknown) => {
  const before = await events();
  const error = await askBadly(started, 'tool.move', { key: key(), data });
  expect(await events()).toBe(before);
  return error;
};
const drive = () => ask(started, 'tool.get', { id: plant.tools.driveId ?? '' });

describe('a label or a typed number', () => {
  test.each(['W-1', 'w-1', ' SB:T:W-1 ', 'sb:t:w-1'])('"%s" finds the tool', async (text) => {
    expect(await ask(started, 'tool.find', { text })).toEqual({ id: plant.tools.driveId, number: 'W-1' });
  });

  test.each(['W-2', 'SB:T:', 'S-0001'])('"%s" finds none', async (text) => {
    expect(await ask(started, 'tool.find', { text })).toBeNull();
  });

  test('nothing at all is named as missing', async () => {
    expect((await askBadly(started, 'tool.find', { text: '  ' })).details).toMatchObject([{ field: 'text' }]);
  });
});

describe('issue and return', () => {
  test('take the tool out and bring it back, with its holder and place', async () => {
    await move(started, moveOf(plant));
    expect((await drive()).data).toMatchObject({ status: 'issued', place: 'Unit 100' });
    const { rows } = await ask(started, 'tool.list', {
      text: 'issued',
      class: null,
      sort: 'number',
      direction: 'asc',
      page: 1,
      pageSize: 10,
    });
    expect(rows.map(({ number }) => number)).toEqual(['W-1']);
    await move(
      started,
      stepOf(plant, 'return', {
        happenedAt: '2026-03-16T10:00:00+01:00',
        condition: 'good',
        place: 'shelf 4',
      }),
    );
    expect((await drive()).data).toMatchObject({ status: 'available', place: 'shelf 4' });
  });

  test('leave the version of the tool as it is: a move is no edit', async () => {
    const { version } = await drive();
    await move(started, moveOf(plant));
    expect((await drive()).version).toBe(version);
  });

  test('with several tools are all or nothing, each that can not go is named', async () => {
    const { gaugeId, pumpId, driveId } = plant.tools;
    const both = [gaugeId ?? '', pumpId ?? ''];
    await move(started, moveOf(plant, { toolIds: both }));
    const error = await refusedMove(moveOf(plant, { toolIds: [driveId ?? '', ...both] }));
    expect(error.code).toBe('refused');
    expect(error.details).toEqual([
      { field: 'data.toolIds.1', value: 'G-1', allowed: expect.stringContaining('it is issued') },
      { field: 'data.toolIds.2', value: 'P-1', allowed: expect.stringContaining('it is issued') },
    ]);
    expect(await statusOf(started, driveId)).toBe('available');
  });

  test.each(['damaged', 'to be looked at'] as const)(
    '%s bars the tool at once, as a step of its own',
    async (condition) => {
      await move(started, moveOf(plant));
      const before = await events();
      const returned = stepOf(plant, 'return', { happenedAt: '2026-03-16T10:00:00+01:00', condition });
      const { id } = await move(started, returned);
      expect(await events()).toBe(before + 2);
      expect(await statusOf(started, plant.tools.driveId)).toBe('quarantined');
      const database = new Database(join(folder, 'register.sqlite'), { readonly: true });
      const rows = database
        .prepare(
          `select step, from_status, to_status, reason, event.body ->> '$.data.causeId' as cause
             from tool_move join event on event.id = event_id order by event.sequence`,
        )
        .all();
      database.close();
      expect(rows.slice(1)).toEqual([
        { step: 'return', from_status: 'issued', to_status: 'available', reason: '', cause: null },
        {
          step: 'quarantine',
          from_status: 'available',
          to_status: 'quarantined',
          reason: `returned ${condition}`,
          cause: id,
        },
      ]);
    },
  );

  test('of a tool that was moved later is refused: moves are entered in their order', async () => {
    await move(started, moveOf(plant));
    const error = await refusedMove(
      stepOf(plant, 'return', { happenedAt: '2026-03-16T07:00:00+01:00', condition: 'good' }),
    );
    expect(error.details).toMatchObject([{ value: 'W-1', allowed: expect.stringContaining('moved later') }]);
  });

  test('sent twice under one key happen once', async () => {
    const input = { key: key(), data: moveOf(plant) };
    const first = await ask(started, 'tool.move', input);
    const before = await events();
    expect(await ask(started, 'tool.move', input)).toEqual({ ...first, alreadyRecorded: true });
    expect(await events()).toBe(before);
  });
});

describe('a move that lacks something', () => {
  test.each([
    ['a holder to issue', { holderId: null }, 'data.holderId'],
    ['its tools', { toolIds: [] }, 'data.toolIds'],
    ['its moment', { happenedAt: '2026-03-17T09:00:00+01:00' }, 'data.happenedAt'],
    ['a known person', { personId: '00000000-0000-7000-8000-000000000001' }, 'data.personId'],
    ['a known holder', { holderId: '00000000-0000-7000-8000-000000000001' }, 'data.holderId'],
    ['a known kit', { kitId: '00000000-0000-7000-8000-000000000001' }, 'data.kitId'],
    ['a known tool', { toolIds: ['00000000-0000-7000-8000-000000000001'] }, 'data.toolIds.0'],
  ])('%s is named', async (_, changes, field) => {
    expect((await refusedMove(moveOf(plant, changes))).details).toMatchObject([{ field }]);
  });

  test('the condition on return, and only there', async () => {
    await move(started, moveOf(plant));
    const late = '2026-03-16T10:00:00+01:00';
    expect((await refusedMove(stepOf(plant, 'return', { happenedAt: late }))).details).toMatchObject([
      { field: 'data.condition' },
    ]);
    const scrap = stepOf(plant, 'scrap', { happenedAt: late, condition: 'damaged', reason: 'cracked' });
    expect((await refusedMove(scrap)).details).toMatchObject([{ field: 'data.condition' }]);
  });

  test.each(['quarantine', 'release from quarantine', 'scrap'] as const)('the reason to %s', async (step) => {
    expect((await refusedMove(stepOf(plant, step))).details).toMatchObject([{ field: 'data.reason' }]);
  });

  test('the same tool twice', async () => {
    const id = plant.tools.driveId ?? '';
    expect((await refusedMove(moveOf(plant, { toolIds: [id, id] }))).details).toMatchObject([
      { field: 'data.toolIds', allowed: 'each at most once' },
    ]);
  });
});

describe('quarantine', () => {
  test('holds until somebody releases the tool with a reason', async () => {
    await move(started, stepOf(plant, 'quarantine', { reason: 'dropped' }));
    expect((await refusedMove(moveOf(plant))).details).toMatchObject([
      { value: 'W-1', allowed: expect.stringContaining('quarantined') },
    ]);
    await move(started, stepOf(plant, 'release from quarantine', { reason: 'compared, within 1 %' }));
    await move(started, moveOf(plant));
    expect(await statusOf(started, plant.tools.driveId)).toBe('issued');
  });

  test('of a tool in somebody’s hands keeps telling who has it', async () => {
    await move(started, moveOf(plant));
    await move(started, stepOf(plant, 'quarantine', { reason: 'gauge dropped on site' }));
    const kit = await saveKit(started, kitOf(plant));
    const { tools } = await ask(started, 'kit.get', { id: kit.id });
    expect(tools).toMatchObject([
      { number: 'W-1', status: 'quarantined', holder: 'A. Person', place: 'Unit 100' },
    ]);
  });
});

describe('a tool that a kit holds', () => {
  test('does not go out for another job on the kit’s days, and the kit is named', async () => {
    await saveKit(started, kitOf(plant));
    const error = await refusedMove(moveOf(plant));
    expect(error.code).toBe('refused');
    expect(error.details).toMatchObject([
      {
        value: 'W-1',
        allowed: expect.stringContaining('kit "Exchanger E-1" holds it from 2026-03-16 to 2026-03-20'),
      },
    ]);
  });

  test('goes out with that kit', async () => {
    const kit = await saveKit(started, kitOf(plant));
    await move(started, moveOf(plant, { kitId: kit.id }));
    expect(await statusOf(started, plant.tools.driveId)).toBe('issued');
  });

  test.each([
    ['a closed kit', { closed: true }],
    ['a kit of later days', { from: '2026-03-17', to: '2026-03-20' }],
  ])('is free while it is in %s', async (_, changes) => {
    await saveKit(started, kitOf(plant, changes));
    await move(started, moveOf(plant));
    expect(await statusOf(started, plant.tools.driveId)).toBe('issued');
  });

  test('can not go out with a closed one', async () => {
    const kit = await saveKit(started, kitOf(plant, { closed: true }));
    expect((await refusedMove(moveOf(plant, { kitId: kit.id }))).details).toMatchObject([
      { field: 'data.kitId', value: 'Exchanger E-1' },
    ]);
  });
});
