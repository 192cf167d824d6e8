import type { Kysely } from 'kysely';
import { appendOnly, json, moment, oneOf, runStatements, utcMoment } from './statements.ts';

const happened = `happened_at text not null check (${moment('happened_at')}),
       happened_at_utc text not null check (${utcMoment('happened_at_utc')})`;
const person = 'person_id text not null references person (id) on delete restrict';

/** Out-of-tolerance cases: what was opened, decided joint by joint, and closed. What a case finds is worked out from the log. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await runStatements(db, [
    `insert into event_kind (name) values ('case opened'), ('case decided'), ('case closed')`,
    `insert into person_part (name) values ('opened the case'), ('decided'), ('closed the case')`,
    `create table recall_case (
       id text primary key references event (id) on delete restrict,
       number text not null unique check (number glob 'OT-[0-9][0-9][0-9][0-9]*'),
       subject_kind text not null check (${oneOf('subject_kind', ['tool', 'batch'])}),
       tool_id text references tool (id) on delete restrict,
       batch_id text references batch (id) on delete restrict,
       basis_kind text not null check (${oneOf('basis_kind', ['certificate', 'check', 'statement'])}),
       basis_event_id text references event (id) on delete restrict,
       subject text not null check (length(subject) between 1 and 300),
       basis text not null check (length(basis) between 1 and 600),
       ${happened},
       ${person},
       data text not null check (${json('data')}),
       check ((tool_id is null) = (subject_kind = 'batch') and (batch_id is null) = (subject_kind = 'tool')),
       check ((basis_event_id is null) = (basis_kind = 'statement'))
     ) strict`,
    `create index recall_case_by_tool on recall_case (tool_id) where tool_id is not null`,
    `create index recall_case_by_batch on recall_case (batch_id) where batch_id is not null`,
    `create index recall_case_by_basis on recall_case (basis_event_id) where basis_event_id is not null`,
    `create index recall_case_by_person on recall_case (person_id)`,
    `create index recall_case_by_time on recall_case (happened_at_utc)`,
    ...appendOnly('recall_case', ['id']),
    `create table recall_decision (
       event_id text not null references event (id) on delete restrict,
       tightening_id text not null references tightening (id) on delete restrict,
       case_id text not null references recall_case (id) on delete restrict,
       decision text not null check (${oneOf('decision', [
         'accept',
         'retighten',
         'monitor',
         'replace the gasket',
       ])}),
       reason text not null check (length(reason) between 1 and 500),
       ${happened},
       ${person},
       primary key (event_id, tightening_id)
     ) strict, without rowid`,
    `create index recall_decision_by_case on recall_decision (case_id, tightening_id)`,
    `create index recall_decision_by_tightening on recall_decision (tightening_id)`,
    `create index recall_decision_by_person on recall_decision (person_id)`,
    ...appendOnly('recall_decision', ['event_id', 'tightening_id']),
    `create table recall_closure (
       id text primary key references event (id) on delete restrict,
       case_id text not null unique references recall_case (id) on delete restrict,
       affected integer not null check (affected >= 0),
       decided integer not null check (decided between 0 and affected),
       ${happened},
       ${person}
     ) strict`,
    `create index recall_closure_by_person on recall_closure (person_id)`,
    ...appendOnly('recall_closure', ['id', 'case_id']),
  ]);
}
