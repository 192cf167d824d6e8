import type { Kysely } from 'kysely';
import { appendOnly, day, hash, json, moment, oneOf, runStatements, utcMoment, uuid } from './statements.ts';

/** The log of events, by origin, and what answers a repeated request. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await runStatements(db, [
    `create table origin (
       id text primary key check (${uuid('id')}),
       name text not null check (length(name) between 1 and 120),
       created_at text not null check (${utcMoment('created_at')})
     ) strict`,
    `create table event (
       id text primary key check (${uuid('id')}),
       origin_id text not null references origin (id) on delete restrict,
       sequence integer not null check (sequence >= 1),
       previous_hash text not null check (${hash('previous_hash')}),
       hash text not null unique check (${hash('hash')}),
       body text not null check (${json('body')}),
       body_version integer not null check (body_version >= 1),
       kind text not null check (${oneOf('kind', [
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
       ])}),
       happened_at text not null check (${moment('happened_at')}),
       happened_at_utc text not null check (${utcMoment('happened_at_utc')}),
       recorded_at text not null check (${utcMoment('recorded_at')}),
       supersedes text references event (id) on delete restrict,
       unique (origin_id, sequence)
     ) strict`,
    `create index event_kind on event (kind, happened_at_utc)`,
    `create index event_supersedes on event (supersedes) where supersedes is not null`,
    ...appendOnly('event', ['id']),
    ...appendOnly('origin', ['id']),
    `create table request_receipt (
       key text primary key check (${uuid('key')}),
       request text not null,
       input_hash text not null check (${hash('input_hash')}),
       answer text not null check (${json('answer')}),
       recorded_at text not null check (${utcMoment('recorded_at')})
     ) strict`,
    ...appendOnly('request_receipt', ['key']),
    `create table attachment (
       hash text primary key check (${hash('hash')}),
       name text not null check (length(name) between 1 and 260),
       media_type text not null,
       size integer not null check (size >= 0),
       added_on text not null check (${day('added_on')})
     ) strict`,
    ...appendOnly('attachment', ['hash']),
    `create table event_attachment (
       event_id text not null references event (id) on delete restrict,
       attachment_hash text not null references attachment (hash) on delete restrict,
       primary key (event_id, attachment_hash)
     ) strict, without rowid`,
    `create index event_attachment_hash on event_attachment (attachment_hash)`,
    ...appendOnly('event_attachment', ['event_id', 'attachment_hash']),
  ]);
}
