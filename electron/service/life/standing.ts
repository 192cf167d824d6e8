import type { Kysely } from 'kysely';
import type { ClassRuleData, JointState } from '../../../core/contract/life.ts';
import { CLASS_RULES } from '../../../core/joint/life/class-rules.ts';
import { type ClassGiven, type JointStanding, UNASSESSED } from '../../../core/joint/life/standing.ts';
import type { RegisterSchema } from '../register/schema.ts';

type Db = Kysely<RegisterSchema>;

/** Standing of a joint now; one without a row is unassessed. */
export async function standingOf(db: Db, jointId: string): Promise<JointStanding> {
  const row = await db
    .selectFrom('joint_standing')
    .select('standing')
    .where('joint_id', '=', jointId)
    .executeTakeFirst();
  return row ? (JSON.parse(row.standing) as JointStanding) : UNASSESSED;
}

/** Rule of a class in force now: the site's, or the one that comes with the program. */
export async function ruleOf(db: Db, given: ClassGiven | null): Promise<ClassRuleData | null> {
  if (given === null) return null;
  if (given.ruleId === null) return CLASS_RULES[given.level];
  const row = await db
    .selectFrom('class_rule')
    .select('data')
    .where('id', '=', given.ruleId)
    .executeTakeFirstOrThrow();
  return JSON.parse(row.data) as ClassRuleData;
}

/** What tightenings of a class are counted under. */
export const classKey = ({ ruleId, level }: ClassGiven) => ruleId ?? level;

/** Number of the next tightening of a class. */
export async function nextOfClass(db: Db, key: string): Promise<number> {
  const { highest } = await db
    .selectFrom('class_tightening')
    .select(({ fn }) => fn.max('ordinal').as('highest'))
    .where('class_key', '=', key)
    .executeTakeFirstOrThrow();
  return Number(highest ?? 0) + 1;
}

/** States of joints that somebody has assessed. */
export async function statesOf(db: Db, jointIds: readonly string[]): Promise<Map<string, JointState>> {
  if (jointIds.length === 0) return new Map();
  const rows = await db
    .selectFrom('joint_standing')
    .select(['joint_id as id', 'state'])
    .where('joint_id', 'in', [...jointIds])
    .where('state', '<>', 'unassessed')
    .execute();
  return new Map(rows.map(({ id, state }) => [id, state]));
}
