import type { Kysely } from 'kysely';
import { appendOnly, json, moment, oneOf, runStatements, utcMoment, uuid } from './statements.ts';

const happened = (name: string) => `${name} text not null check (${moment(name)}),
       ${name}_utc text not null check (${utcMoment(`${name}_utc`)})`;

/** Passes of a tightening as they were recorded at the joint, and drafts of work in progress. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await runStatements(db, [
    `insert into event_kind (name) values ('pass recorded')`,
    `insert into person_part (name) values ('set the gauge'), ('confirmed the setting')`,
    `create table pass_record (
       id text primary key references event (id) on delete restrict,
       run_id text not null check (${uuid('run_id')}),
       joint_id text not null references joint (id) on delete restrict,
       setting_id text references setting (id) on delete restrict,
       bolt_set integer not null check (bolt_set between 0 and 8),
       pass integer not null check (pass between 1 and of_passes),
       of_passes integer not null check (of_passes between 1 and 40),
       round integer not null check (round between 1 and 20),
       name text not null check (length(name) between 1 and 80),
       bolts_done integer not null check (bolts_done between 0 and 400),
       last_bolt integer check (last_bolt between 1 and 400),
       stopped text check (${oneOf('stopped', [
         'shift change',
         'tool or pump',
         'nut or stud',
         'alarm or permit',
         'weather',
         'other',
       ])}),
       ${happened('started_at')},
       ${happened('ended_at')},
       flags text not null check (${json('flags')}),
       check (ended_at_utc >= started_at_utc),
       check ((last_bolt is null) = (bolts_done = 0))
     ) strict`,
    `create index pass_record_by_run on pass_record (run_id, ended_at_utc, id)`,
    `create index pass_record_by_joint on pass_record (joint_id, ended_at_utc, id)`,
    `create index pass_record_by_setting on pass_record (setting_id) where setting_id is not null`,
    ...appendOnly('pass_record', ['id']),
    `create table tightening_pass (
       tightening_id text not null references tightening (id) on delete restrict,
       pass_id text not null references pass_record (id) on delete restrict,
       position integer not null check (position >= 0),
       primary key (tightening_id, pass_id)
     ) strict, without rowid`,
    `create index tightening_pass_by_pass on tightening_pass (pass_id)`,
    ...appendOnly('tightening_pass', ['tightening_id', 'pass_id']),
    `create table draft (
       kind text not null check (length(kind) between 1 and 60),
       subject_id text not null check (${uuid('subject_id')}),
       writer text not null check (${uuid('writer')}),
       version integer not null check (version >= 1),
       data text not null check (length(data) between 1 and 65536),
       saved_at text not null check (${utcMoment('saved_at')}),
       primary key (kind, subject_id)
     ) strict, without rowid`,
  ]);
}
