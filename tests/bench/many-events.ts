import type Database from 'better-sqlite3';

/** How many of each the generated register has. */
export interface Counts {
  readonly events: number;
  readonly joints: number;
  readonly wrenches: number;
  readonly gauges: number;
  readonly pumps: number;
}

/** Ten years of work at one plant that writes a record every five minutes. */
export const TEN_YEARS: Counts = {
  events: 1_000_000,
  joints: 5_000,
  wrenches: 60,
  gauges: 20,
  pumps: 20,
};

const SEED = 20_261_125;
const FIRST_SECOND = 1_451_606_400;
const SECONDS = 315_000_000;

/** One number space for all ids: kind in the fourth group, running number in the last. */
const idOf = (kind: number) => `printf('00000000-0000-7000-800${kind}-%012d', `;

export const toolId = (kind: 'wrench' | 'gauge' | 'pump', index: number): string => {
  const group = { wrench: 4, gauge: 5, pump: 6 }[kind];
  return `00000000-0000-7000-800${group}-${String(index).padStart(12, '0')}`;
};

/**
 * Fills an empty register with tightenings by bulk inserts through the real schema, its checks and triggers: which tool
 * had a part in which event follows from the running number and a fixed seed.
 */
export function fillWithTightenings(database: Database.Database, counts: Counts): void {
  const { events, joints, wrenches, gauges, pumps } = counts;
  const text = (columns: readonly string[]) => columns.join(', ');
  const series = (last: number) =>
    `with recursive series (n) as (select 0 union all select n + 1 from series where n < ${last - 1})`;
  const draw = (salt: number, of: number) =>
    `((((n * 1103515245 + ${SEED + salt}) % 2147483648) * 16807 % 2147483647) % ${of})`;
  const at = `${FIRST_SECOND} + n * ${Math.floor(SECONDS / events)}`;
  const utc = `strftime('%Y-%m-%dT%H:%M:%fZ', ${at}, 'unixepoch')`;
  const here = `strftime('%Y-%m-%dT%H:%M:%S+00:00', ${at}, 'unixepoch')`;
  const event = `${idOf(1)}n)`;
  const joint = `${idOf(3)}${draw(7, joints)})`;
  const tools = (group: number, prefix: string, toolClass: string, count: number) => `
    ${series(count)}
    insert into tool (id, version, number, number_key, number_sort, serial, class, status, place, ratings, search, data)
    select ${idOf(group)}n), 1, '${prefix}-' || n, '${prefix}-' || n, '${prefix}-' || n, '', '${toolClass}', 'available', '',
      'invented', '', '{}' from series`;
  const parts = (group: number, role: string, salt: number, count: number) => `
    ${series(events)}
    insert into event_tool (event_id, tool_id, role, position, used_at)
    select ${event}, ${idOf(group)}${draw(salt, count)}), '${role}', 0, ${utc} from series`;
  const place = "'00000000-0000-7000-8000-000000000001'";
  const statements = [
    `insert into origin (id, name, created_at) values (${place}, 'bench', '2016-01-01T00:00:00.000Z')`,
    `insert into site (id, name, time_zone, demo) values (${place}, 'bench', 'Europe/Berlin', 1)`,
    `insert into plant_unit (id, site_id, version, name, name_key) values (${place}, ${place}, 1, 'Unit', 'unit')`,
    `${series(joints)}
     insert into joint (${text(['id', 'unit_id', 'version', 'tag', 'tag_key', 'tag_sort', 'location', 'service'])},
       ${text(['service_sort', 'flange', 'bolting', 'search', 'data'])})
     select ${idOf(3)}n), ${place}, 1, 'J-' || n, 'j-' || n, printf('j-%010d', n), '', '', '', 'invented', '', '', '{}'
     from series`,
    tools(4, 'W', 'drive unit', wrenches),
    tools(5, 'G', 'gauge', gauges),
    tools(6, 'P', 'pump', pumps),
    `${series(events)}
     insert into event (${text(['id', 'origin_id', 'sequence', 'previous_hash', 'hash', 'body', 'body_version'])},
       ${text(['kind', 'happened_at', 'happened_at_utc', 'recorded_at'])})
     select ${event}, ${place}, n + 1, printf('%064x', n), printf('%064x', n + 1), json_object('number', n), 1,
       'tightening recorded', ${here}, ${utc}, ${utc} from series`,
    `${series(events)}
     insert into tightening (${text(['id', 'joint_id', 'happened_at', 'happened_at_utc', 'flags'])},
       ${text(['bolts_tightened', 'final_pass_no_turn', 'dialled_text', 'dialled_unit', 'dialled_pa'])},
       ${text(['torque_nm', 'basis'])})
     select ${event}, ${joint}, ${here}, ${utc}, '[]', 12, 1, '260', 'bar', 260e5, 384.154, 'invented' from series`,
    `${series(events)}
     insert into event_joint (event_id, joint_id) select ${event}, ${joint} from series`,
    parts(4, 'drive unit', 1, wrenches),
    parts(5, 'gauge', 2, gauges),
    parts(6, 'pump', 3, pumps),
  ];
  database.transaction(() => {
    for (const statement of statements) database.exec(statement);
  })();
}
