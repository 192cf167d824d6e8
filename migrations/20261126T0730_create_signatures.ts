import type { Kysely } from 'kysely';
import { appendOnly, hash, json, oneOf, runStatements, utcMoment, uuid } from './statements.ts';

/**
 * Signatures on records, and what was refused. A signature is an event; a refusal is none, because a request that was
 * refused changes nothing in the history of the plant: it is kept in a chain of its own.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  await runStatements(db, [
    `insert into event_kind (name) values ('record signed')`,
    `insert into person_part (name) values ('signed')`,
    `create table signature (
       id text primary key references event (id) on delete restrict,
       event_id text not null references event (id) on delete restrict,
       hash text not null check (${hash('hash')}),
       meaning text not null check (${oneOf('meaning', ['did', 'witnessed', 'approved', 'reviewed'])}),
       person_id text not null references person (id) on delete restrict,
       known_by text not null check (${oneOf('known_by', ['secret', 'name'])}),
       signed_at text not null check (${utcMoment('signed_at')}),
       unique (event_id, person_id, meaning)
     ) strict`,
    `create index signature_by_person on signature (person_id, signed_at)`,
    ...appendOnly('signature', ['id']),
    `create table refusal (
       id text primary key check (${uuid('id')}),
       origin_id text not null references origin (id) on delete restrict,
       sequence integer not null check (sequence >= 1),
       previous_hash text not null check (${hash('previous_hash')}),
       hash text not null unique check (${hash('hash')}),
       body text not null check (${json('body')}),
       request text not null check (length(request) between 1 and 60),
       person_id text references person (id) on delete restrict,
       refused_at text not null check (${utcMoment('refused_at')}),
       unique (origin_id, sequence)
     ) strict`,
    `create index refusal_by_time on refusal (refused_at, id)`,
    `create index refusal_by_person on refusal (person_id) where person_id is not null`,
    ...appendOnly('refusal', ['id']),
  ]);
}
