import { type Kysely, sql } from 'kysely';
import type { RecordedOpening, RecordedReading } from '../../../core/breakout/recorded.ts';
import { plainName } from '../../../core/text/same-name.ts';
import { chunks } from '../register/insert.ts';
import type { RegisterSchema } from '../register/schema.ts';

type Db = Kysely<RegisterSchema>;

/** Joints read at one go; other requests get their turn in between. */
const JOINTS_AT_ONCE = 500;

const BOLT_SET = sql<number>`coalesce(json_extract(event.body, '$.data.data.boltSet'), 0)`;

interface Work {
  readonly eventId: string;
  readonly jointId: string;
  readonly boltSet: number;
  readonly happenedAt: string;
  readonly utc: string;
  readonly sequence: number;
  /** Null for a breakout. */
  readonly tightened: { readonly torque: number | null; readonly studs: string | null } | null;
}

/** What was put on last, of a bolt set that has not been opened since; null torque is not known. */
export interface InstalledNow {
  readonly eventId: string;
  readonly happenedAt: string;
  readonly torque: number | null;
}

/** Openings of joints in order of time, and what stands on each bolt set now. */
export interface WorkOfJoints {
  readonly openings: readonly RecordedOpening[];
  /** By `openingKey`. */
  readonly installed: ReadonlyMap<string, InstalledNow>;
  /** Of each tightening, by its event: which use of its studs it was, as far as the register knows. */
  readonly usesAt: ReadonlyMap<string, number>;
}

/** Joints that were ever opened or tightened. */
export async function workedJoints(db: Db): Promise<string[]> {
  const rows = await db
    .selectFrom('joint')
    .select('id')
    .where('last_event_at', 'is not', null)
    .orderBy('id')
    .execute();
  return rows.map(({ id }) => id);
}

/** Every opening of these joints with the tightening before it. */
export async function workOf(db: Db, jointIds: readonly string[]): Promise<WorkOfJoints> {
  const openings: RecordedOpening[] = [];
  const installed = new Map<string, InstalledNow>();
  const usesAt = new Map<string, number>();
  for (const part of chunks(jointIds, JOINTS_AT_ONCE)) {
    await readPart(db, part, { openings, installed, usesAt });
    await new Promise((resolve) => setImmediate(resolve));
  }
  return { openings, installed, usesAt };
}

interface Found {
  readonly openings: RecordedOpening[];
  readonly installed: Map<string, InstalledNow>;
  readonly usesAt: Map<string, number>;
}

async function readPart(
  db: Db,
  jointIds: readonly string[],
  { openings, installed, usesAt }: Found,
): Promise<void> {
  const ids = sql<string>`(select value from json_each(${JSON.stringify(jointIds)}))`;
  const tightenings = await db
    .selectFrom('tightening')
    .innerJoin('event', 'event.id', 'tightening.id')
    .select([
      'tightening.id as eventId',
      'tightening.joint_id as jointId',
      'tightening.happened_at as happenedAt',
      'tightening.happened_at_utc as utc',
      'tightening.torque_nm as torque',
      'event.sequence',
      BOLT_SET.as('boltSet'),
    ])
    .where('tightening.joint_id', 'in', ids)
    .execute();
  const breakouts = await db
    .selectFrom('breakout')
    .innerJoin('event', 'event.id', 'breakout.id')
    .select([
      'breakout.id as eventId',
      'breakout.joint_id as jointId',
      'breakout.happened_at as happenedAt',
      'breakout.happened_at_utc as utc',
      'event.sequence',
      BOLT_SET.as('boltSet'),
    ])
    .where('breakout.joint_id', 'in', ids)
    .execute();
  const batches = await batchesOf(db, ids);
  const readings = await readingsOf(db, ids);
  const works: Work[] = [
    ...tightenings.map(({ torque, ...work }) => ({
      ...work,
      tightened: { torque, studs: batches.get(work.eventId)?.studs ?? null },
    })),
    ...breakouts.map((work) => ({ ...work, tightened: null })),
  ];
  works.sort((a, b) => (a.utc === b.utc ? a.sequence - b.sequence : a.utc < b.utc ? -1 : 1));
  const states = new Map<string, State>();
  for (const work of works) {
    const key = `${work.jointId} ${work.boltSet}`;
    const state = states.get(key) ?? NEW;
    if (work.tightened !== null) {
      const next = tightenedAgain(state, work, work.tightened);
      states.set(key, next);
      usesAt.set(work.eventId, next.uses);
      continue;
    }
    const used = state.installed === null ? undefined : batches.get(state.installed.eventId);
    openings.push({
      eventId: work.eventId,
      jointId: work.jointId,
      boltSet: work.boltSet,
      happenedAt: work.happenedAt,
      readings: readings.get(work.eventId) ?? [],
      installed: state.installed,
      openedSince: state.opened,
      lubricant: used?.lubricant ?? null,
      batch: used?.batch ?? null,
      studUses: state.uses,
    });
    states.set(key, { ...state, opened: true });
  }
  for (const [key, state] of states) {
    if (state.installed !== null && !state.opened) installed.set(key, state.installed);
  }
}

interface State {
  readonly installed: InstalledNow | null;
  readonly opened: boolean;
  readonly uses: number;
  readonly studs: string | null;
}

const NEW: State = { installed: null, opened: false, uses: 0, studs: null };

/** Studs of another batch are new ones: their uses are counted afresh. */
function tightenedAgain(state: State, work: Work, tightened: NonNullable<Work['tightened']>): State {
  const { eventId, happenedAt } = work;
  const { torque, studs } = tightened;
  const fresh = studs !== null && studs !== state.studs;
  return {
    installed: { eventId, happenedAt, torque },
    opened: false,
    uses: fresh ? 1 : state.uses + 1,
    studs: studs ?? state.studs,
  };
}

interface BatchesOfWork {
  readonly lubricant: string | null;
  readonly batch: string | null;
  readonly studs: string | null;
}

async function batchesOf(db: Db, ids: ReturnType<typeof sql<string>>): Promise<Map<string, BatchesOfWork>> {
  const rows = await db
    .selectFrom('tightening')
    .innerJoin('event_batch', 'event_batch.event_id', 'tightening.id')
    .innerJoin('batch', 'batch.id', 'event_batch.batch_id')
    .select(['tightening.id as eventId', 'batch.kind', 'batch.name', 'batch.number'])
    .where('tightening.joint_id', 'in', ids)
    .where('batch.kind', 'in', ['lubricant', 'stud'])
    .execute();
  const found = new Map<string, BatchesOfWork>();
  for (const { eventId, kind, name, number } of rows) {
    const known = found.get(eventId) ?? { lubricant: null, batch: null, studs: null };
    found.set(
      eventId,
      kind === 'stud'
        ? { ...known, studs: plainName(`${name} ${number}`) }
        : { ...known, lubricant: name, batch: number },
    );
  }
  return found;
}

async function readingsOf(
  db: Db,
  ids: ReturnType<typeof sql<string>>,
): Promise<Map<string, RecordedReading[]>> {
  const rows = await db
    .selectFrom('breakout')
    .innerJoin('breakout_reading', 'breakout_reading.breakout_id', 'breakout.id')
    .select([
      'breakout.id as eventId',
      'breakout_reading.bolt',
      'breakout_reading.outcome',
      'breakout_reading.torque_nm as torque',
    ])
    .where('breakout.joint_id', 'in', ids)
    .orderBy('breakout_reading.breakout_id')
    .orderBy('breakout_reading.bolt')
    .execute();
  const found = new Map<string, RecordedReading[]>();
  for (const { eventId, ...reading } of rows) {
    const known = found.get(eventId);
    if (known === undefined) found.set(eventId, [reading]);
    else known.push(reading);
  }
  return found;
}
