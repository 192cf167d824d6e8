import { type Kysely, type OrderByItemBuilder, sql } from 'kysely';
import type { JointData, JointSummary } from '../../../core/contract/joint.ts';
import type { ParsedInput } from '../../../core/contract/requests.ts';
import { likePatterns } from '../fold.ts';
import type { RegisterSchema } from '../register/schema.ts';

export interface JointOnRegister {
  readonly id: string;
  readonly version: number;
  readonly unitName: string;
  readonly data: JointData;
}

export async function findJoint(db: Kysely<RegisterSchema>, id: string): Promise<JointOnRegister | null> {
  const row = await db
    .selectFrom('joint')
    .innerJoin('plant_unit', 'plant_unit.id', 'joint.unit_id')
    .select(['joint.id', 'joint.version', 'joint.data', 'plant_unit.name as unitName'])
    .where('joint.id', '=', id)
    .executeTakeFirst();
  return row ? { ...row, data: JSON.parse(row.data) as JointData } : null;
}

/** Most sisters a sheet is held against. */
const SISTERS = 20;

/** Joints of the same standard flange in the same plant unit, in order of their tags. */
export async function sisterJoints(
  db: Kysely<RegisterSchema>,
  id: string,
): Promise<{ id: string; data: JointData }[]> {
  const own = await db
    .selectFrom('joint')
    .select(['unit_id', 'flange', 'data'])
    .where('id', '=', id)
    .executeTakeFirst();
  if (!own || (JSON.parse(own.data) as JointData).flange.kind !== 'standard') return [];
  const rows = await db
    .selectFrom('joint')
    .select(['id', 'data'])
    .where('unit_id', '=', own.unit_id)
    .where('flange', '=', own.flange)
    .where('id', '!=', id)
    .orderBy('tag_sort')
    .limit(SISTERS)
    .execute();
  return rows.map((row) => ({ id: row.id, data: JSON.parse(row.data) as JointData }));
}

export async function jointIdByTag(db: Kysely<RegisterSchema>, tagKey: string): Promise<string | null> {
  const row = await db.selectFrom('joint').select('id').where('tag_key', '=', tagKey).executeTakeFirst();
  return row?.id ?? null;
}

interface JointPage {
  rows: JointSummary[];
  total: number;
}

export async function jointPage(
  db: Kysely<RegisterSchema>,
  input: ParsedInput<'joint.list'>,
): Promise<JointPage> {
  const matching = matchingJoints(db, input);
  const { total } = await matching
    .select(({ fn }) => fn.countAll<number>().as('total'))
    .executeTakeFirstOrThrow();
  const direction = (item: OrderByItemBuilder) =>
    input.direction === 'asc' ? item.asc().nullsLast() : item.desc().nullsLast();
  const rows = await matching
    .innerJoin('plant_unit', 'plant_unit.id', 'joint.unit_id')
    .leftJoin('joint_standing as shown', 'shown.joint_id', 'joint.id')
    .select([
      'shown.state',
      'shown.deviation_id as deviationId',
      'joint.id',
      'joint.tag',
      'plant_unit.name as unitName',
      'joint.location',
      'joint.service',
      'joint.flange',
      'joint.bolting',
      'joint.grade',
      'joint.last_event_kind',
      'joint.last_event_at',
    ])
    .$if(input.sort === 'unit', (query) => query.orderBy('plant_unit.name_key', direction))
    .$if(input.sort === 'service', (query) => query.orderBy('joint.service_sort', direction))
    .$if(input.sort === 'lastEvent', (query) => query.orderBy('joint.last_event_at_utc', direction))
    .orderBy('joint.tag_sort', input.sort === 'tag' ? input.direction : 'asc')
    .orderBy('joint.id')
    .limit(input.pageSize)
    .offset((input.page - 1) * input.pageSize)
    .execute();
  return {
    rows: rows.map(({ last_event_kind: kind, last_event_at: happenedAt, state, deviationId, ...joint }) => ({
      ...joint,
      state: state ?? 'unassessed',
      deviation: deviationId !== null,
      lastEvent: kind === null || happenedAt === null ? null : { kind, happenedAt },
    })),
    total,
  };
}

function matchingJoints(db: Kysely<RegisterSchema>, { text, unitId, state }: ParsedInput<'joint.list'>) {
  let query = db.selectFrom('joint');
  if (unitId !== null) query = query.where('joint.unit_id', '=', unitId);
  if (state !== null) {
    const inState = db.selectFrom('joint_standing').select('joint_id').where('state', '=', state);
    const followed = db.selectFrom('joint_standing').select('joint_id').where('state', '<>', 'unassessed');
    query =
      state === 'unassessed'
        ? query.where('joint.id', 'not in', followed)
        : query.where('joint.id', 'in', inState);
  }
  for (const pattern of likePatterns(text)) {
    query = query.where(sql<boolean>`joint.search like ${pattern} escape '\\'`);
  }
  return query;
}
