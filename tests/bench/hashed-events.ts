import type Database from 'better-sqlite3';
import { eventHash, NO_PREVIOUS } from '../../core/audit/chain.ts';
import { jointData } from '../../core/contract/joint.ts';
import { sha256 } from '../../electron/service/chain/sha256.ts';
import { linkHash } from '../../electron/service/history/link-hash.ts';
import { jointA } from '../service/records.ts';

export const RECORDS = 1_000_000;
const JOINTS = 5_000;
const PEOPLE = 40;
const FIRST = Date.parse('2016-01-01T00:00:00Z');
const STEP_MS = 300_000;

const idOf = (kind: number, n: number) => `00000000-0000-7000-800${kind}-${String(n).padStart(12, '0')}`;
const PLACE = idOf(0, 1);
export const jointOf = (n: number): string => idOf(3, (n * 7919) % JOINTS);
const personOf = (n: number) => idOf(2, (n * 31) % PEOPLE);

/** Fields of a record that no column needs, as long as those of a real one are in the middle. */
const REST = {
  tools: {
    driveId: idOf(4, 1),
    cassetteId: idOf(4, 2),
    reducerIds: [],
    pumpId: idOf(4, 3),
    gaugeId: idOf(4, 4),
    hoseIds: [idOf(4, 5)],
  },
  dialled: { si: 26_000_000, text: '260', unit: 'bar' },
  remarks: 'Invented for the bench: nothing out of the ordinary, guards back on, tag hung at the valve.',
};

/** Canonical text of one tightening, its members in order; the text is what is hashed and kept. */
function bodyOf(n: number, jointId = jointOf(n)): string {
  const at = new Date(FIRST + n * STEP_MS).toISOString();
  const data = {
    batches: [],
    coreVersion: '0.1.0',
    data: {
      batches: [],
      boltSet: 0,
      boltsTightened: 12,
      dialled: REST.dialled,
      finalPassNoTurn: true,
      happenedAt: at,
      jointId,
      load: null,
      method: 'hydraulic wrench',
      passIds: [],
      personIds: [personOf(n)],
      remarks: REST.remarks,
      settingId: null,
      tools: REST.tools,
      torque: null,
      torqueTool: null,
    },
    flags: [],
    jointVersion: 1,
    overloads: [],
    torque: { basis: 'invented', certificateId: null, torque: 384.154 },
  };
  return JSON.stringify({
    bodyVersion: 1,
    data,
    happenedAt: at,
    id: idOf(1, n),
    kind: 'tightening recorded',
    originId: PLACE,
    recordedAt: at,
    recordedBy: null,
    sequence: n + 1,
    supersedes: null,
  });
}

/** Fills an empty register with a million tightenings whose texts and hashes are the program’s own. */
export function fillWithHistory(database: Database.Database): void {
  const first = bodyOf(0);
  if (linkHash(NO_PREVIOUS, first) !== eventHash(sha256, NO_PREVIOUS, first)) {
    throw new Error('the bench hashes otherwise than the program');
  }
  const now = new Date(FIRST).toISOString();
  const run = (sql: string, ...values: unknown[]) => database.prepare(sql).run(...values);
  database.transaction(() => {
    run('insert into origin (id, name, created_at) values (?, ?, ?)', PLACE, 'bench', now);
    run(`insert into site (id, name, time_zone, demo) values (?, 'bench', 'Europe/Berlin', 1)`, PLACE);
    run(
      `insert into plant_unit (id, site_id, version, name, name_key) values (?, ?, 1, 'Unit', 'unit')`,
      PLACE,
      PLACE,
    );
    const person = database.prepare(
      `insert into person (id, version, name, name_key, role) values (?, 1, ?, ?, '')`,
    );
    for (let n = 0; n < PEOPLE; n += 1) person.run(idOf(2, n), `Person ${n}`, `person ${n}`);
    const joint = database.prepare(
      `insert into joint (id, unit_id, version, tag, tag_key, tag_sort, location, service, service_sort, flange, bolting, search, data)
         values (?, ?, 1, ?, ?, ?, '', '', '', 'invented', '', '', '{}')`,
    );
    for (let n = 0; n < JOINTS; n += 1) joint.run(idOf(3, n), PLACE, `J-${n}`, `j-${n}`, `j-${n}`);
    const event = database.prepare(
      `insert into event (id, origin_id, sequence, previous_hash, hash, body, body_version, kind, happened_at, happened_at_utc, recorded_at)
         values (?, ?, ?, ?, ?, ?, 1, 'tightening recorded', ?, ?, ?)`,
    );
    const toJoint = database.prepare('insert into event_joint (event_id, joint_id) values (?, ?)');
    const toPerson = database.prepare(
      `insert into event_person (event_id, person_id, role, position) values (?, ?, 'did the work', 0)`,
    );
    let previous = NO_PREVIOUS;
    for (let n = 0; n < RECORDS; n += 1) {
      const body = bodyOf(n);
      const hash = linkHash(previous, body);
      const at = new Date(FIRST + n * STEP_MS).toISOString();
      event.run(idOf(1, n), PLACE, n + 1, previous, hash, body, at, at, at);
      toJoint.run(idOf(1, n), jointOf(n));
      toPerson.run(idOf(1, n), personOf(n));
      previous = hash;
    }
  })();
}

export const ONE_JOINT = idOf(3, 1);

/** Fills an empty register with one joint and so many tightenings of it, in the program's own texts and hashes. */
export function fillWithOneJoint(database: Database.Database, records: number): void {
  const now = new Date(FIRST).toISOString();
  const run = (sql: string, ...values: unknown[]) => database.prepare(sql).run(...values);
  database.transaction(() => {
    run('insert into origin (id, name, created_at) values (?, ?, ?)', PLACE, 'bench', now);
    run(`insert into site (id, name, time_zone, demo) values (?, 'bench', 'Europe/Berlin', 1)`, PLACE);
    run(
      `insert into plant_unit (id, site_id, version, name, name_key) values (?, ?, 1, 'Unit', 'unit')`,
      PLACE,
      PLACE,
    );
    run(
      `insert into joint (id, unit_id, version, tag, tag_key, tag_sort, location, service, service_sort, flange, bolting, search, data)
         values (?, ?, 1, 'J-1', 'j-1', 'j-1', '', '', '', 'invented', '', '', ?)`,
      ONE_JOINT,
      PLACE,
      JSON.stringify(jointData.parse(jointA(PLACE, 'J-1'))),
    );
    const event = database.prepare(
      `insert into event (id, origin_id, sequence, previous_hash, hash, body, body_version, kind, happened_at, happened_at_utc, recorded_at)
         values (?, ?, ?, ?, ?, ?, 1, 'tightening recorded', ?, ?, ?)`,
    );
    const toJoint = database.prepare('insert into event_joint (event_id, joint_id) values (?, ?)');
    const tightening = database.prepare(
      `insert into tightening (id, joint_id, happened_at, happened_at_utc, flags, bolts_tightened, final_pass_no_turn, dialled_text, dialled_unit, dialled_pa, torque_nm, basis)
         values (?, ?, ?, ?, '[]', 12, 1, '260', 'bar', 260e5, ?, 'invented')`,
    );
    let previous = NO_PREVIOUS;
    for (let n = 0; n < records; n += 1) {
      const body = bodyOf(n, ONE_JOINT);
      const hash = linkHash(previous, body);
      const at = new Date(FIRST + n * STEP_MS).toISOString();
      event.run(idOf(1, n), PLACE, n + 1, previous, hash, body, at, at, at);
      toJoint.run(idOf(1, n), ONE_JOINT);
      tightening.run(idOf(1, n), ONE_JOINT, at, at, 350 + ((n * 7919) % 90));
      previous = hash;
    }
  })();
}
