import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { nameKey } from '../../electron/service/fold.ts';
import { queryBuilder } from '../../electron/service/register/dialect.ts';
import { migrate } from '../../electron/service/register/migrate.ts';
import { MIGRATIONS } from '../../migrations/list.ts';
import { insert, ROWS_BEFORE_TOOL_ROOM } from './rows.ts';

const STEP = '20261125T2010_create_tool_room';
const SERIALS = ['', ' ÅB ﬁ  12', "O'NEILL"];
const toolId = (n: number) => `00000000-0000-7000-8000-0000000009${String(n).padStart(2, '0')}`;

/** A register as the steps before this one left it, with tools of awkward serial numbers that were used. */
async function earlierRegister(): Promise<Database.Database> {
  const database = new Database(':memory:');
  const before = Object.fromEntries(Object.entries(MIGRATIONS).filter(([name]) => name < STEP));
  await migrate(database, queryBuilder(database), before);
  for (const [table, row] of ROWS_BEFORE_TOOL_ROOM) insert(database, table, row);
  const [, tool] = ROWS_BEFORE_TOOL_ROOM.find(([table]) => table === 'tool') ?? [];
  SERIALS.forEach((serial, index) => {
    const number = `T-${index}`;
    insert(database, 'tool', { ...tool, id: toolId(index), number, number_key: number, serial });
  });
  for (const [, { id, kind }] of ROWS_BEFORE_TOOL_ROOM.filter(([table]) => table === 'event')) {
    const role = kind === 'setting issued' || String(kind).endsWith('recorded') ? 'hose' : 'saved';
    insert(database, 'event_tool', { event_id: id, tool_id: toolId(1), role, position: 0 });
  }
  return database;
}

const all = (database: Database.Database, columns: string, table: string) =>
  database.prepare(`select ${columns} from ${table} order by 1, 2, 3`).all();

test('tools, links and certificates come through the step as they were', async () => {
  const database = await earlierRegister();
  const columns = {
    tool: 'id, version, number, serial, class, status, place, ratings, valid_until, search, data',
    event_tool: 'event_id, tool_id, role, position',
    certificate: '*',
    certificate_point: '*',
  };
  const seen = () => Object.entries(columns).map(([table, names]) => all(database, names, table));
  const before = seen();
  expect(before.every((rows) => rows.length > 0)).toBe(true);
  await migrate(database, queryBuilder(database));
  expect(seen()).toEqual(before);
});

test('serial numbers are folded as names are, beyond ASCII too', async () => {
  const database = await earlierRegister();
  await migrate(database, queryBuilder(database));
  const keys = database
    .prepare<[], { serial_key: string }>(
      `select serial_key from tool where number like 'T-%' order by number`,
    )
    .all();
  expect(keys.map(({ serial_key: key }) => key)).toEqual(SERIALS.map(nameKey));
});

test('only recorded work becomes a use, at the moment it was done', async () => {
  const database = await earlierRegister();
  await migrate(database, queryBuilder(database));
  const used = database
    .prepare(
      `select event.kind, event_tool.used_at = event.happened_at_utc as same from event_tool
         join event on event.id = event_tool.event_id where used_at is not null order by event.kind`,
    )
    .all();
  expect(used).toEqual([
    { kind: 'breakout recorded', same: 1 },
    { kind: 'tightening recorded', same: 1 },
  ]);
  const counted = database.prepare('select number, uses from tool where uses > 0').all();
  expect(counted).toEqual([{ number: 'T-1', uses: 2 }]);
});

test('after the step links and certificates are as closed to changes as before it', async () => {
  const database = await earlierRegister();
  await migrate(database, queryBuilder(database));
  for (const table of ['event_tool', 'certificate']) {
    expect(() => database.exec(`delete from ${table}`), table).toThrow(`${table} is append-only`);
    expect(() => database.exec(`update ${table} set tool_id = tool_id`), table).toThrow(
      `${table} is append-only`,
    );
  }
});
