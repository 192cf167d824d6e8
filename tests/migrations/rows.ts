import Database from 'better-sqlite3';
import { queryBuilder } from '../../electron/service/register/dialect.ts';
import { migrate } from '../../electron/service/register/migrate.ts';

type Row = Readonly<Record<string, unknown>>;

const uuid = (n: number) => `00000000-0000-7000-8000-${String(n).padStart(12, '0')}`;
const hash = (n: number) => n.toString(16).padStart(64, '0');

const NOW = '2026-03-16T06:42:00.000Z';
const NOW_AT_SITE = '2026-03-16T07:42:00+01:00';

const event = (n: number, kind = 'unit saved'): Row => ({
  id: uuid(n),
  origin_id: uuid(1),
  sequence: n,
  previous_hash: hash(n - 1),
  hash: hash(n),
  body: '{}',
  body_version: 1,
  kind,
  happened_at: NOW_AT_SITE,
  happened_at_utc: NOW,
  recorded_at: NOW,
  supersedes: null,
});

const torque = {
  dialled_text: '260',
  dialled_unit: 'bar',
  dialled_pa: 260e5,
  torque_text: null,
  torque_unit: null,
  torque_nm: 384.154,
  basis: 'certificate',
};

const work = (id: number) => ({
  id: uuid(id),
  joint_id: uuid(40),
  setting_id: null,
  happened_at: NOW_AT_SITE,
  happened_at_utc: NOW,
  flags: '[]',
});

/** One sound row per table, in an order in which they can be inserted. */
export const SOUND_ROWS: readonly (readonly [string, Row])[] = [
  // The steps fill these themselves; a row more shows that they take one.
  ['event_kind', { name: 'kind of a later step' }],
  ['person_part', { name: 'part of a later step' }],
  ['tool_class', { name: 'class of a later step' }],
  ['tool_part', { name: 'tool part of a later step' }],
  ['origin', { id: uuid(1), name: 'this PC', created_at: NOW }],
  ['event', event(2)],
  ['event', event(3, 'certificate added')],
  ['event', event(4, 'setting issued')],
  ['event', event(5, 'tightening recorded')],
  ['event', event(6, 'breakout recorded')],
  ['event', event(7, 'table values confirmed')],
  ['event', event(8, 'tool moved')],
  ['event', event(9, 'tool checked')],
  ['event', event(11, 'attachment added')],
  ['event', event(12, 'case opened')],
  ['event', event(13, 'case decided')],
  ['event', event(14, 'case closed')],
  [
    'request_receipt',
    { key: uuid(10), request: 'unit.save', input_hash: hash(1), answer: '{}', recorded_at: NOW },
  ],
  [
    'attachment',
    { hash: hash(9), name: 'a.pdf', media_type: 'application/pdf', size: 1, added_on: '2026-03-16' },
  ],
  ['event_attachment', { event_id: uuid(2), attachment_hash: hash(9) }],
  ['site', { id: uuid(20), name: 'Site', time_zone: 'Europe/Berlin', demo: 0 }],
  ['plant_unit', { id: uuid(21), site_id: uuid(20), version: 1, name: 'U 100', name_key: 'u 100' }],
  ['person', { id: uuid(22), version: 1, name: 'A. Person', name_key: 'a. person', role: '' }],
  ['batch', { id: uuid(23), kind: 'lubricant', name: 'l', number: '1', name_key: 'l', number_key: '1' }],
  [
    'joint',
    {
      id: uuid(40),
      unit_id: uuid(21),
      version: 1,
      tag: 'J-1',
      tag_key: 'j-1',
      tag_sort: 'j-1',
      location: '',
      service: '',
      service_sort: '',
      flange: 'NPS 8',
      bolting: '12',
      grade: null,
      search: 'j-1',
      data: '{}',
      last_event_kind: null,
      last_event_at: null,
      last_event_at_utc: null,
    },
  ],
  ['event_joint', { event_id: uuid(2), joint_id: uuid(40) }],
  ['event_person', { event_id: uuid(2), person_id: uuid(22), role: 'issued', position: 0 }],
  ['event_batch', { event_id: uuid(2), batch_id: uuid(23) }],
  [
    'tool',
    {
      id: uuid(50),
      version: 1,
      number: 'W-1',
      number_key: 'w-1',
      number_sort: 'w-1',
      serial: '',
      class: 'drive unit',
      status: 'available',
      place: '',
      ratings: '',
      valid_until: null,
      search: 'w-1',
      data: '{}',
    },
  ],
  ['event_tool', { event_id: uuid(2), tool_id: uuid(50), role: 'saved', position: 0 }],
  [
    'certificate',
    {
      id: uuid(3),
      tool_id: uuid(50),
      number: 'C-1',
      number_key: 'c-1',
      laboratory: 'Laboratory',
      calibrated_on: '2026-01-10',
      valid_until: '2027-01-09',
      result: 'within limits',
      condition: 'as left',
      measured: 'pressure-torque',
      data: '{}',
    },
  ],
  [
    'certificate_point',
    {
      certificate_id: uuid(3),
      position: 0,
      direction: 'up',
      pressure_text: '70',
      pressure_unit: 'bar',
      pressure_pa: 70e5,
      measured_text: '100',
      measured_unit: 'N.m',
      measured_si: 100,
    },
  ],
  [
    'setting',
    {
      id: uuid(4),
      number: 'S-0001',
      kind: 'tightening',
      joint_id: uuid(40),
      joint_version: 1,
      starts_on: '2026-03-16',
      ends_on: '2026-03-17',
      issued_at: NOW,
      issued_by: uuid(22),
      dial_value: 260,
      dial_unit: 'bar',
      dial_pa: 260e5,
    },
  ],
  ['tightening', { ...work(5), bolts_tightened: 12, final_pass_no_turn: 1, ...torque }],
  ['breakout', { ...work(6), readings: 1, not_turned: 0, torque_nm: 400, highest_nm: 400 }],
  ['breakout_reading', { breakout_id: uuid(6), bolt: 1, outcome: 'turned', ...torque }],
  [
    'site_row',
    {
      id: uuid(60),
      version: 1,
      kind: 'flange',
      key: 'Girth flange',
      name_key: 'girth flange',
      source: 'drawing 12',
      retired: 0,
      search: 'girth flange',
      data: '{}',
    },
  ],
  [
    'pass_plan',
    {
      id: uuid(61),
      version: 1,
      name: 'Halves',
      name_key: 'halves',
      source: 'procedure 7',
      data: '{}',
      approved_by: uuid(22),
      approved_at: NOW_AT_SITE,
    },
  ],
  [
    'table_confirmation',
    {
      event_id: uuid(7),
      position: 0,
      table_name: 'ASME B16.5',
      row_key: '8 | 300',
      field: 'count',
      value: '12',
      person_id: uuid(22),
      source_seen: 'own copy',
      happened_at: NOW_AT_SITE,
    },
  ],
  [
    'tool',
    {
      id: uuid(51),
      version: 1,
      number: 'H-1',
      number_key: 'h-1',
      number_sort: 'h-1',
      serial: 'S 1',
      class: 'hand torque wrench',
      status: 'issued',
      place: '',
      ratings: '',
      valid_until: null,
      search: 'h-1',
      data: '{}',
      serial_key: 's 1',
      holder_id: uuid(22),
    },
  ],
  [
    'event_tool',
    { event_id: uuid(5), tool_id: uuid(51), role: 'hand torque wrench', position: 0, used_at: NOW },
  ],
  [
    'kit',
    {
      id: uuid(70),
      version: 1,
      name: 'Job 7',
      name_key: 'job 7',
      from_day: '2026-03-16',
      to_day: '2026-03-20',
      closed: 0,
      data: '{}',
    },
  ],
  ['kit_tool', { kit_id: uuid(70), tool_id: uuid(50), position: 0 }],
  ['kit_joint', { kit_id: uuid(70), joint_id: uuid(40), position: 0 }],
  [
    'tool_move',
    {
      event_id: uuid(8),
      tool_id: uuid(51),
      position: 0,
      step: 'issue',
      from_status: 'available',
      to_status: 'issued',
      happened_at: NOW_AT_SITE,
      happened_at_utc: NOW,
      person_id: uuid(22),
      holder_id: uuid(22),
      condition: 'good',
      place: 'U 100',
      reference: '',
      reason: '',
      kit_id: uuid(70),
    },
  ],
  [
    'tool_overload',
    {
      event_id: uuid(5),
      tool_id: uuid(50),
      happened_at: NOW_AT_SITE,
      happened_at_utc: NOW,
      text: 'dialled 800 bar: above what it may stand',
    },
  ],
  [
    'checklist',
    {
      id: uuid(71),
      version: 1,
      name: 'Leak test',
      name_key: 'leak test',
      kind: 'leak test',
      retired: 0,
      data: '{}',
    },
  ],
  [
    'tool_check',
    {
      id: uuid(9),
      tool_id: uuid(50),
      kind: 'leak test',
      happened_at: NOW_AT_SITE,
      happened_at_utc: NOW,
      person_id: uuid(22),
      checklist_id: uuid(71),
      checklist_version: 1,
      result: 'passed',
      error: -0.08,
      data: '{}',
    },
  ],
  ['tool_rule', { id: uuid(72), version: 1, class: 'hose', data: '{}' }],
  [
    'attachment_use',
    {
      event_id: uuid(11),
      attachment_hash: hash(9),
      tool_id: uuid(50),
      owner_event_id: null,
      name: 'a.pdf',
      person_id: uuid(22),
      happened_at: NOW_AT_SITE,
      remarks: '',
    },
  ],
  [
    'recall_case',
    {
      id: uuid(12),
      number: 'OT-0001',
      subject_kind: 'tool',
      tool_id: uuid(50),
      batch_id: null,
      basis_kind: 'check',
      basis_event_id: uuid(9),
      subject: 'drive unit W-1',
      basis: 'failed comparison',
      happened_at: NOW_AT_SITE,
      happened_at_utc: NOW,
      person_id: uuid(22),
      data: '{}',
    },
  ],
  [
    'recall_decision',
    {
      event_id: uuid(13),
      tightening_id: uuid(5),
      case_id: uuid(12),
      decision: 'retighten',
      reason: 'below the least load',
      happened_at: NOW_AT_SITE,
      happened_at_utc: NOW,
      person_id: uuid(22),
    },
  ],
  [
    'recall_closure',
    {
      id: uuid(14),
      case_id: uuid(12),
      affected: 1,
      decided: 1,
      happened_at: NOW_AT_SITE,
      happened_at_utc: NOW,
      person_id: uuid(22),
    },
  ],
];

/** Values a column must refuse, by table, with what is wrong with each. */
export const AWKWARD_VALUES: readonly (readonly [string, string, unknown, string])[] = [
  ['origin', 'id', 'not-a-uuid', 'id that is no UUID'],
  ['event', 'sequence', 0, 'sequence before the first'],
  ['event', 'body', '{', 'body that is no JSON'],
  ['event', 'hash', 'ABC', 'hash of the wrong shape'],
  ['event', 'kind', 'something else', 'kind that does not exist'],
  ['event', 'happened_at', '16.03.2026', 'date of another shape'],
  ['event', 'happened_at_utc', '2026-03-16T07:42:00+01:00', 'moment that is not in UTC'],
  ['event', 'origin_id', uuid(999), 'origin that does not exist'],
  ['event', 'supersedes', uuid(999), 'superseded event that does not exist'],
  ['request_receipt', 'input_hash', '', 'empty hash'],
  ['attachment', 'size', -1, 'negative size'],
  ['event_attachment', 'attachment_hash', hash(1000), 'attachment that does not exist'],
  ['site', 'demo', 2, 'neither 0 nor 1'],
  ['site', 'name', '', 'empty name'],
  ['plant_unit', 'site_id', uuid(999), 'site that does not exist'],
  ['person', 'version', 0, 'version before the first'],
  ['batch', 'kind', 'paint', 'kind that does not exist'],
  ['joint', 'tag', '', 'empty tag'],
  ['joint', 'data', 'text', 'data that is no JSON'],
  ['joint', 'last_event_at', '2026-03-16T07:42:00+01:00', 'date of an event without its kind'],
  ['joint', 'version', 'one', 'text for a number'],
  ['event_joint', 'joint_id', uuid(999), 'joint that does not exist'],
  ['event_person', 'role', 'watched', 'role that does not exist'],
  ['event_batch', 'batch_id', uuid(999), 'batch that does not exist'],
  ['tool', 'class', 'spanner', 'class that does not exist'],
  ['tool', 'status', 'lost', 'status that does not exist'],
  ['tool', 'valid_until', '2026-3-1', 'date of another shape'],
  ['event_tool', 'role', 'used', 'role that does not exist'],
  ['certificate', 'valid_until', '2025-01-01', 'end of validity before the calibration'],
  ['certificate', 'result', 'good', 'result that does not exist'],
  ['certificate_point', 'pressure_pa', Number.POSITIVE_INFINITY, 'infinite pressure'],
  ['certificate_point', 'pressure_pa', Number.NaN, 'NaN, which SQLite stores as NULL'],
  ['certificate_point', 'measured_si', -1, 'negative torque'],
  ['setting', 'number', '1', 'number of another shape'],
  ['setting', 'ends_on', '2026-03-15', 'end before the start'],
  ['setting', 'dial_unit', null, 'dial without its unit'],
  ['setting', 'issued_by', uuid(999), 'person who does not exist'],
  ['tightening', 'bolts_tightened', 401, 'more studs than a joint can have'],
  ['tightening', 'final_pass_no_turn', 2, 'neither 0 nor 1'],
  ['tightening', 'torque_nm', Number.POSITIVE_INFINITY, 'infinite torque'],
  ['tightening', 'dialled_unit', null, 'pressure without its unit'],
  ['breakout', 'readings', -1, 'fewer than none'],
  ['breakout', 'highest_nm', null, 'median without the highest'],
  ['breakout_reading', 'outcome', 'loose', 'outcome that does not exist'],
  ['breakout_reading', 'bolt', 0, 'stud before the first'],
  ['site_row', 'kind', 'paint', 'table that does not exist'],
  ['site_row', 'source', '', 'row without a source'],
  ['site_row', 'retired', 2, 'neither 0 nor 1'],
  ['pass_plan', 'source', '', 'plan without a source'],
  ['pass_plan', 'approved_at', null, 'approval without its moment'],
  ['pass_plan', 'approved_by', uuid(999), 'person who does not exist'],
  ['table_confirmation', 'source_seen', '', 'confirmation against nothing'],
  ['table_confirmation', 'person_id', uuid(999), 'person who does not exist'],
  ['table_confirmation', 'happened_at', 'today', 'date of another shape'],
  ['tool', 'holder_id', uuid(999), 'person who does not exist'],
  ['event_tool', 'used_at', '2026-03-16T07:42:00+01:00', 'moment that is not in UTC'],
  ['certificate', 'measured', 'by ear', 'kind of points that does not exist'],
  ['kit', 'to_day', '2026-03-15', 'end before the start'],
  ['kit', 'closed', 2, 'neither 0 nor 1'],
  ['kit_tool', 'tool_id', uuid(999), 'tool that does not exist'],
  ['kit_joint', 'joint_id', uuid(999), 'joint that does not exist'],
  ['tool_move', 'step', 'lend', 'step that does not exist'],
  ['tool_move', 'to_status', 'lost', 'status that does not exist'],
  ['tool_move', 'condition', 'fair', 'condition that does not exist'],
  ['tool_move', 'holder_id', uuid(999), 'person who does not exist'],
  ['tool_move', 'kit_id', uuid(999), 'kit that does not exist'],
  ['tool_overload', 'text', '', 'overload without words'],
  ['checklist', 'kind', 'sniff', 'kind of check that does not exist'],
  ['checklist', 'retired', 2, 'neither 0 nor 1'],
  ['tool_check', 'result', 'good', 'result that does not exist'],
  ['tool_check', 'error', Number.POSITIVE_INFINITY, 'infinite error'],
  ['tool_check', 'checklist_version', null, 'list without its version'],
  ['tool_rule', 'class', 'spanner', 'class that does not exist'],
  ['attachment_use', 'attachment_hash', hash(1000), 'attachment that does not exist'],
  ['attachment_use', 'tool_id', null, 'attachment of nothing'],
  ['attachment_use', 'owner_event_id', uuid(2), 'attachment of two things'],
  ['recall_case', 'number', 'S-0001', 'number of another series'],
  ['recall_case', 'tool_id', null, 'case about nothing'],
  ['recall_case', 'batch_id', uuid(23), 'case about two things'],
  ['recall_case', 'basis_event_id', null, 'check that is not named'],
  ['recall_decision', 'decision', 'ignore', 'decision that does not exist'],
  ['recall_decision', 'reason', '', 'decision without a reason'],
  ['recall_decision', 'tightening_id', uuid(999), 'tightening that does not exist'],
  ['recall_closure', 'decided', 2, 'more decisions than affected records'],
  ['recall_closure', 'case_id', uuid(999), 'case that does not exist'],
];

/** Tables whose rows are never changed, with their keys. */
export const APPEND_ONLY: readonly string[] = [
  'origin',
  'event',
  'request_receipt',
  'attachment',
  'event_attachment',
  'event_joint',
  'event_person',
  'event_batch',
  'event_tool',
  'certificate',
  'certificate_point',
  'setting',
  'tightening',
  'breakout',
  'breakout_reading',
  'table_confirmation',
  'tool_move',
  'tool_overload',
  'tool_check',
  'attachment_use',
  'recall_case',
  'recall_decision',
  'recall_closure',
];

export function insert(database: Database.Database, table: string, row: Row, verb = 'insert'): void {
  const columns = Object.keys(row);
  const places = columns.map(() => '?').join(', ');
  database
    .prepare(`${verb} into ${table} (${columns.join(', ')}) values (${places})`)
    .run(...Object.values(row));
}

const TOOL_ROOM_TABLES = [
  'tool_class',
  'tool_part',
  'kit',
  'kit_tool',
  'kit_joint',
  'tool_move',
  'tool_overload',
  'checklist',
  'tool_check',
  'tool_rule',
  'attachment_use',
  'recall_case',
  'recall_decision',
  'recall_closure',
];

const LATER_KINDS = [
  'tool moved',
  'tool checked',
  'attachment added',
  'case opened',
  'case decided',
  'case closed',
];

/** Rows that were there before the tool room came. */
export const ROWS_BEFORE_TOOL_ROOM = SOUND_ROWS.filter(
  ([table, row]) =>
    !TOOL_ROOM_TABLES.includes(table) &&
    !LATER_KINDS.includes(String(row.kind)) &&
    !('serial_key' in row) &&
    !('used_at' in row),
);

/** Rows that were there before the site's own tables came. */
export const EARLIER_ROWS = ROWS_BEFORE_TOOL_ROOM.filter(
  ([table, { kind }]) =>
    !['event_kind', 'person_part', 'site_row', 'pass_plan', 'table_confirmation'].includes(table) &&
    kind !== 'table values confirmed',
);

/** A migrated database with the pragmas of a register that matter to rows, and one sound row in every table. */
export async function migratedDatabase(): Promise<Database.Database> {
  const database = new Database(':memory:');
  await migrate(database, queryBuilder(database));
  database.pragma('foreign_keys = ON');
  database.pragma('recursive_triggers = ON');
  for (const [table, row] of SOUND_ROWS) insert(database, table, row);
  return database;
}
