import type { Kysely } from 'kysely';
import type { ClassRuleData, ClassRuleRow } from '../../../core/contract/life.ts';
import type { RegisterSchema } from '../register/schema.ts';

type Db = Kysely<RegisterSchema>;
type SiteRule = Extract<ClassRuleRow, { origin: 'site' }>;

/** The site's classes by name, retired ones too, with how many joints have each now. */
export async function classRules(db: Db): Promise<SiteRule[]> {
  const rows = await db
    .selectFrom('class_rule')
    .select(({ selectFrom }) => [
      'id',
      'version',
      'data',
      selectFrom('joint_standing')
        .select(({ fn }) => fn.countAll<number>().as('joints'))
        .whereRef('joint_standing.class_rule_id', '=', 'class_rule.id')
        .as('joints'),
    ])
    .orderBy('name_key')
    .execute();
  return rows.map(({ id, version, data, joints }) => ({
    origin: 'site',
    id,
    version,
    data: JSON.parse(data) as ClassRuleData,
    joints: joints ?? 0,
  }));
}

export async function findClassRule(db: Db, id: string): Promise<SiteRule | null> {
  return (await classRules(db)).find((rule) => rule.id === id) ?? null;
}
