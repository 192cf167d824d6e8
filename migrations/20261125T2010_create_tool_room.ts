import { type Kysely, sql } from 'kysely';
import {
  appendOnly,
  between,
  day,
  hash,
  json,
  moment,
  oneOf,
  runStatements,
  utcMoment,
  uuid,
} from './statements.ts';

const EVENT_KINDS = [
  'tool moved',
  'tool checked',
  'checklist saved',
  'tool rule saved',
  'kit saved',
  'attachment added',
];

const TOOL_CLASSES = [
  'drive unit',
  'cassette',
  'square-drive head',
  'reducer',
  'pump',
  'gauge',
  'hose',
  'coupler',
  'counterhold wrench',
  'hand torque wrench',
];

const TOOL_PARTS = [
  'saved',
  'calibrated',
  'calibrated with',
  ...TOOL_CLASSES,
  'moved',
  'checked',
  'in kit',
  'attached',
  'case',
];

const PERSON_PARTS = ['handed over', 'took over', 'checked', 'attached'];

const CHECK_KINDS = [
  'comparison',
  'zero of the gauge',
  'function',
  'visual',
  'seal inspection',
  'leak test',
  'pressure test',
  'fasteners',
  'cleaning and lubrication',
  'repair',
];

const STATUSES = ['available', 'issued', 'at the laboratory', 'quarantined', 'scrapped'];

const STEPS = [
  'issue',
  'return',
  'send to the laboratory',
  'take back from the laboratory',
  'quarantine',
  'release from quarantine',
  'scrap',
];

const valuesOf = (names: readonly string[]) => names.map((name) => `('${name}')`).join(', ');
const version = 'version integer not null check (version >= 1)';
const status = (column: string) => `${column} text not null check (${oneOf(column, STATUSES)})`;
const happened = `happened_at text not null check (${moment('happened_at')}),
       happened_at_utc text not null check (${utcMoment('happened_at_utc')})`;
const tool = 'tool_id text not null references tool (id) on delete restrict';
const person = 'person_id text not null references person (id) on delete restrict';

/**
 * Custody, checks, checklists, rules, kits and attachments. Classes of tools and their parts in events become rows of
 * their own, as kinds of events are; a link from an event to a tool says when the tool was used in it, so that the
 * uses since a calibration are a range of one index.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  await runStatements(db, [
    `insert into event_kind (name) values ${valuesOf(EVENT_KINDS)}`,
    `insert into person_part (name) values ${valuesOf(PERSON_PARTS)}`,
    `create table tool_class (name text primary key) strict, without rowid`,
    `insert into tool_class (name) values ${valuesOf(TOOL_CLASSES)}`,
    `create table tool_part (name text primary key) strict, without rowid`,
    `insert into tool_part (name) values ${valuesOf(TOOL_PARTS)}`,
    ...rebuiltTool(),
    ...rebuiltEventTool(),
    ...rebuiltCertificate(),
  ]);
  await fillSerialKeys(db);
  await runStatements(db, [...custody(), ...checks(), ...kits(), ...attachments()]);
}

/** Same columns as before, then the folded serial number, who has the tool, and in how much recorded work it was. */
function rebuiltTool(): string[] {
  return [
    `create table tool_copy (
       id text primary key check (${uuid('id')}),
       ${version},
       number text not null check (length(number) between 1 and 40),
       number_key text not null unique,
       number_sort text not null,
       serial text not null check (length(serial) <= 80),
       class text not null references tool_class (name) on delete restrict,
       ${status('status')},
       place text not null check (length(place) <= 120),
       ratings text not null,
       valid_until text check (${day('valid_until')}),
       search text not null,
       data text not null check (${json('data')}),
       serial_key text not null default '' check (length(serial_key) <= 400),
       holder_id text references person (id) on delete restrict,
       uses integer not null default 0 check (uses >= 0)
     ) strict`,
    `insert into tool_copy
       select id, version, number, number_key, number_sort, serial, class, status, place, ratings, valid_until, search,
         data, '', null, 0
       from tool`,
    `drop table tool`,
    `alter table tool_copy rename to tool`,
    `create index tool_by_number on tool (number_sort, id)`,
    `create index tool_by_class on tool (class, number_sort)`,
    `create index tool_by_status on tool (status, number_sort)`,
    `create index tool_by_valid_until on tool (valid_until, number_sort)`,
    `create index tool_by_serial on tool (serial_key, class) where serial_key <> ''`,
    `create index tool_by_holder on tool (holder_id) where holder_id is not null`,
  ];
}

function rebuiltEventTool(): string[] {
  return [
    `create table event_tool_copy (
       event_id text not null references event (id) on delete restrict,
       ${tool},
       role text not null references tool_part (name) on delete restrict,
       position integer not null check (position >= 0),
       used_at text check (${utcMoment('used_at')}),
       primary key (event_id, tool_id, role)
     ) strict, without rowid`,
    `insert into event_tool_copy
       select event_id, tool_id, role, position,
         case when event.kind in ('tightening recorded', 'breakout recorded') then event.happened_at_utc end
       from event_tool left join event on event.id = event_tool.event_id`,
    `drop table event_tool`,
    `alter table event_tool_copy rename to event_tool`,
    `create index event_tool_trace on event_tool (tool_id, event_id)`,
    `update tool set uses =
       (select count(*) from event_tool where event_tool.tool_id = tool.id and used_at is not null)`,
    `create index event_tool_use on event_tool (tool_id, used_at) where used_at is not null`,
    ...appendOnly('event_tool', ['event_id', 'tool_id', 'role']),
  ];
}

/** Certificates of hand torque wrenches as well. */
function rebuiltCertificate(): string[] {
  return [
    `create table certificate_copy (
       id text primary key references event (id) on delete restrict,
       ${tool},
       number text not null check (length(number) between 1 and 60),
       number_key text not null,
       laboratory text not null check (length(laboratory) between 1 and 160),
       calibrated_on text not null check (${day('calibrated_on')}),
       valid_until text not null check (${day('valid_until')}),
       result text not null check (${oneOf('result', ['within limits', 'outside limits', 'no limits stated'])}),
       condition text not null check (${oneOf('condition', ['as found', 'as left'])}),
       measured text not null check (${oneOf('measured', ['pressure-torque', 'gauge', 'hand torque'])}),
       data text not null check (${json('data')}),
       unique (tool_id, number_key),
       check (valid_until >= calibrated_on)
     ) strict`,
    `insert into certificate_copy
       select id, tool_id, number, number_key, laboratory, calibrated_on, valid_until, result, condition, measured, data
       from certificate`,
    `drop table certificate`,
    `alter table certificate_copy rename to certificate`,
    `create index certificate_by_tool on certificate (tool_id, calibrated_on)`,
    ...appendOnly('certificate', ['id']),
  ];
}

/** Folded as names are: in the program, because SQLite folds only ASCII. */
async function fillSerialKeys(db: Kysely<unknown>): Promise<void> {
  const { rows } = await sql<{
    id: string;
    serial: string;
  }>`select id, serial from tool where serial <> ''`.execute(db);
  for (const { id, serial } of rows) {
    const key = serial.normalize('NFKC').toLowerCase().trim().replace(/\s+/g, ' ');
    await sql`update tool set serial_key = ${key} where id = ${id}`.execute(db);
  }
}

function custody(): string[] {
  return [
    `create table tool_move (
       event_id text not null references event (id) on delete restrict,
       ${tool},
       position integer not null check (position between 0 and 39),
       step text not null check (${oneOf('step', STEPS)}),
       ${status('from_status')},
       ${status('to_status')},
       ${happened},
       ${person},
       holder_id text references person (id) on delete restrict,
       condition text check (${oneOf('condition', ['good', 'to be looked at', 'damaged'])}),
       place text not null check (length(place) <= 120),
       reference text not null check (length(reference) <= 120),
       reason text not null check (length(reason) <= 500),
       kit_id text references kit (id) on delete restrict,
       primary key (event_id, tool_id)
     ) strict, without rowid`,
    `create index tool_move_by_tool on tool_move (tool_id, happened_at_utc)`,
    `create index tool_move_by_person on tool_move (person_id)`,
    `create index tool_move_by_holder on tool_move (holder_id) where holder_id is not null`,
    `create index tool_move_by_kit on tool_move (kit_id) where kit_id is not null`,
    ...appendOnly('tool_move', ['event_id', 'tool_id']),
    `create table tool_overload (
       event_id text not null references event (id) on delete restrict,
       ${tool},
       ${happened},
       text text not null check (length(text) between 1 and 400),
       primary key (event_id, tool_id)
     ) strict, without rowid`,
    `create index tool_overload_by_tool on tool_overload (tool_id, happened_at_utc)`,
    ...appendOnly('tool_overload', ['event_id', 'tool_id']),
  ];
}

function checks(): string[] {
  return [
    `create table checklist (
       id text primary key check (${uuid('id')}),
       ${version},
       name text not null check (length(name) between 1 and 80),
       name_key text not null unique,
       kind text not null check (${oneOf('kind', CHECK_KINDS)}),
       retired integer not null check (retired in (0, 1)),
       data text not null check (${json('data')})
     ) strict`,
    `create table tool_check (
       id text primary key references event (id) on delete restrict,
       ${tool},
       kind text not null check (${oneOf('kind', CHECK_KINDS)}),
       ${happened},
       ${person},
       checklist_id text references checklist (id) on delete restrict,
       checklist_version integer check (checklist_version >= 1),
       result text not null check (${oneOf('result', ['passed', 'failed'])}),
       error real check (${between('error', -1, 1e6)}),
       data text not null check (${json('data')}),
       check ((checklist_id is null) = (checklist_version is null))
     ) strict`,
    `create index tool_check_by_tool on tool_check (tool_id, happened_at_utc)`,
    `create index tool_check_by_person on tool_check (person_id)`,
    `create index tool_check_by_checklist on tool_check (checklist_id) where checklist_id is not null`,
    ...appendOnly('tool_check', ['id']),
    `create table tool_rule (
       id text primary key check (${uuid('id')}),
       ${version},
       class text not null unique references tool_class (name) on delete restrict,
       data text not null check (${json('data')})
     ) strict`,
  ];
}

function kits(): string[] {
  return [
    `create table kit (
       id text primary key check (${uuid('id')}),
       ${version},
       name text not null check (length(name) between 1 and 120),
       name_key text not null,
       from_day text not null check (${day('from_day')}),
       to_day text not null check (${day('to_day')}),
       closed integer not null check (closed in (0, 1)),
       data text not null check (${json('data')}),
       check (to_day >= from_day)
     ) strict`,
    `create index kit_by_day on kit (closed, from_day)`,
    `create table kit_tool (
       kit_id text not null references kit (id) on delete restrict,
       ${tool},
       position integer not null check (position between 0 and 39),
       primary key (kit_id, tool_id)
     ) strict, without rowid`,
    `create index kit_tool_by_tool on kit_tool (tool_id)`,
    `create table kit_joint (
       kit_id text not null references kit (id) on delete restrict,
       joint_id text not null references joint (id) on delete restrict,
       position integer not null check (position between 0 and 199),
       primary key (kit_id, joint_id)
     ) strict, without rowid`,
    `create index kit_joint_by_joint on kit_joint (joint_id)`,
  ];
}

/** The same content may be attached in several places, under several names. */
function attachments(): string[] {
  return [
    `create table attachment_use (
       event_id text primary key references event (id) on delete restrict,
       attachment_hash text not null check (${hash('attachment_hash')}) references attachment (hash) on delete restrict,
       tool_id text references tool (id) on delete restrict,
       owner_event_id text references event (id) on delete restrict,
       name text not null check (length(name) between 1 and 200),
       ${person},
       happened_at text not null check (${moment('happened_at')}),
       remarks text not null check (length(remarks) <= 300),
       check ((tool_id is null) <> (owner_event_id is null))
     ) strict`,
    `create index attachment_use_by_tool on attachment_use (tool_id) where tool_id is not null`,
    `create index attachment_use_by_event on attachment_use (owner_event_id) where owner_event_id is not null`,
    `create index attachment_use_by_hash on attachment_use (attachment_hash)`,
    `create index attachment_use_by_person on attachment_use (person_id)`,
    ...appendOnly('attachment_use', ['event_id']),
  ];
}
