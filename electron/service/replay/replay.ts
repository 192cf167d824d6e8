import { sql } from 'kysely';
import { findThread } from '../../../core/bolting/thread.ts';
import type { ReplayRow, ReplayView } from '../../../core/contract/replay.ts';
import type { ParsedInput } from '../../../core/contract/requests.ts';
import { assuming } from '../../../core/replay/assume.ts';
import { REPLAY_CAVEAT, replayed, replayFinding, type SeenJoint } from '../../../core/replay/replay.ts';
import { basisOf } from '../../../core/setting/basis.ts';
import { plainName } from '../../../core/text/same-name.ts';
import { allSiteTables } from '../breakout/joints.ts';
import { workOf } from '../breakout/openings.ts';
import type { EventBody, EventDataByKind } from '../chain/events.ts';
import type { ReadContext } from '../context.ts';
import { invalidField, notFound } from '../failure.ts';
import { nameKey } from '../fold.ts';
import { jointsAtTheTime } from '../recall/work.ts';
import { chunks } from '../register/insert.ts';
import { endOfDay, startOfDay } from '../time.ts';

type Input = ParsedInput<'replay.run'>;
type Tightening = EventDataByKind['tightening recorded'];

const MOST_SHOWN = 200;
const AT_ONCE = 200;

/** Recorded tightenings with something taken to be otherwise; nothing is recorded. */
export async function replayOf(context: ReadContext, input: Input): Promise<ReplayView> {
  const { db } = context;
  checkAssumption(input);
  const found = await tighteningsIn(context, input.scope);
  const site = await allSiteTables(db);
  const { installed } = await workOf(db, [...new Set(found.map(({ jointId }) => jointId))]);
  const standing = new Set([...installed.values()].map(({ eventId }) => eventId));
  const rows: ReplayRow[] = [];
  for (const part of chunks(found, AT_ONCE)) {
    const works = await bodiesOf(context, part);
    const jointOf = await jointsAtTheTime(db, works);
    for (const { row, work } of works) {
      const then = jointOf(row.jointId, work);
      const changed = then === null ? null : assuming(then.data, input.assumption);
      const otherwise: SeenJoint | null =
        changed === null
          ? null
          : {
              data: changed,
              basis: basisOf({ joint: { id: row.jointId, version: 1, data: changed }, site }),
            };
      const { eventId, jointId, tag, happenedAt, torque } = row;
      rows.push({
        eventId,
        jointId,
        tag,
        happenedAt,
        torque,
        ...replayed(torque, then, otherwise),
        standsNow: standing.has(eventId),
      });
    }
    await new Promise((resolve) => setImmediate(resolve));
  }
  return viewOf(rows);
}

function viewOf(rows: ReplayRow[]): ReplayView {
  const count = (wanted: (row: ReplayRow) => boolean) => rows.filter(wanted).length;
  const counts = {
    leaves: count(({ leaves }) => leaves),
    leavesNow: count(({ leaves, standsNow }) => leaves && standsNow),
    kept: count(({ standing }) => standing === 'kept'),
    notSure: count(({ standing }) => standing === 'not sure'),
    broken: count(({ standing }) => standing === 'broken'),
    notKnown: count(({ standing }) => standing === 'not known'),
  };
  const shown = rows.sort(worstFirst).slice(0, MOST_SHOWN);
  return {
    finding: replayFinding(counts, rows.length),
    caveat: REPLAY_CAVEAT,
    rows: shown,
    shown: shown.length,
    total: rows.length,
    counts,
  };
}

const RANK: Readonly<Record<ReplayRow['standing'], number>> = {
  broken: 0,
  'not sure': 1,
  'not known': 2,
  kept: 3,
};

/** Joints that leave their limits first, those with the load still in them before the others. */
function worstFirst(a: ReplayRow, b: ReplayRow): number {
  return (
    Number(b.leaves) - Number(a.leaves) ||
    Number(b.standsNow) - Number(a.standsNow) ||
    RANK[a.standing] - RANK[b.standing] ||
    Math.abs(b.change ?? 0) - Math.abs(a.change ?? 0) ||
    Date.parse(b.happenedAt) - Date.parse(a.happenedAt) ||
    (a.eventId < b.eventId ? -1 : 1)
  );
}

function checkAssumption({ assumption }: Input): void {
  if (assumption.kind === 'stud size' && findThread(assumption.thread) === null) {
    throw invalidField('assumption.thread', assumption.thread, 'a thread of the tables, as 7/8-9 UNC or M20');
  }
  if (assumption.kind !== 'gasket limit') return;
  const { seating, most } = assumption;
  if (seating === null && most === null) {
    throw invalidField('assumption.most', 'none', 'a least or a largest gasket stress');
  }
  if (seating !== null && most !== null && most.si <= seating.si) {
    throw invalidField('assumption.most', most.text, `above the least stress, ${seating.text}`);
  }
}

interface Found {
  readonly eventId: string;
  readonly jointId: string;
  readonly tag: string;
  readonly happenedAt: string;
  readonly torque: number | null;
}

async function tighteningsIn({ db, site }: ReadContext, scope: Input['scope']): Promise<Found[]> {
  let query = db
    .selectFrom('tightening')
    .innerJoin('joint', 'joint.id', 'tightening.joint_id')
    .select([
      'tightening.id as eventId',
      'tightening.joint_id as jointId',
      'joint.tag',
      'tightening.happened_at as happenedAt',
      'tightening.torque_nm as torque',
    ])
    .orderBy('tightening.happened_at_utc')
    .orderBy('tightening.id');
  if (scope.from !== null && scope.to !== null && scope.to < scope.from) {
    throw invalidField('scope.to', scope.to, `${scope.from} (first day) or later`);
  }
  if (scope.from !== null)
    query = query.where('tightening.happened_at_utc', '>=', startOfDay(scope.from, site.timeZone));
  if (scope.to !== null)
    query = query.where('tightening.happened_at_utc', '<', endOfDay(scope.to, site.timeZone));
  if (scope.jointId !== null) query = query.where('tightening.joint_id', '=', scope.jointId);
  if (scope.unitId !== null) query = query.where('joint.unit_id', '=', scope.unitId);
  if (scope.setting !== '') {
    const setting = await db
      .selectFrom('setting')
      .select('id')
      .where(sql<boolean>`lower(setting.number) = ${nameKey(scope.setting)}`)
      .executeTakeFirst();
    if (!setting) throw notFound('issued setting', 'scope.setting', scope.setting);
    query = query.where('tightening.setting_id', '=', setting.id);
  }
  if (scope.lubricant !== '' || scope.batch !== '') {
    const batches = await batchesNamed(db, scope);
    query = query.where(({ eb, selectFrom }) =>
      eb(
        'tightening.id',
        'in',
        selectFrom('event_batch').select('event_batch.event_id').where('batch_id', 'in', batches),
      ),
    );
  }
  return query.execute();
}

/** Batches of lubricants by name and number; both are compared as people write them. */
async function batchesNamed(db: ReadContext['db'], { lubricant, batch }: Input['scope']): Promise<string[]> {
  const batches = await db
    .selectFrom('batch')
    .select(['id', 'name', 'number'])
    .where('kind', '=', 'lubricant')
    .execute();
  const same = (asked: string, own: string) => asked === '' || plainName(asked) === plainName(own);
  const wanted = batches.filter((one) => same(lubricant, one.name) && same(batch, one.number));
  if (wanted.length > 0) return wanted.map(({ id }) => id);
  throw batch === ''
    ? notFound('lubricant with a batch', 'scope.lubricant', lubricant)
    : notFound('batch of lubricant', 'scope.batch', batch);
}

async function bodiesOf({ db }: ReadContext, rows: readonly Found[]) {
  const events = await db
    .selectFrom('event')
    .select(['id', 'body'])
    .where(
      'id',
      'in',
      rows.map(({ eventId }) => eventId),
    )
    .execute();
  const bodies = new Map(events.map(({ id, body }) => [id, body]));
  return rows.flatMap((row) => {
    const body = bodies.get(row.eventId);
    return body === undefined ? [] : [{ row, work: (JSON.parse(body) as EventBody).data as Tightening }];
  });
}
