import type Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { registerBefore, rowsThen, takeStep } from './before-step.ts';
import { insert, SOUND_ROWS } from './rows.ts';

const STEP = '20261126T0300_name_square_drive_heads';
const uuid = (n: number) => `00000000-0000-7000-8000-0000000009${String(n).padStart(2, '0')}`;
const [HEAD, CASSETTE] = [uuid(1), uuid(2)];

/** A register as the steps before this one left it: a record that names a head and a cassette, and their entries. */
async function earlierRegister(): Promise<Database.Database> {
  const database = await registerBefore(STEP);
  const tool = SOUND_ROWS.find(([table]) => table === 'tool')?.[1];
  const events = SOUND_ROWS.filter(([table]) => table === 'event').map(([, row]) => row);
  const event = (kind: string) => events.find((row) => row.kind === kind)?.id;
  insert(database, 'tool', { ...tool, id: HEAD, number: 'S', number_key: 's', class: 'square-drive head' });
  insert(database, 'tool', { ...tool, id: CASSETTE, number: 'K', number_key: 'k', class: 'cassette' });
  const used_at = '2026-03-16T06:42:00.000Z';
  for (const [toolId, position] of [
    [HEAD, 1],
    [CASSETTE, 0],
  ] as const) {
    const link = { tool_id: toolId, role: 'cassette', position };
    insert(database, 'event_tool', { ...link, event_id: event('tightening recorded'), used_at });
    insert(database, 'event_tool', { ...link, event_id: event('setting issued') });
    insert(database, 'event_tool', { ...link, event_id: event('unit saved'), role: 'saved' });
  }
  return database;
}

const links = (database: Database.Database, toolId: string) =>
  database
    .prepare(
      `select event.kind, role, position, used_at is not null as used from event_tool
         join event on event.id = event_id where tool_id = ? order by event.kind`,
    )
    .all(toolId);

test('a square-drive head that was linked as a cassette gets its own part; nothing else changes', async () => {
  const database = await earlierRegister();
  const tables = [...new Set(rowsThen(database).map(([table]) => table))].filter(
    (table) => table !== 'event_tool',
  );
  const others = () => tables.map((table) => database.prepare(`select * from ${table}`).all());
  const before = { others: others(), cassette: links(database, CASSETTE) };
  await takeStep(database, STEP);
  expect({ others: others(), cassette: links(database, CASSETTE) }).toEqual(before);
  expect(links(database, HEAD)).toEqual([
    { kind: 'setting issued', role: 'square-drive head', position: 1, used: 0 },
    { kind: 'tightening recorded', role: 'square-drive head', position: 1, used: 1 },
    { kind: 'unit saved', role: 'saved', position: 1, used: 0 },
  ]);
});

test('after the step the links are closed to changes again', async () => {
  const database = await earlierRegister();
  await takeStep(database, STEP);
  for (const change of [`update event_tool set role = 'cassette'`, 'delete from event_tool']) {
    expect(() => database.exec(change)).toThrow('event_tool is append-only');
  }
});
