import { type Kysely, sql } from 'kysely';
import { chunks } from '../register/insert.ts';
import type { RegisterSchema } from '../register/schema.ts';

type Db = Kysely<RegisterSchema>;

/** An affected load: which bolts it is on, and since when. */
export interface AffectedBolts {
  readonly eventId: string;
  readonly jointId: string;
  readonly boltSet: number;
  readonly happenedAtUtc: string;
  /** Null is not known: then any later work on the set counts as work on all of its studs. */
  readonly studs: number | null;
}

/** What became of the load: `at` when all studs were loosened or tightened anew, `partly` what was done to some of them. */
export interface Later {
  readonly at: string | null;
  readonly partly: readonly string[];
}

interface LaterWork {
  readonly eventId: string;
  readonly jointId: string;
  readonly boltSet: number;
  readonly happenedAt: string;
  readonly happenedAtUtc: string;
  readonly studs: number;
  readonly what: 'tightened' | 'broken out';
}

const BOLT_SET = sql<number>`coalesce(json_extract(event.body, '$.data.data.boltSet'), 0)`;

/** Later work on the affected joints with which the affected load ended. Tightenings that are suspect themselves don't count. */
export async function laterWork(
  db: Db,
  affected: readonly AffectedBolts[],
  suspect: ReadonlySet<string>,
): Promise<Map<string, Later>> {
  const [earliest] = affected.map(({ happenedAtUtc }) => happenedAtUtc).toSorted();
  if (earliest === undefined) return new Map();
  const joints = [...new Set(affected.map(({ jointId }) => jointId))];
  const work = (await Promise.all(chunks(joints).map((ids) => workOn(db, ids, earliest)))).flat();
  const byJoint = Map.groupBy(
    work.filter(({ eventId, what }) => what === 'broken out' || !suspect.has(eventId)),
    ({ jointId }) => jointId,
  );
  return new Map(affected.map((one) => [one.eventId, laterOf(one, byJoint.get(one.jointId) ?? [])]));
}

function laterOf({ boltSet, happenedAtUtc, studs }: AffectedBolts, work: readonly LaterWork[]): Later {
  const later = work
    .filter((one) => one.boltSet === boltSet && one.happenedAtUtc > happenedAtUtc)
    .toSorted((a, b) => (a.happenedAtUtc < b.happenedAtUtc ? -1 : 1));
  const whole = later.find((one) => studs === null || one.studs >= studs);
  const partly = later.filter((one) => whole === undefined || one.happenedAtUtc < whole.happenedAtUtc);
  return {
    at: whole?.happenedAt ?? null,
    partly: partly.map(
      (one) => `${one.what} in part on ${one.happenedAt.slice(0, 10)}, ${one.studs} of ${studs} studs`,
    ),
  };
}

async function workOn(db: Db, jointIds: readonly string[], after: string): Promise<LaterWork[]> {
  const tightened = await db
    .selectFrom('tightening')
    .innerJoin('event', 'event.id', 'tightening.id')
    .select([
      'tightening.id as eventId',
      'tightening.joint_id as jointId',
      'tightening.happened_at as happenedAt',
      'tightening.happened_at_utc as happenedAtUtc',
      'tightening.bolts_tightened as studs',
      BOLT_SET.as('boltSet'),
    ])
    .where('tightening.joint_id', 'in', [...jointIds])
    .where('tightening.happened_at_utc', '>', after)
    .execute();
  const loosened = await db
    .selectFrom('breakout')
    .innerJoin('event', 'event.id', 'breakout.id')
    .select([
      'breakout.id as eventId',
      'breakout.joint_id as jointId',
      'breakout.happened_at as happenedAt',
      'breakout.happened_at_utc as happenedAtUtc',
      BOLT_SET.as('boltSet'),
      // A stud that would not turn still carries its load.
      sql<number>`(select count(*) from breakout_reading
        where breakout_id = breakout.id and outcome <> 'would not turn')`.as('studs'),
    ])
    .where('breakout.joint_id', 'in', [...jointIds])
    .where('breakout.happened_at_utc', '>', after)
    .execute();
  return [
    ...tightened.map((row) => ({ ...row, what: 'tightened' as const })),
    ...loosened.map((row) => ({ ...row, what: 'broken out' as const })),
  ];
}
