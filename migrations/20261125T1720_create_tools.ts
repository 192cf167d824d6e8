import type { Kysely } from 'kysely';
import { appendOnly, between, day, json, oneOf, runStatements, uuid } from './statements.ts';

const torqueOrPressure = (column: string) => between(column, 0, 4e8);

/** Tools, their certificates, and which tool had a part in which event. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await runStatements(db, [
    `create table tool (
       id text primary key check (${uuid('id')}),
       version integer not null check (version >= 1),
       number text not null check (length(number) between 1 and 40),
       number_key text not null unique,
       number_sort text not null,
       serial text not null check (length(serial) <= 80),
       class text not null check (${oneOf('class', ['drive unit', 'cassette', 'reducer', 'pump', 'gauge', 'hose'])}),
       status text not null check (${oneOf('status', [
         'available',
         'issued',
         'at the laboratory',
         'quarantined',
         'scrapped',
       ])}),
       place text not null check (length(place) <= 120),
       ratings text not null,
       valid_until text check (${day('valid_until')}),
       search text not null,
       data text not null check (${json('data')})
     ) strict`,
    `create index tool_by_number on tool (number_sort, id)`,
    `create index tool_by_class on tool (class, number_sort)`,
    `create index tool_by_status on tool (status, number_sort)`,
    `create index tool_by_valid_until on tool (valid_until, number_sort)`,
    `create table event_tool (
       event_id text not null references event (id) on delete restrict,
       tool_id text not null references tool (id) on delete restrict,
       role text not null check (${oneOf('role', [
         'saved',
         'calibrated',
         'calibrated with',
         'drive unit',
         'cassette',
         'reducer',
         'pump',
         'gauge',
         'hose',
       ])}),
       position integer not null check (position >= 0),
       primary key (event_id, tool_id, role)
     ) strict, without rowid`,
    `create index event_tool_trace on event_tool (tool_id, event_id)`,
    ...appendOnly('event_tool', ['event_id', 'tool_id', 'role']),
    `create table certificate (
       id text primary key references event (id) on delete restrict,
       tool_id text not null references tool (id) on delete restrict,
       number text not null check (length(number) between 1 and 60),
       number_key text not null,
       laboratory text not null check (length(laboratory) between 1 and 160),
       calibrated_on text not null check (${day('calibrated_on')}),
       valid_until text not null check (${day('valid_until')}),
       result text not null check (${oneOf('result', ['within limits', 'outside limits', 'no limits stated'])}),
       condition text not null check (${oneOf('condition', ['as found', 'as left'])}),
       measured text not null check (${oneOf('measured', ['pressure-torque', 'gauge'])}),
       data text not null check (${json('data')}),
       unique (tool_id, number_key),
       check (valid_until >= calibrated_on)
     ) strict`,
    `create index certificate_by_tool on certificate (tool_id, calibrated_on)`,
    ...appendOnly('certificate', ['id']),
    `create table certificate_point (
       certificate_id text not null references certificate (id) on delete restrict,
       position integer not null check (position between 0 and 199),
       direction text check (${oneOf('direction', ['up', 'down'])}),
       pressure_text text not null,
       pressure_unit text not null,
       pressure_pa real not null check (${torqueOrPressure('pressure_pa')}),
       measured_text text not null,
       measured_unit text not null,
       measured_si real not null check (${torqueOrPressure('measured_si')}),
       primary key (certificate_id, position)
     ) strict, without rowid`,
    ...appendOnly('certificate_point', ['certificate_id', 'position']),
  ]);
}
