import type { Kysely } from 'kysely';
import type { RunView } from '../../../core/contract/pass.ts';
import { runStanding } from '../../../core/sequence/run.ts';
import type { EventBody, EventDataByKind } from '../chain/events.ts';
import type { RegisterSchema } from '../register/schema.ts';
import {
  issuedBody,
  type PlannedAndWait,
  passesOfRun,
  plannedPasses,
  stintViews,
} from '../repositories/pass.ts';

type Db = Kysely<RegisterSchema>;
type Work = EventDataByKind['tightening recorded' | 'breakout recorded'];

export interface OpenRun {
  readonly run: RunView;
  readonly plan: readonly PlannedAndWait[] | null;
}

/** The tightening that was begun on a joint and not brought to its end; of one bolt set where that is asked. */
export async function openRun(db: Db, jointId: string, boltSet: number | null): Promise<OpenRun | null> {
  const newest = await db
    .selectFrom('pass_record')
    .select(['run_id as runId', 'bolt_set as boltSet', 'ended_at_utc as endedAt'])
    .where('joint_id', '=', jointId)
    .$if(boltSet !== null, (query) => query.where('bolt_set', '=', boltSet ?? 0))
    .orderBy('ended_at_utc', 'desc')
    .orderBy('id', 'desc')
    .limit(1)
    .executeTakeFirst();
  if (newest === undefined || (await isOver(db, jointId, newest))) return null;
  const passes = await passesOfRun(db, newest.runId);
  const last = passes.at(-1);
  if (last === undefined) return null;
  const { settingId, of } = last.data;
  const issued = settingId === null ? null : await issuedBody(db, settingId);
  const plan = issued === null ? null : plannedPasses(issued);
  const stints = passes.map(({ data }) => data);
  return {
    plan,
    run: {
      runId: newest.runId,
      settingId,
      settingNumber: issued?.number ?? null,
      boltSet: newest.boltSet,
      of,
      lastBolt: passes.findLast(({ lastBolt }) => lastBolt !== null)?.lastBolt ?? null,
      stints: await stintViews(db, passes),
      standing: plan === null ? null : shown(runStanding(plan, stints)),
    },
  };
}

const shown = (standing: ReturnType<typeof runStanding>): RunView['standing'] => ({
  ...standing,
  done: [...standing.done],
  next: [...standing.next],
  remaining: [...standing.remaining],
  leftOut: [...standing.leftOut],
  skipped: [...standing.skipped],
  finishedPasses: [...standing.finishedPasses],
  problems: [...standing.problems],
});

interface Newest {
  readonly runId: string;
  readonly boltSet: number;
  readonly endedAt: string;
}

/** Recorded as a tightening, or overtaken by one or by a breakout of the same bolts. */
async function isOver(db: Db, jointId: string, { runId, boltSet, endedAt }: Newest): Promise<boolean> {
  const recorded = await db
    .selectFrom('tightening_pass')
    .innerJoin('pass_record', 'pass_record.id', 'tightening_pass.pass_id')
    .select('tightening_pass.tightening_id')
    .where('pass_record.run_id', '=', runId)
    .limit(1)
    .executeTakeFirst();
  if (recorded) return true;
  const later = await db
    .selectFrom('event_joint')
    .innerJoin('event', 'event.id', 'event_joint.event_id')
    .select('event.body')
    .where('event_joint.joint_id', '=', jointId)
    .where('event.kind', 'in', ['tightening recorded', 'breakout recorded'])
    .where('event.happened_at_utc', '>', endedAt)
    .execute();
  return later.some(({ body }) => {
    const { data } = (JSON.parse(body) as EventBody).data as Work;
    return (data.boltSet ?? 0) === boltSet;
  });
}
