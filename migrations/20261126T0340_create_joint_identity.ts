import type { Kysely } from 'kysely';
import { appendOnly, hash, moment, runStatements } from './statements.ts';

/**
 * What look-alikes are found by, and files kept with a joint. Joints recorded before name no valve and no joint they
 * could be taken for, which is what the new columns say of them.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  await runStatements(db, [
    `alter table joint add column valve_key text not null default ''`,
    `create index joint_by_valve on joint (valve_key) where valve_key <> ''`,
    `create index joint_by_looks on joint (unit_id, flange, tag_sort)`,
    `create table joint_confusable (
       joint_id text not null references joint (id) on delete restrict,
       tag_key text not null check (length(tag_key) between 1 and 120),
       primary key (joint_id, tag_key)
     ) strict, without rowid`,
    `create index joint_confusable_by_tag on joint_confusable (tag_key, joint_id)`,
    `create table joint_attachment (
       event_id text primary key references event (id) on delete restrict,
       attachment_hash text not null check (${hash('attachment_hash')}) references attachment (hash) on delete restrict,
       joint_id text not null references joint (id) on delete restrict,
       name text not null check (length(name) between 1 and 200),
       person_id text not null references person (id) on delete restrict,
       happened_at text not null check (${moment('happened_at')}),
       remarks text not null check (length(remarks) <= 300)
     ) strict`,
    `create index joint_attachment_by_joint on joint_attachment (joint_id)`,
    `create index joint_attachment_by_hash on joint_attachment (attachment_hash)`,
    `create index joint_attachment_by_person on joint_attachment (person_id)`,
    ...appendOnly('joint_attachment', ['event_id']),
  ]);
}
