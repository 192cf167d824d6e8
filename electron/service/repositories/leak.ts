import { type Kysely, sql } from 'kysely';
import type { JointData } from '../../../core/contract/joint.ts';
import type { LeakRow } from '../../../core/contract/leak-log.ts';
import { isRepeatedLeaker } from '../../../core/joint/life/leaks.ts';
import { resolveJoint } from '../../../core/joint/resolve.ts';
import { showEntered } from '../../../core/text/number.ts';
import type { EventBody, EventDataByKind } from '../chain/events.ts';
import { makeUpOf } from '../projections/leak.ts';
import { chunks } from '../register/insert.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { peopleOf } from './history.ts';
import { siteTablesFor } from './site-tables.ts';

type Db = Kysely<RegisterSchema>;
type Stepped = EventDataByKind['joint stepped'];

/** A leak as its columns keep it. */
export interface LeakOnRegister {
  readonly id: string;
  readonly jointId: string;
  readonly unitId: string;
  readonly origin: LeakRow['origin'];
  readonly phase: LeakRow['phase'];
  readonly makeUp: number;
  readonly happenedAt: string;
  readonly closedBy: string | null;
  readonly closedAt: string | null;
  readonly causes: LeakRow['firstCauses'];
}

/** Leaks of the register, or of one joint, the newest first. */
export async function leaks(db: Db, jointId: string | null): Promise<LeakOnRegister[]> {
  let query = db
    .selectFrom('leak')
    .innerJoin('joint', 'joint.id', 'leak.joint_id')
    .select([
      'leak.id',
      'leak.joint_id as jointId',
      'joint.unit_id as unitId',
      'leak.origin',
      'leak.phase',
      'leak.make_up as makeUp',
      'leak.happened_at as happenedAt',
      'leak.closed_by as closedBy',
      'leak.closed_at as closedAt',
      'leak.causes',
    ]);
  if (jointId !== null) query = query.where('leak.joint_id', '=', jointId);
  const rows = await query.orderBy('leak.happened_at_utc', 'desc').orderBy('leak.id', 'desc').execute();
  return rows.map(({ causes, ...row }) => ({ ...row, causes: JSON.parse(causes) as LeakRow['firstCauses'] }));
}

/** Joints among these that have leaked at least twice within the present make-up and the one before. */
export async function repeatedLeakers(db: Db, all: readonly LeakOnRegister[]): Promise<Set<string>> {
  const byJoint = Map.groupBy(all, ({ jointId }) => jointId);
  const repeated = new Set<string>();
  for (const [jointId, own] of byJoint) {
    if (own.length < 2) continue;
    const told = own.map(({ id, happenedAt, makeUp }) => ({ eventId: id, at: happenedAt, makeUp }));
    if (isRepeatedLeaker({ leaks: told, makeUp: await makeUpOf(db, jointId) })) repeated.add(jointId);
  }
  return repeated;
}

/** Rows of a page, with what the bodies of their events say. */
export async function leakRows(
  db: Db,
  page: readonly LeakOnRegister[],
  { repeated, now }: { readonly repeated: ReadonlySet<string>; readonly now: Date },
): Promise<LeakRow[]> {
  const closings = page.flatMap(({ closedBy }) => (closedBy === null ? [] : [closedBy]));
  const ids = page.map(({ id }) => id);
  const stepped = await steppedById(db, [...ids, ...closings]);
  const people = await peopleOf(db, ids);
  const joints = await jointsNamed(
    db,
    page.map(({ jointId }) => jointId),
  );
  return page.flatMap((leak): LeakRow[] => {
    const reported = stepped.get(leak.id);
    const joint = joints.get(leak.jointId);
    if (reported === undefined || joint === undefined) return [];
    const told = toldBy(reported);
    const closing = leak.closedBy === null ? undefined : stepped.get(leak.closedBy);
    const until = leak.closedAt === null ? now.getTime() : Date.parse(leak.closedAt);
    return [
      {
        id: leak.id,
        origin: leak.origin,
        jointId: leak.jointId,
        ...joint,
        happenedAt: leak.happenedAt,
        phase: leak.phase,
        ...told,
        foundCauses: sameCauses(leak.causes, told.firstCauses) ? null : [...leak.causes],
        by: people.get(leak.id)?.join(', ') ?? 'not recorded',
        closed:
          closing === undefined || leak.closedBy === null || leak.closedAt === null
            ? null
            : { eventId: leak.closedBy, happenedAt: leak.closedAt, ...howClosed(closing) },
        openFor: Math.max(0, (until - Date.parse(leak.happenedAt)) / 1000),
        repeated: repeated.has(leak.jointId),
      },
    ];
  });
}

const sameCauses = (a: LeakRow['firstCauses'], b: LeakRow['firstCauses']) =>
  JSON.stringify(a) === JSON.stringify(b);

type Told = Pick<LeakRow, 'clock' | 'seenFrom' | 'nearBolts' | 'medium' | 'rate' | 'firstCauses' | 'action'>;

function toldBy({ data }: Stepped): Told {
  if (data.step === 'report leak') {
    const { clock, seenFrom, nearBolts, medium, rate, rateWords, causes, action } = data.evidence;
    return {
      clock,
      seenFrom,
      nearBolts,
      medium,
      rate: rate === null ? rateWords || null : showEntered(rate),
      firstCauses: causes,
      action,
    };
  }
  const test = data.step === 'test' ? data.evidence : null;
  return {
    clock: null,
    seenFrom: '',
    nearBolts: null,
    medium: test?.medium ?? '',
    rate: test === null || test.rate === null ? null : showEntered(test.rate),
    firstCauses: [],
    action: test?.action ?? '',
  };
}

function howClosed({ data }: Stepped): { how: string; done: string } {
  switch (data.step) {
    case 'close leak watch':
      return { how: data.evidence.checkedHow, done: data.evidence.done };
    case 'test':
      return { how: 'leak test passed', done: data.evidence.action };
    default:
      return { how: 'made up again and returned to service', done: '' };
  }
}

async function steppedById(db: Db, ids: readonly string[]): Promise<Map<string, Stepped>> {
  const found = new Map<string, Stepped>();
  for (const part of chunks([...new Set(ids)])) {
    const rows = await db.selectFrom('event').select(['id', 'body']).where('id', 'in', part).execute();
    for (const { id, body } of rows) found.set(id, (JSON.parse(body) as EventBody).data as Stepped);
  }
  return found;
}

interface Named {
  readonly tag: string;
  readonly unitName: string;
  readonly boltCount: number | null;
}

async function jointsNamed(db: Db, ids: readonly string[]): Promise<Map<string, Named>> {
  const found = new Map<string, Named>();
  for (const part of chunks([...new Set(ids)])) {
    const rows = await db
      .selectFrom('joint')
      .innerJoin('plant_unit', 'plant_unit.id', 'joint.unit_id')
      .select(['joint.id', 'joint.tag', 'joint.data', 'plant_unit.name as unitName'])
      .where('joint.id', 'in', part)
      .execute();
    for (const { id, tag, data: text, unitName } of rows) {
      const data = JSON.parse(text) as JointData;
      found.set(id, {
        tag,
        unitName,
        boltCount: resolveJoint(data, await siteTablesFor(db, data)).boltCount,
      });
    }
  }
  return found;
}

/** Counts of thermal cycles of a joint that no later record takes the place of, the newest first. */
export async function cycleCounts(db: Db, jointId: string) {
  return db
    .selectFrom('cycle_count')
    .innerJoin('event', 'event.id', 'cycle_count.event_id')
    .select([
      'event.id as eventId',
      'starts_on as startsOn',
      'ends_on as endsOn',
      'from_utc as from',
      'until_utc as until',
      'cycles',
      sql<string>`json_extract(event.body, '$.data.data.basis')`.as('basis'),
    ])
    .where('cycle_count.joint_id', '=', jointId)
    .where(({ not, exists, selectFrom }) =>
      not(
        exists(selectFrom('event as later').select('later.id').whereRef('later.supersedes', '=', 'event.id')),
      ),
    )
    .orderBy('from_utc', 'desc')
    .execute();
}

/** Moment of a joint's newest tightening. */
export async function madeUpAt(db: Db, jointId: string) {
  const row = await db
    .selectFrom('tightening')
    .select(['happened_at as at', 'happened_at_utc as utc'])
    .where('joint_id', '=', jointId)
    .orderBy('happened_at_utc', 'desc')
    .limit(1)
    .executeTakeFirst();
  return row ?? null;
}
