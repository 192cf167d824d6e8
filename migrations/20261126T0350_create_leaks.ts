import type { Kysely } from 'kysely';
import { appendOnly, day, json, moment, oneOf, runStatements, utcMoment } from './statements.ts';

/** Leaks of joints with what became of them, and counts of thermal cycles. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await runStatements(db, [
    `insert into event_kind (name) values ('cycles counted')`,
    `insert into person_part (name) values ('counted')`,
    `create table leak (
       id text primary key references event (id) on delete restrict,
       joint_id text not null references joint (id) on delete restrict,
       origin text not null check (${oneOf('origin', ['report', 'failed test'])}),
       phase text not null check (${oneOf('phase', ['leak test', 'start-up', 'in service', 'not known'])}),
       make_up integer not null check (make_up >= 0),
       happened_at text not null check (${moment('happened_at')}),
       happened_at_utc text not null check (${utcMoment('happened_at_utc')}),
       causes text not null check (${json('causes')}),
       closed_by text references event (id) on delete restrict,
       closed_at text check (${moment('closed_at')}),
       closed_at_utc text check (${utcMoment('closed_at_utc')}),
       check ((closed_by is null) = (closed_at is null)),
       check ((closed_by is null) = (closed_at_utc is null))
     ) strict`,
    `create index leak_by_joint on leak (joint_id, happened_at_utc)`,
    `create index leak_by_time on leak (happened_at_utc, id)`,
    `create index leak_by_closing on leak (closed_by) where closed_by is not null`,
    `create table cycle_count (
       event_id text not null references event (id) on delete restrict,
       joint_id text not null references joint (id) on delete restrict,
       starts_on text not null check (${day('starts_on')}),
       ends_on text not null check (${day('ends_on')} and ends_on >= starts_on),
       from_utc text not null check (${utcMoment('from_utc')}),
       until_utc text not null check (${utcMoment('until_utc')} and until_utc > from_utc),
       cycles integer not null check (cycles between 0 and 100000),
       primary key (event_id, joint_id)
     ) strict, without rowid`,
    `create index cycle_count_by_joint on cycle_count (joint_id, from_utc)`,
    ...appendOnly('cycle_count', ['event_id', 'joint_id']),
  ]);
}
