import type { Kysely } from 'kysely';
import { appendOnly, day, json, oneOf, runStatements, utcMoment, uuid } from './statements.ts';

const EVENT_KINDS = [
  'sign-in begun',
  'signed in',
  'sign-in failed',
  'locked out',
  'secret changed',
  'person roles saved',
  'competence saved',
];

const version = 'version integer not null check (version >= 1)';
const person = 'person_id text not null references person (id) on delete restrict';

/**
 * Sign-in, roles and competences. Hashes of secrets and the count of wrong ones are in no event: they are nobody's
 * business but this register's, and a history that is handed on must not carry them.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  await runStatements(db, [
    `insert into event_kind (name) values ${EVENT_KINDS.map((kind) => `('${kind}')`).join(', ')}`,
    `insert into person_part (name) values ('access')`,
    `create table sign_in (
       event_id text primary key references event (id) on delete restrict,
       ${person},
       begun_at text not null check (${utcMoment('begun_at')})
     ) strict`,
    ...appendOnly('sign_in', ['event_id']),
    `create table person_roles (
       person_id text primary key references person (id) on delete restrict,
       ${version},
       roles text not null check (${json('roles')})
     ) strict`,
    `create table competence (
       id text primary key check (${uuid('id')}),
       ${version},
       ${person},
       scheme text not null check (length(scheme) between 1 and 120),
       issued_on text not null check (${day('issued_on')}),
       last_good_day text check (${day('last_good_day')}),
       withdrawn integer not null check (withdrawn in (0, 1)),
       data text not null check (${json('data')}),
       check (last_good_day >= issued_on)
     ) strict`,
    `create index competence_by_person on competence (person_id, issued_on)`,
    `create table person_secret (
       person_id text primary key references person (id) on delete restrict,
       ${version},
       function text not null check (${oneOf('function', ['scrypt'])}),
       cost integer not null check (cost between 1024 and 16777216),
       block_size integer not null check (block_size between 1 and 64),
       parallelization integer not null check (parallelization between 1 and 64),
       salt blob not null check (length(salt) = 16),
       hash blob not null check (length(hash) = 32),
       to_be_changed integer not null check (to_be_changed in (0, 1)),
       changed_at text not null check (${utcMoment('changed_at')})
     ) strict`,
    `create table wrong_secret (
       about text primary key check (length(about) between 1 and 20),
       count integer not null check (count >= 1),
       moment text not null check (${utcMoment('moment')})
     ) strict, without rowid`,
    `create table setting_override (
       setting_id text not null references setting (id) on delete restrict,
       code text not null check (length(code) between 1 and 60),
       reason text not null check (length(reason) between 1 and 500),
       primary key (setting_id, code)
     ) strict, without rowid`,
    ...appendOnly('setting_override', ['setting_id', 'code']),
  ]);
}
