import type { Kysely } from 'kysely';
import { appendOnly, json, moment, oneOf, runStatements, utcMoment, uuid } from './statements.ts';

/** Campaigns and their jobs, with every version of a job: what changed in the scope stays visible. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await runStatements(db, [
    `insert into event_kind (name) values ('campaign saved'), ('job saved')`,
    `insert into person_part (name) values ('changed the job')`,
    `create table campaign (
       id text primary key check (${uuid('id')}),
       version integer not null check (version >= 1),
       name text not null check (length(name) between 1 and 120),
       name_key text not null,
       starts_at text not null check (${moment('starts_at')}),
       starts_at_utc text not null check (${utcMoment('starts_at_utc')}),
       ends_at text not null check (${moment('ends_at')}),
       ends_at_utc text not null check (${utcMoment('ends_at_utc')} and ends_at_utc > starts_at_utc),
       closed integer not null check (closed in (0, 1)),
       data text not null check (${json('data')})
     ) strict`,
    `create unique index campaign_open_name on campaign (name_key) where closed = 0`,
    `create table job (
       id text primary key check (${uuid('id')}),
       campaign_id text not null references campaign (id) on delete restrict,
       version integer not null check (version >= 1),
       number text not null check (length(number) between 1 and 40),
       number_key text not null,
       number_sort text not null,
       joint_id text not null references joint (id) on delete restrict,
       scope text not null check (${oneOf('scope', ['break', 'make', 'break and make'])}),
       system_key text not null,
       test_pack_key text not null,
       dropped integer not null check (dropped in (0, 1)),
       search text not null,
       data text not null check (${json('data')}),
       unique (campaign_id, number_key)
     ) strict`,
    `create index job_by_campaign on job (campaign_id, dropped, number_sort, id)`,
    `create index job_by_joint on job (joint_id)`,
    `create table job_version (
       event_id text primary key references event (id) on delete restrict,
       job_id text not null references job (id) on delete restrict,
       campaign_id text not null references campaign (id) on delete restrict,
       version integer not null check (version >= 1),
       happened_at text not null check (${moment('happened_at')}),
       happened_at_utc text not null check (${utcMoment('happened_at_utc')}),
       person_id text references person (id) on delete restrict,
       reason text not null,
       data text not null check (${json('data')}),
       unique (job_id, version)
     ) strict`,
    `create index job_version_by_campaign on job_version (campaign_id, happened_at_utc, event_id)`,
    ...appendOnly('job_version', ['event_id']),
  ]);
}
