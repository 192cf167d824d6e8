import type { Kysely } from 'kysely';
import { appendOnly, json, moment, oneOf, runStatements, utcMoment, uuid } from './statements.ts';

const version = 'version integer not null check (version >= 1)';

/** Master data of the plant: the columns are what the newest event about each record says. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await runStatements(db, [
    `create table site (
       id text primary key check (${uuid('id')}),
       name text not null check (length(name) between 1 and 120),
       time_zone text not null check (length(time_zone) between 1 and 60),
       demo integer not null check (demo in (0, 1))
     ) strict`,
    `create table plant_unit (
       id text primary key check (${uuid('id')}),
       site_id text not null references site (id) on delete restrict,
       ${version},
       name text not null check (length(name) between 1 and 120),
       name_key text not null unique
     ) strict`,
    `create table person (
       id text primary key check (${uuid('id')}),
       ${version},
       name text not null check (length(name) between 1 and 120),
       name_key text not null,
       role text not null check (length(role) <= 80)
     ) strict`,
    `create index person_by_name on person (name_key, id)`,
    `create table batch (
       id text primary key check (${uuid('id')}),
       kind text not null check (${oneOf('kind', ['lubricant', 'gasket', 'stud', 'nut'])}),
       name text not null check (length(name) between 1 and 120),
       number text not null check (length(number) between 1 and 80),
       name_key text not null,
       number_key text not null,
       unique (kind, name_key, number_key)
     ) strict`,
    `create table joint (
       id text primary key check (${uuid('id')}),
       unit_id text not null references plant_unit (id) on delete restrict,
       ${version},
       tag text not null check (length(tag) between 1 and 60),
       tag_key text not null unique,
       tag_sort text not null,
       location text not null check (length(location) <= 300),
       service text not null check (length(service) <= 120),
       service_sort text not null,
       flange text not null,
       bolting text not null,
       grade text,
       search text not null,
       data text not null check (${json('data')}),
       last_event_kind text check (${oneOf('last_event_kind', ['tightening', 'breakout'])}),
       last_event_at text check (${moment('last_event_at')}),
       last_event_at_utc text check (${utcMoment('last_event_at_utc')}),
       check ((last_event_kind is null) = (last_event_at is null)
          and (last_event_at is null) = (last_event_at_utc is null))
     ) strict`,
    `create index joint_by_tag on joint (tag_sort, id)`,
    `create index joint_by_unit on joint (unit_id, tag_sort)`,
    `create index joint_by_service on joint (service_sort, tag_sort, id)`,
    `create index joint_by_last_event on joint (last_event_at_utc, tag_sort, id)`,
    `create table event_joint (
       event_id text not null references event (id) on delete restrict,
       joint_id text not null references joint (id) on delete restrict,
       primary key (event_id, joint_id)
     ) strict, without rowid`,
    `create index event_joint_history on event_joint (joint_id, event_id)`,
    ...appendOnly('event_joint', ['event_id', 'joint_id']),
    `create table event_person (
       event_id text not null references event (id) on delete restrict,
       person_id text not null references person (id) on delete restrict,
       role text not null check (${oneOf('role', ['issued', 'did the work'])}),
       position integer not null check (position >= 0),
       primary key (event_id, person_id, role)
     ) strict, without rowid`,
    `create index event_person_trace on event_person (person_id, event_id)`,
    ...appendOnly('event_person', ['event_id', 'person_id', 'role']),
    `create table event_batch (
       event_id text not null references event (id) on delete restrict,
       batch_id text not null references batch (id) on delete restrict,
       primary key (event_id, batch_id)
     ) strict, without rowid`,
    `create index event_batch_trace on event_batch (batch_id, event_id)`,
    ...appendOnly('event_batch', ['event_id', 'batch_id']),
  ]);
}
