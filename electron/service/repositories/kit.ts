import type { Kysely } from 'kysely';
import type { KitData, KitRow } from '../../../core/contract/custody.ts';
import { dueWords, watched } from '../operations/dues.ts';
import type { RegisterSchema } from '../register/schema.ts';

type Db = Kysely<RegisterSchema>;

export async function findKit(db: Db, id: string) {
  const row = await db
    .selectFrom('kit')
    .select(['id', 'version', 'data'])
    .where('id', '=', id)
    .executeTakeFirst();
  return row ? { ...row, data: JSON.parse(row.data) as KitData } : null;
}

/** Kits by their first day, a page of them; `closed` shows those that are closed as well. */
export async function kitPage(
  db: Db,
  { closed, page, pageSize }: { readonly closed: boolean; readonly page: number; readonly pageSize: number },
  today: string,
): Promise<{ rows: KitRow[]; total: number }> {
  const matching = closed ? db.selectFrom('kit') : db.selectFrom('kit').where('closed', '=', 0);
  const { total } = await matching
    .select(({ fn }) => fn.countAll<number>().as('total'))
    .executeTakeFirstOrThrow();
  const kits = await matching
    .select(['id', 'version', 'data'])
    .orderBy('from_day')
    .orderBy('name_key')
    .orderBy('id')
    .limit(pageSize)
    .offset((page - 1) * pageSize)
    .execute();
  const rows = await kitRows(
    db,
    kits.map(({ data, ...kit }) => ({ ...kit, data: JSON.parse(data) as KitData })),
    today,
  );
  return { rows, total };
}

type Kit = Pick<KitRow, 'id' | 'version' | 'data'>;

/** Kits with their tools as they stand, what is due before each kit's last day, and who else holds them. */
export async function kitRows(db: Db, kits: readonly Kit[], today: string): Promise<KitRow[]> {
  const toolIds = [...new Set(kits.flatMap(({ data }) => data.toolIds))];
  const jointIds = [...new Set(kits.flatMap(({ data }) => data.jointIds))];
  const { rules, tools } = await watched(db, toolIds, today);
  const columns = await toolColumns(db, toolIds);
  const tags = await tagsOf(db, jointIds);
  const clashes = await clashesOf(
    db,
    kits.map(({ id }) => id),
  );
  const watchedById = new Map(tools.map((each) => [each.tool.id, each]));
  return kits.map((kit) => ({
    ...kit,
    tools: kit.data.toolIds.flatMap((id) => {
      const row = columns.get(id);
      const known = watchedById.get(id);
      if (row === undefined || known === undefined) return [];
      return [{ ...row, due: dueWords(known.tool, known.facts, rules, kit.data.to) }];
    }),
    joints: kit.data.jointIds.flatMap((id) => {
      const tag = tags.get(id);
      return tag === undefined ? [] : [{ id, tag }];
    }),
    clashes: kit.data.closed ? [] : (clashes.get(kit.id) ?? []),
  }));
}

async function toolColumns(db: Db, toolIds: readonly string[]) {
  if (toolIds.length === 0) return new Map<string, never>();
  const rows = await db
    .selectFrom('tool')
    .leftJoin('person', 'person.id', 'tool.holder_id')
    .select([
      'tool.id',
      'tool.number',
      'tool.class',
      'tool.ratings',
      'tool.status',
      'person.name as holder',
      'tool.place',
    ])
    .where('tool.id', 'in', [...toolIds])
    .execute();
  return new Map(rows.map((row) => [row.id, row]));
}

async function tagsOf(db: Db, jointIds: readonly string[]): Promise<Map<string, string>> {
  if (jointIds.length === 0) return new Map();
  const rows = await db
    .selectFrom('joint')
    .select(['id', 'tag'])
    .where('id', 'in', [...jointIds])
    .execute();
  return new Map(rows.map(({ id, tag }) => [id, tag]));
}

/** Other kits, not closed, that hold a tool of a kit on one of its days. */
async function clashesOf(db: Db, kitIds: readonly string[]): Promise<Map<string, KitRow['clashes']>> {
  const clashes = new Map<string, KitRow['clashes']>();
  if (kitIds.length === 0) return clashes;
  const rows = await db
    .selectFrom('kit_tool as own')
    .innerJoin('kit as kit', 'kit.id', 'own.kit_id')
    .innerJoin('kit_tool as held', 'held.tool_id', 'own.tool_id')
    .innerJoin('kit as other', 'other.id', 'held.kit_id')
    .innerJoin('tool', 'tool.id', 'own.tool_id')
    .select([
      'own.kit_id as kitId',
      'tool.number',
      'other.name as kit',
      'other.from_day as from',
      'other.to_day as to',
    ])
    .where('own.kit_id', 'in', [...kitIds])
    .whereRef('held.kit_id', '!=', 'own.kit_id')
    .where('other.closed', '=', 0)
    .whereRef('other.from_day', '<=', 'kit.to_day')
    .whereRef('other.to_day', '>=', 'kit.from_day')
    .orderBy('tool.number_sort')
    .orderBy('other.from_day')
    .orderBy('other.id')
    .execute();
  for (const { kitId, ...clash } of rows) clashes.set(kitId, [...(clashes.get(kitId) ?? []), clash]);
  return clashes;
}
