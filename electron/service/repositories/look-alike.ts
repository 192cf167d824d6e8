import { type Kysely, sql } from 'kysely';
import type { JointData } from '../../../core/contract/joint.ts';
import { identityOf } from '../../../core/joint/identity.ts';
import type { SeenJoint } from '../../../core/joint/look-alike.ts';
import { nearTags } from '../../../core/joint/tag.ts';
import { nameKey } from '../fold.ts';
import type { RegisterSchema } from '../register/schema.ts';

type Db = Kysely<RegisterSchema>;

/** Joints of one flange looked at before and after this one in the order of tags. */
const ON_EACH_SIDE = 20;

/** At one valve or named by one joint there are few; this keeps a list with a slip in it from being read whole. */
const OF_ONE_KIND = 60;

/**
 * A joint and those that could be taken for it. Each kind of likeness is looked up by an index of its own, so that
 * the size of the register doesn't count.
 */
export async function withCandidates(
  db: Db,
  id: string,
): Promise<{ own: SeenJoint; others: SeenJoint[] } | null> {
  const [own] = await seenJoints(db, [id]);
  if (own === undefined) return null;
  const lists = await Promise.all([
    namedHere(db, own),
    namingThis(db, own),
    atTheValve(db, own),
    ofNearTag(db, own),
    ofSameLooks(db, own, 'before'),
    ofSameLooks(db, own, 'after'),
  ]);
  const ids = new Set(lists.flat());
  ids.delete(id);
  return { own, others: await seenJoints(db, [...ids]) };
}

async function seenJoints(db: Db, ids: readonly string[]): Promise<SeenJoint[]> {
  if (ids.length === 0) return [];
  const rows = await db
    .selectFrom('joint')
    .innerJoin('plant_unit', 'plant_unit.id', 'joint.unit_id')
    .leftJoin('joint_standing', 'joint_standing.joint_id', 'joint.id')
    .select([
      'joint_standing.state',
      'joint_standing.isolation_ref as isolation',
      'joint.id',
      'joint.flange',
      'joint.bolting',
      'joint.data',
      'plant_unit.name as unitName',
    ])
    .where('joint.id', 'in', [...ids])
    .execute();
  return rows.map(({ id, flange, bolting, data: text, unitName, state, isolation }) => {
    const data = JSON.parse(text) as JointData;
    const { tag, unitId, service, location } = data;
    return {
      id,
      tag,
      unitId,
      unitName,
      service,
      flange,
      bolting,
      location,
      identity: identityOf(data),
      // Without a class nobody follows its isolations.
      isolated: state === null || state === 'unassessed' ? null : isolation !== null,
    };
  });
}

const idOf = ({ id }: { readonly id: string }) => id;

async function namedHere(db: Db, { identity }: SeenJoint): Promise<string[]> {
  const tags = [...(identity.confusableWith ?? []).map(({ tag }) => tag), ...(identity.neighbours ?? [])];
  if (tags.length === 0) return [];
  const keys = tags.map(nameKey);
  return (await db.selectFrom('joint').select('id').where('tag_key', 'in', keys).execute()).map(idOf);
}

async function namingThis(db: Db, { tag }: SeenJoint): Promise<string[]> {
  const rows = await db
    .selectFrom('joint_confusable')
    .select('joint_id as id')
    .where('tag_key', '=', nameKey(tag))
    .limit(OF_ONE_KIND)
    .execute();
  return rows.map(idOf);
}

async function atTheValve(db: Db, { identity: { valve } }: SeenJoint): Promise<string[]> {
  const key = nameKey(valve);
  if (key === '') return [];
  const rows = await db
    .selectFrom('joint')
    .select('id')
    .where('valve_key', '=', key)
    // The index holds only joints at a valve; SQLite uses it when the query says so too.
    .where('valve_key', '<>', '')
    .limit(OF_ONE_KIND)
    .execute();
  return rows.map(idOf);
}

/** Tags that could be a slip of this one are looked up by their key, each a step in the index. */
async function ofNearTag(db: Db, { tag }: SeenJoint): Promise<string[]> {
  // One parameter instead of hundreds, so that the statement is the same for every tag.
  const near = sql<string>`(select value from json_each(${JSON.stringify(nearTags(tag))}))`;
  const rows = await db.selectFrom('joint').select('id').where('tag_key', 'in', near).execute();
  return rows.map(idOf);
}

async function ofSameLooks(db: Db, { id }: SeenJoint, side: 'before' | 'after'): Promise<string[]> {
  const own = await db
    .selectFrom('joint')
    .select(['unit_id', 'flange', 'tag_sort'])
    .where('id', '=', id)
    .executeTakeFirstOrThrow();
  const rows = await db
    .selectFrom('joint')
    .select('id')
    .where('unit_id', '=', own.unit_id)
    .where('flange', '=', own.flange)
    .where('tag_sort', side === 'before' ? '<' : '>', own.tag_sort)
    .orderBy('tag_sort', side === 'before' ? 'desc' : 'asc')
    .limit(ON_EACH_SIDE)
    .execute();
  return rows.map(idOf);
}
