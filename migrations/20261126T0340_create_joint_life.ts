import type { Kysely } from 'kysely';
import { appendOnly, json, moment, oneOf, runStatements, utcMoment, uuid } from './statements.ts';

const STATES = [
  'unassessed',
  'assessed',
  'scheduled',
  'isolated',
  'released to break',
  'broken',
  'inspected',
  'held',
  'made up',
  'tightening',
  'tightened',
  'witnessed',
  'tested',
  'test failed',
  'reinstated',
  'in service',
  'leak watch',
];

/** Where each joint stands in its life, the deviations of work out of order, and what follows from a class at this site. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await runStatements(db, [
    `insert into event_kind (name) values ('joint stepped'), ('deviation decided'), ('class rule saved')`,
    `insert into person_part (name) values ('took the step'), ('witnessed'), ('checked which joint it is')`,
    `create table class_rule (
       id text primary key check (${uuid('id')}),
       version integer not null check (version >= 1),
       name text not null check (length(name) between 1 and 40),
       name_key text not null unique,
       level text not null check (${oneOf('level', ['mild', 'intermediate', 'critical'])}),
       retired integer not null check (retired in (0, 1)),
       data text not null check (${json('data')})
     ) strict`,
    `create table joint_standing (
       joint_id text primary key references joint (id) on delete restrict,
       state text not null check (${oneOf('state', STATES)}),
       containment text not null check (${oneOf('containment', ['open', 'closed', 'not followed'])}),
       class_name text,
       class_level text check (${oneOf('class_level', ['mild', 'intermediate', 'critical'])}),
       class_rule_id text references class_rule (id) on delete restrict,
       since text check (${moment('since')}),
       since_utc text check (${utcMoment('since_utc')}),
       pass integer check (pass >= 1),
       of_passes integer check (of_passes >= pass),
       last_bolt integer check (last_bolt between 1 and 400),
       isolation_ref text,
       permit_ref text,
       deviation_id text references event (id) on delete restrict,
       standing text not null check (${json('standing')}),
       check ((class_name is null) = (class_level is null)),
       check ((pass is null) = (of_passes is null))
     ) strict`,
    `create index joint_standing_by_state on joint_standing (state, joint_id)`,
    `create index joint_standing_by_deviation on joint_standing (deviation_id) where deviation_id is not null`,
    `create index joint_standing_by_rule on joint_standing (class_rule_id) where class_rule_id is not null`,
    `create table class_tightening (
       event_id text primary key references event (id) on delete restrict,
       class_key text not null check (length(class_key) between 1 and 60),
       ordinal integer not null check (ordinal >= 1)
     ) strict`,
    `create index class_tightening_by_class on class_tightening (class_key, ordinal)`,
    ...appendOnly('class_tightening', ['event_id']),
    `create table deviation (
       id text primary key references event (id) on delete restrict,
       joint_id text not null references joint (id) on delete restrict,
       opened_at text not null check (${moment('opened_at')}),
       opened_at_utc text not null check (${utcMoment('opened_at_utc')}),
       state text not null check (${oneOf('state', STATES)}),
       if_accepted text not null check (${oneOf('if_accepted', STATES)}),
       works text not null check (${json('works')}),
       decision_event_id text references event (id) on delete restrict,
       decision text check (${oneOf('decision', ['accept as done', 'to be done again', 'hold'])}),
       reason text check (length(reason) between 1 and 1000),
       person_id text references person (id) on delete restrict,
       decided_at text check (${moment('decided_at')}),
       check ((decision_event_id is null) = (decision is null)),
       check ((decision is null) = (reason is null)),
       check ((decision is null) = (person_id is null)),
       check ((decision is null) = (decided_at is null))
     ) strict`,
    `create index deviation_by_joint on deviation (joint_id, opened_at_utc)`,
    `create index deviation_open on deviation (opened_at_utc, id) where decision is null`,
  ]);
}
