import { type Kysely, sql } from 'kysely';
import type { FrictionEvidence, FrictionReading } from '../../../core/contract/friction.ts';
import type { ParsedInput } from '../../../core/contract/requests.ts';
import { frictionGroups } from '../../../core/friction/groups.ts';
import { measuredNutFactor } from '../../../core/friction/measured.ts';
import { frictionFinding } from '../../../core/friction/words.ts';
import { plainName } from '../../../core/text/same-name.ts';
import { workOf } from '../breakout/openings.ts';
import type { EventBody, EventDataByKind } from '../chain/events.ts';
import type { ReadContext } from '../context.ts';
import { jointsAtTheTime } from '../recall/work.ts';
import type { RegisterSchema } from '../register/schema.ts';

type Db = Kysely<RegisterSchema>;
type Tightening = EventDataByKind['tightening recorded'];

/** Points sent to the window; highest and lowest of every group are among them. */
const MOST_SHOWN = 2000;

/** Nut factors measured beside torques, put together. */
export async function frictionEvidenceOf(
  { db }: ReadContext,
  input: ParsedInput<'friction.evidence'>,
): Promise<FrictionEvidence> {
  const { readings, leftOut } = await measured(db);
  const same = (asked: string, own: string) => asked === '' || plainName(asked) === plainName(own);
  const found = readings.filter(
    (one) =>
      same(input.lubricant, one.lubricant) &&
      same(input.batch, one.batch) &&
      same(input.size, one.size) &&
      same(input.material, one.material) &&
      (input.studUses === null || input.studUses === one.studUses),
  );
  const groups = frictionGroups(found, input.groupBy);
  const shown = thinned(found);
  return {
    finding: frictionFinding(groups, leftOut),
    groups,
    readings: shown,
    shown: shown.length,
    total: found.length,
    leftOut,
  };
}

/** Every so many in order of time, and all that are highest or lowest of their lubricant. */
function thinned(readings: readonly FrictionReading[]): FrictionReading[] {
  if (readings.length <= MOST_SHOWN) return [...readings];
  const ends = new Set<FrictionReading>();
  for (const own of Map.groupBy(readings, ({ lubricant }) => lubricant).values()) {
    const rising = own.toSorted((a, b) => a.nutFactor - b.nutFactor);
    for (const end of [rising[0], rising.at(-1)]) if (end !== undefined) ends.add(end);
  }
  const step = Math.ceil(readings.length / (MOST_SHOWN - ends.size));
  return readings.filter((one, index) => index % step === 0 || ends.has(one));
}

async function measured(db: Db): Promise<Pick<FrictionEvidence, 'readings' | 'leftOut'>> {
  const rows = await db
    .selectFrom('tightening')
    .innerJoin('event', 'event.id', 'tightening.id')
    .innerJoin('joint', 'joint.id', 'tightening.joint_id')
    .select([
      'tightening.id as eventId',
      'tightening.joint_id as jointId',
      'joint.tag',
      'tightening.happened_at as happenedAt',
      'tightening.torque_nm as torque',
      'event.body',
    ])
    .where(sql<boolean>`json_extract(event.body, '$.data.data.loads') is not null`)
    .where(({ not, exists, selectFrom }) =>
      not(
        exists(selectFrom('event as later').select('later.id').whereRef('later.supersedes', '=', 'event.id')),
      ),
    )
    .orderBy('tightening.happened_at_utc')
    .orderBy('tightening.id')
    .execute();
  const works = rows.map((row) => ({ row, work: (JSON.parse(row.body) as EventBody).data as Tightening }));
  const jointOf = await jointsAtTheTime(db, works);
  const { usesAt } = await workOf(db, [...new Set(rows.map(({ jointId }) => jointId))]);
  const readings: FrictionReading[] = [];
  const leftOut: FrictionEvidence['leftOut'] = [];
  for (const { row, work } of works) {
    const { eventId, jointId, tag, happenedAt, torque } = row;
    const joint = jointOf(jointId, work);
    const thread = joint?.basis.joint.thread?.value ?? null;
    const why = whyNot(work, torque, thread?.diameter ?? null);
    if (why !== null || torque === null || thread === null || joint === null) {
      leftOut.push({ eventId, tag, happenedAt, why: why ?? 'its joint is not known' });
      continue;
    }
    const lubricant = work.batches.find(({ kind }) => kind === 'lubricant');
    for (const { bolt, load } of work.data.loads?.readings ?? []) {
      const nutFactor = measuredNutFactor(torque, load.si, thread.diameter);
      if (nutFactor === null) {
        leftOut.push({ eventId, tag, happenedAt, why: `the load of bolt ${bolt} was measured as zero` });
        continue;
      }
      readings.push({
        eventId,
        jointId,
        tag,
        happenedAt,
        bolt,
        torque,
        load: load.si,
        nutFactor,
        assumed: joint.basis.friction.nutFactor?.value ?? null,
        lubricant: lubricant?.name ?? joint.data.lubricant?.name ?? 'not known',
        batch: lubricant?.number ?? 'batch not known',
        size: thread.designation,
        material: joint.data.bolting.grade ?? 'not known',
        studUses: usesAt.get(eventId) ?? 0,
        method: work.data.loads?.method ?? '',
      });
    }
  }
  return { readings, leftOut };
}

function whyNot(work: Tightening, torque: number | null, diameter: number | null): string | null {
  if (work.data.method === 'tensioner') return 'a tensioned joint has no torque';
  if (torque === null) return 'the torque it was tightened with is not known';
  if (torque <= 0) return 'a torque of zero is recorded';
  return diameter === null ? 'the thread of the joint is not known' : null;
}
