import type { Kysely } from 'kysely';
import { appendOnly, between, day, json, moment, oneOf, runStatements, utcMoment } from './statements.ts';

const kind = oneOf('kind', ['tightening', 'breakout']);
const torque = (column: string) => between(column, 0, 1e6);
const pressure = (column: string) => between(column, 0, 4e8);

const typedPressure = `
       dialled_text text,
       dialled_unit text,
       dialled_pa real check (${pressure('dialled_pa')}),
       torque_text text,
       torque_unit text,
       torque_nm real check (${torque('torque_nm')}),
       basis text not null,
       check ((dialled_text is null) = (dialled_pa is null) and (dialled_unit is null) = (dialled_pa is null))`;

const work = `
       id text primary key references event (id) on delete restrict,
       joint_id text not null references joint (id) on delete restrict,
       setting_id text references setting (id) on delete restrict,
       happened_at text not null check (${moment('happened_at')}),
       happened_at_utc text not null check (${utcMoment('happened_at_utc')}),
       flags text not null check (${json('flags')})`;

/** Issued settings and what was done: one row per event, never changed. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await runStatements(db, [
    `create table setting (
       id text primary key references event (id) on delete restrict,
       number text not null unique check (number glob 'S-[0-9][0-9][0-9][0-9]*'),
       kind text not null check (${kind}),
       joint_id text not null references joint (id) on delete restrict,
       joint_version integer not null check (joint_version >= 1),
       starts_on text not null check (${day('starts_on')}),
       ends_on text not null check (${day('ends_on')}),
       issued_at text not null check (${utcMoment('issued_at')}),
       issued_by text not null references person (id) on delete restrict,
       dial_value real check (${pressure('dial_value')}),
       dial_unit text,
       dial_pa real check (${pressure('dial_pa')}),
       check (ends_on >= starts_on),
       check ((dial_value is null) = (dial_pa is null) and (dial_unit is null) = (dial_pa is null))
     ) strict`,
    `create index setting_by_joint on setting (joint_id, issued_at)`,
    `create index setting_by_date on setting (issued_at)`,
    ...appendOnly('setting', ['id']),
    `create table tightening (${work},
       bolts_tightened integer not null check (bolts_tightened between 0 and 400),
       final_pass_no_turn integer not null check (final_pass_no_turn in (0, 1)),
       ${typedPressure}
     ) strict`,
    `create index tightening_by_joint on tightening (joint_id, happened_at_utc)`,
    `create index tightening_by_setting on tightening (setting_id) where setting_id is not null`,
    ...appendOnly('tightening', ['id']),
    `create table breakout (${work},
       readings integer not null check (readings between 0 and 400),
       not_turned integer not null check (not_turned between 0 and 400),
       torque_nm real check (${torque('torque_nm')}),
       highest_nm real check (${torque('highest_nm')}),
       check ((torque_nm is null) = (highest_nm is null))
     ) strict`,
    `create index breakout_by_joint on breakout (joint_id, happened_at_utc)`,
    `create index breakout_by_setting on breakout (setting_id) where setting_id is not null`,
    ...appendOnly('breakout', ['id']),
    `create table breakout_reading (
       breakout_id text not null references breakout (id) on delete restrict,
       bolt integer not null check (bolt between 1 and 400),
       outcome text not null check (${oneOf('outcome', ['turned', 'would not turn', 'cut'])}),
       ${typedPressure},
       primary key (breakout_id, bolt)
     ) strict, without rowid`,
    ...appendOnly('breakout_reading', ['breakout_id', 'bolt']),
  ]);
}
