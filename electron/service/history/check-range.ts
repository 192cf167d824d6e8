import type Database from 'better-sqlite3';
import { NO_PREVIOUS } from '../../../core/audit/chain.ts';
import type { EventKind } from '../chain/events.ts';
import { toUtc } from '../time.ts';
import { type TextColumns, textColumns } from './event-text.ts';
import { type Collector, collector } from './findings.ts';
import { linkHash } from './link-hash.ts';
import type { Found, TaskOf } from './tasks.ts';

interface StoredRow {
  readonly id: string;
  readonly sequence: number;
  readonly previous_hash: string;
  readonly hash: string;
  readonly body: string;
  readonly body_version: number;
  readonly kind: string;
  readonly happened_at: string;
  readonly happened_at_utc: string;
  readonly recorded_at: string;
  readonly supersedes: string | null;
  /** Ids of the joints it is linked to, parted by commas. */
  readonly joints: string | null;
}

/** Kinds whose text names the joint they are linked to: without the link a joint's history is silent about them. */
const OF_A_JOINT: ReadonlySet<string> = new Set<EventKind>([
  'tightening recorded',
  'breakout recorded',
  'pass recorded',
  'setting issued',
  'joint saved',
]);

/** What stands before a row: its hash, or nothing that the row could be held against. */
type Before = { readonly hash: string } | null;

/** Holds a stretch of one origin's log against its own texts and hashes. */
export function checkRange(database: Database.Database, { originId, from, to }: TaskOf<'range'>): Found {
  const found = collector();
  const rows = database
    .prepare<[string, number, number], StoredRow>(
      `select id, sequence, previous_hash, hash, body, body_version, kind, happened_at, happened_at_utc, recorded_at,
         supersedes, (select group_concat(joint_id) from event_joint where event_id = event.id) as joints
         from event where origin_id = ? and sequence between ? and ? order by sequence`,
    )
    .iterate(originId, from, to);
  let before = hashBefore(database, originId, from);
  let expected = from;
  let looked = 0;
  for (const row of rows) {
    if (row.sequence !== expected) {
      missing(found, originId, expected, row.sequence - 1);
      before = null;
    }
    before = checkRow(found, originId, row, before);
    expected = row.sequence + 1;
    looked += 1;
  }
  if (expected <= to) missing(found, originId, expected, to);
  return found.found(looked);
}

function hashBefore(database: Database.Database, originId: string, from: number): Before {
  if (from === 1) return { hash: NO_PREVIOUS };
  const row = database
    .prepare<[string, number], { hash: string }>(
      'select hash from event where origin_id = ? and sequence = ?',
    )
    .get(originId, from - 1);
  return row ?? null;
}

function missing(found: Collector, originId: string, first: number, last: number): void {
  const which = first === last ? `Record ${first} is` : `Records ${first} to ${last} are`;
  found.add('record missing', `${which} not in the log`, { originId, sequence: first, eventId: null });
}

function checkRow(found: Collector, originId: string, row: StoredRow, before: Before): Before {
  const about = { originId, sequence: row.sequence, eventId: row.id };
  const text = textColumns(row.body);
  if (text !== null && (text.sequence !== row.sequence || text.originId !== originId)) {
    const says = text.originId === originId ? `record ${text.sequence}` : `a record of another origin`;
    found.add(
      'records reordered',
      `The text that stands as record ${row.sequence} says it is ${says}`,
      about,
    );
    // Its neighbours' links are broken by the same move.
    return null;
  }
  if (linkHash(row.previous_hash, row.body) !== row.hash) {
    found.add('text changed', 'The text no longer gives the hash under which it was recorded', about);
  } else if (before !== null && row.previous_hash !== before.hash) {
    found.add('link broken', `It follows another record than the one that stands before it`, about);
  }
  checkColumns(found, row, text, about);
  return row;
}

function checkColumns(
  found: Collector,
  row: StoredRow,
  text: TextColumns | null,
  about: { originId: string; sequence: number; eventId: string },
): void {
  if (text === null) return;
  const differing = Object.entries({
    id: text.id !== row.id,
    kind: text.kind !== row.kind,
    'version of the text': text.bodyVersion !== row.body_version,
    'time of the work': text.happenedAt !== row.happened_at || utcOf(row.happened_at) !== row.happened_at_utc,
    'time of recording': text.recordedAt !== row.recorded_at,
    'what it replaces': text.supersedes !== row.supersedes,
  }).filter(([, differs]) => differs);
  if (differing.length > 0) {
    const names = differing.map(([name]) => name).join(', ');
    found.add('column differs from text', `Not as in the text: ${names}`, about);
  }
  if (!OF_A_JOINT.has(row.kind)) return;
  if (row.joints === null) {
    found.add('row missing', 'It is linked to no joint, so no joint’s history shows it', about);
    return;
  }
  const strangers = row.joints.split(',').filter((joint) => !row.body.includes(joint));
  for (const joint of strangers) {
    found.add('column differs from text', `Linked to joint ${joint}, which its text does not name`, about);
  }
}

function utcOf(instant: string): string | null {
  try {
    return toUtc(instant);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}
