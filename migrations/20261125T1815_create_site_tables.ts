import type { Kysely } from 'kysely';
import { appendOnly, hash, json, moment, oneOf, runStatements, utcMoment, uuid } from './statements.ts';

const EVENT_KINDS = [
  'register created',
  'unit saved',
  'person saved',
  'joint saved',
  'tool saved',
  'certificate added',
  'setting issued',
  'tightening recorded',
  'breakout recorded',
  'import confirmed',
  'site row saved',
  'pass plan saved',
  'pass plan approved',
  'table values confirmed',
];

const PERSON_PARTS = ['issued', 'did the work', 'approved', 'confirmed'];

const valuesOf = (names: readonly string[]) => names.map((name) => `('${name}')`).join(', ');
const version = 'version integer not null check (version >= 1)';

/**
 * The site's own table rows, pass plans and confirmations. Kinds of events and parts of people move from a list in the
 * table's text into rows of their own, so that a later step can add one without copying the log again.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  await runStatements(db, [
    'drop index event_kind',
    `create table event_kind (name text primary key) strict, without rowid`,
    `insert into event_kind (name) values ${valuesOf(EVENT_KINDS)}`,
    `create table person_part (name text primary key) strict, without rowid`,
    `insert into person_part (name) values ${valuesOf(PERSON_PARTS)}`,
    ...rebuiltEvent(),
    ...rebuiltEventPerson(),
    `create table site_row (
       id text primary key check (${uuid('id')}),
       ${version},
       kind text not null check (${oneOf('kind', ['flange', 'stud grade', 'gasket', 'lubricant'])}),
       key text not null check (length(key) between 1 and 60),
       name_key text not null,
       source text not null check (length(source) between 1 and 300),
       retired integer not null check (retired in (0, 1)),
       search text not null,
       data text not null check (${json('data')}),
       unique (kind, name_key)
     ) strict`,
    `create table pass_plan (
       id text primary key check (${uuid('id')}),
       ${version},
       name text not null check (length(name) between 1 and 80),
       name_key text not null unique,
       source text not null check (length(source) between 1 and 300),
       data text not null check (${json('data')}),
       approved_by text references person (id) on delete restrict,
       approved_at text check (${moment('approved_at')}),
       check ((approved_by is null) = (approved_at is null))
     ) strict`,
    `create index pass_plan_approved_by on pass_plan (approved_by) where approved_by is not null`,
    `create table table_confirmation (
       event_id text not null references event (id) on delete restrict,
       position integer not null check (position between 0 and 19),
       table_name text not null check (length(table_name) between 1 and 60),
       row_key text not null check (length(row_key) between 1 and 80),
       field text not null check (length(field) between 1 and 40),
       value text not null check (length(value) between 1 and 80),
       person_id text not null references person (id) on delete restrict,
       source_seen text not null check (length(source_seen) between 1 and 300),
       happened_at text not null check (${moment('happened_at')}),
       primary key (event_id, position)
     ) strict, without rowid`,
    `create index table_confirmation_by_cell on table_confirmation (table_name, row_key, field)`,
    `create index table_confirmation_by_person on table_confirmation (person_id)`,
    ...appendOnly('table_confirmation', ['event_id', 'position']),
  ]);
}

/** Same columns as before; only where the kinds are listed has changed. Bodies and hashes are copied as they are. */
function rebuiltEvent(): string[] {
  return [
    `create table event_copy (
       id text primary key check (${uuid('id')}),
       origin_id text not null references origin (id) on delete restrict,
       sequence integer not null check (sequence >= 1),
       previous_hash text not null check (${hash('previous_hash')}),
       hash text not null unique check (${hash('hash')}),
       body text not null check (${json('body')}),
       body_version integer not null check (body_version >= 1),
       kind text not null references event_kind (name) on delete restrict,
       happened_at text not null check (${moment('happened_at')}),
       happened_at_utc text not null check (${utcMoment('happened_at_utc')}),
       recorded_at text not null check (${utcMoment('recorded_at')}),
       supersedes text references event (id) on delete restrict,
       unique (origin_id, sequence)
     ) strict`,
    `insert into event_copy
       select id, origin_id, sequence, previous_hash, hash, body, body_version, kind, happened_at, happened_at_utc,
         recorded_at, supersedes
       from event order by origin_id, sequence`,
    `drop table event`,
    `alter table event_copy rename to event`,
    `create index event_kind_time on event (kind, happened_at_utc)`,
    `create index event_supersedes on event (supersedes) where supersedes is not null`,
    ...appendOnly('event', ['id']),
  ];
}

function rebuiltEventPerson(): string[] {
  return [
    `create table event_person_copy (
       event_id text not null references event (id) on delete restrict,
       person_id text not null references person (id) on delete restrict,
       role text not null references person_part (name) on delete restrict,
       position integer not null check (position >= 0),
       primary key (event_id, person_id, role)
     ) strict, without rowid`,
    `insert into event_person_copy select event_id, person_id, role, position from event_person`,
    `drop table event_person`,
    `alter table event_person_copy rename to event_person`,
    `create index event_person_trace on event_person (person_id, event_id)`,
    ...appendOnly('event_person', ['event_id', 'person_id', 'role']),
  ];
}
