import { type Kysely, sql } from 'kysely';
import type { JointData } from '../../../core/contract/joint.ts';
import type {
  Confirmation,
  PassPlanData,
  SiteFlange,
  SiteGrade,
  SiteRow,
  SiteRowData,
  SiteRowKind,
} from '../../../core/contract/site.ts';
import type { SitePlan, SiteTables } from '../../../core/joint/site-tables.ts';
import { sitePassPlan } from '../../../core/sequence/site-plan.ts';
import { likePatterns, nameKey } from '../fold.ts';
import type { RegisterSchema } from '../register/schema.ts';

type Db = Kysely<RegisterSchema>;

interface RowSearch {
  readonly kind: SiteRowKind | null;
  readonly text: string;
}

/** Rows of the site's own tables, retired ones too, by kind and name. */
export async function siteRows(db: Db, { kind, text }: RowSearch): Promise<SiteRow[]> {
  let query = db.selectFrom('site_row').select(['id', 'version', 'data']);
  if (kind !== null) query = query.where('kind', '=', kind);
  for (const pattern of likePatterns(text)) {
    query = query.where(sql<boolean>`search like ${pattern} escape '\\'`);
  }
  const rows = await query.orderBy('kind').orderBy('name_key').execute();
  return rows.map(({ id, version, data }) => ({
    id,
    version,
    origin: 'site',
    data: JSON.parse(data) as SiteRowData,
  }));
}

export async function siteRowByName(db: Db, kind: SiteRowKind, key: string) {
  return db
    .selectFrom('site_row')
    .select(['id', 'retired', 'key'])
    .where('kind', '=', kind)
    .where('name_key', '=', nameKey(key))
    .executeTakeFirst();
}

/** The site's plans, by name. */
export async function sitePlans(db: Db): Promise<SitePlan[]> {
  const rows = await planQuery(db).orderBy('pass_plan.name_key').execute();
  return rows.map(planOf);
}

export async function findSitePlan(db: Db, id: string): Promise<SitePlan | null> {
  const row = await planQuery(db).where('pass_plan.id', '=', id).executeTakeFirst();
  return row ? planOf(row) : null;
}

function planQuery(db: Db) {
  return db
    .selectFrom('pass_plan')
    .leftJoin('person', 'person.id', 'pass_plan.approved_by')
    .select([
      'pass_plan.id',
      'pass_plan.version',
      'pass_plan.data',
      'pass_plan.approved_by as approvedBy',
      'pass_plan.approved_at as approvedAt',
      'person.name as person',
    ]);
}

interface StoredPlan {
  readonly id: string;
  readonly version: number;
  readonly data: string;
  readonly approvedBy: string | null;
  readonly approvedAt: string | null;
  readonly person: string | null;
}

function planOf({ id, version, data: text, approvedBy, approvedAt, person }: StoredPlan): SitePlan {
  // Plans kept before one could be retired don't say that they are not.
  const data: PassPlanData = { retired: false, ...(JSON.parse(text) as Omit<PassPlanData, 'retired'>) };
  const { name, source, steps, checks = [] } = sitePassPlan(id, data);
  const approved =
    approvedBy === null || approvedAt === null || person === null
      ? null
      : { personId: approvedBy, person, at: approvedAt };
  return {
    origin: 'site',
    id,
    version,
    data,
    approved,
    name,
    source,
    steps: steps.map(({ wait: _, ...step }) => step),
    checks: [...checks],
  };
}

/** What a joint and its setting rest on of the site's own tables, so that a frozen card can be recomputed. */
export async function siteTablesFor(
  db: Db,
  joint: JointData,
  planId: string | null = null,
): Promise<SiteTables> {
  const flange = joint.flange.kind === 'custom' ? joint.flange.siteRow : null;
  const grades = [joint, ...joint.boltSets].flatMap(({ bolting: { grade } }) => grade ?? []);
  return {
    flanges: await rowsNamed<SiteFlange>(db, 'flange', flange === null ? [] : [flange]),
    grades: await rowsNamed<SiteGrade>(db, 'stud grade', grades),
    plan: planId === null ? null : await findSitePlan(db, planId),
    confirmations: await confirmations(db),
  };
}

async function rowsNamed<T extends SiteRowData>(
  db: Db,
  kind: T['kind'],
  names: readonly string[],
): Promise<T[]> {
  if (names.length === 0) return [];
  const rows = await db
    .selectFrom('site_row')
    .select('data')
    .where('kind', '=', kind)
    .where('name_key', 'in', [...new Set(names.map(nameKey))])
    .orderBy('name_key')
    .execute();
  return rows.map(({ data }) => JSON.parse(data) as T);
}

/** Every confirmation, oldest first. */
export async function confirmations(db: Db): Promise<Confirmation[]> {
  const rows = await db
    .selectFrom('table_confirmation')
    .innerJoin('person', 'person.id', 'table_confirmation.person_id')
    .innerJoin('event', 'event.id', 'table_confirmation.event_id')
    .select([
      'table_confirmation.table_name as table',
      'table_confirmation.row_key as key',
      'table_confirmation.field',
      'table_confirmation.value',
      'person.name as person',
      'table_confirmation.source_seen as sourceSeen',
      'table_confirmation.happened_at as at',
    ])
    .orderBy('event.happened_at_utc')
    .orderBy('event.sequence')
    .orderBy('table_confirmation.position')
    .execute();
  return rows;
}
