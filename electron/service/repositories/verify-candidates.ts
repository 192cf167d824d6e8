import { type Kysely, sql } from 'kysely';
import type { Criticality } from '../../../core/contract/assembly.ts';
import type { DoubtName } from '../../../core/leak/doubts.ts';
import type { Candidate } from '../../../core/leak/verify-first.ts';
import type { RegisterSchema } from '../register/schema.ts';

type Db = Kysely<RegisterSchema>;

const YEAR_MS = 365.25 * 86_400_000;

export interface NamedCandidate extends Candidate {
  readonly tag: string;
  readonly unitName: string;
  readonly flange: string;
}

interface Asked {
  readonly unitId: string | null;
  readonly cyclesLimit: number | null;
  readonly now: Date;
}

interface Row {
  readonly id: string;
  readonly tag: string;
  readonly unitName: string;
  readonly flange: string;
  readonly class: Criticality | null;
  readonly deviationId: string | null;
  readonly followedFrom: string | null;
  readonly tighteningId: string | null;
  readonly settingId: string | null;
  readonly noTurn: number | null;
  readonly flags: string | null;
  readonly cycles: number | null;
}

/**
 * Every joint with what its records say of its present assembly. Years count from its first record of work or the day
 * it was entered: from then on a leak would have been recorded. One before that counts no year and is no leak of them.
 */
export async function candidates(db: Db, { unitId, cyclesLimit, now }: Asked): Promise<NamedCandidate[]> {
  const suspect = await inOpenCases(db);
  const { rows } = await sql<Row>`
    select joint.id, joint.tag, plant_unit.name as unitName, joint.flange,
           joint_standing.class_level as class, joint_standing.deviation_id as deviationId,
           min(coalesce(first_tightening.at, '9999'), coalesce(first_breakout.at, '9999'),
               coalesce(entered.at, '9999')) as followedFrom,
           newest.id as tighteningId, newest.setting_id as settingId,
           newest.final_pass_no_turn as noTurn, newest.flags,
           (select sum(cycles) from cycle_count
              join event on event.id = cycle_count.event_id
             where cycle_count.joint_id = joint.id and cycle_count.from_utc >= newest.happened_at_utc
               and not exists (select 1 from event as later where later.supersedes = event.id)) as cycles
      from joint
      join plant_unit on plant_unit.id = joint.unit_id
      left join joint_standing on joint_standing.joint_id = joint.id
      left join (select event_joint.joint_id, min(event.happened_at_utc) as at
                   from event join event_joint on event_joint.event_id = event.id
                  where event.kind = 'joint saved' group by event_joint.joint_id) as entered
             on entered.joint_id = joint.id
      left join (select joint_id, min(happened_at_utc) as at, max(happened_at_utc) as last
                   from tightening group by joint_id) as first_tightening on first_tightening.joint_id = joint.id
      left join (select joint_id, min(happened_at_utc) as at from breakout group by joint_id) as first_breakout
             on first_breakout.joint_id = joint.id
      left join tightening as newest on newest.id = (
             select id from tightening where joint_id = joint.id and happened_at_utc = first_tightening.last
              order by id desc limit 1)
     where ${unitId === null ? sql`1` : sql`joint.unit_id = ${unitId}`}
     order by joint.tag_sort, joint.id`.execute(db);
  const leaked = Map.groupBy(await leakMoments(db), ({ jointId }) => jointId);
  return rows.map((row) => {
    const own = leaked.get(row.id) ?? [];
    const counted = own.filter(({ at }) => row.followedFrom !== null && at > row.followedFrom);
    return {
      id: row.id,
      tag: row.tag,
      unitName: row.unitName,
      flange: row.flange,
      class: row.class,
      leaks: counted.length,
      leaksNow: own.some(({ closedBy }) => closedBy === null),
      years: yearsSince(row.followedFrom, now),
      doubts: doubtsOf(row, suspect, cyclesLimit),
    };
  });
}

const leakMoments = (db: Db) =>
  db
    .selectFrom('leak')
    .select(['joint_id as jointId', 'happened_at_utc as at', 'closed_by as closedBy'])
    .execute();

/** Records of work with a tool that an open case is about. */
async function inOpenCases(db: Db): Promise<Set<string>> {
  const rows = await db
    .selectFrom('recall_case')
    .innerJoin('event_tool', 'event_tool.tool_id', 'recall_case.tool_id')
    .leftJoin('recall_closure', 'recall_closure.case_id', 'recall_case.id')
    .select('event_tool.event_id as id')
    .where('recall_closure.id', 'is', null)
    .execute();
  return new Set(rows.map(({ id }) => id));
}

function yearsSince(from: string | null, now: Date): number {
  const start = from === null ? Number.NaN : Date.parse(from);
  return Number.isFinite(start) ? Math.max(0, (now.getTime() - start) / YEAR_MS) : 0;
}

function doubtsOf(row: Row, suspect: ReadonlySet<string>, cyclesLimit: number | null): DoubtName[] {
  const flags = row.flags === null ? [] : (JSON.parse(row.flags) as string[]);
  const given: [boolean, DoubtName][] = [
    [row.tighteningId === null, 'nothing recorded'],
    [flags.some((flag) => UNFINISHED.test(flag)), 'unfinished'],
    [row.noTurn === 0, 'nuts turned'],
    [row.tighteningId !== null && row.settingId === null, 'no setting'],
    [flags.some((flag) => flag.startsWith('refusal: ')), 'tools in doubt'],
    [row.tighteningId !== null && suspect.has(row.tighteningId), 'tool in a case'],
    [cyclesLimit !== null && row.cycles !== null && row.cycles > cyclesLimit, 'many cycles'],
    [row.deviationId !== null, 'deviation open'],
  ];
  return given.flatMap(([holds, doubt]) => (holds ? [doubt] : []));
}

const UNFINISHED = /^unfinished: /;
