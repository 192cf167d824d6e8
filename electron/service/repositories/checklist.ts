import type { Kysely } from 'kysely';
import type {
  CheckData,
  ChecklistData,
  ChecklistRow,
  CheckRow,
  ToolRuleData,
  ToolRuleRow,
} from '../../../core/contract/check.ts';
import type { EventBody, EventDataByKind } from '../chain/events.ts';
import type { RegisterSchema } from '../register/schema.ts';

type Db = Kysely<RegisterSchema>;

/** All lists by name, retired ones too. */
export async function checklists(db: Db): Promise<ChecklistRow[]> {
  const rows = await db
    .selectFrom('checklist')
    .select(['id', 'version', 'data'])
    .orderBy('name_key')
    .execute();
  return rows.map(({ data, ...row }) => ({ ...row, data: JSON.parse(data) as ChecklistData }));
}

export async function findChecklist(db: Db, id: string): Promise<ChecklistRow | null> {
  const row = await db
    .selectFrom('checklist')
    .select(['id', 'version', 'data'])
    .where('id', '=', id)
    .executeTakeFirst();
  return row ? { ...row, data: JSON.parse(row.data) as ChecklistData } : null;
}

interface ListInForce {
  readonly name: string;
  readonly newest: number;
  /** Null when there is no such version. */
  readonly data: ChecklistData | null;
}

/** A list in one of its versions; older ones stand in the log, of which there are few. */
export async function listInForce(db: Db, id: string, version: number): Promise<ListInForce | null> {
  const newest = await findChecklist(db, id);
  if (newest === null) return null;
  const told = { name: newest.data.name, newest: newest.version };
  if (version === newest.version) return { ...told, data: newest.data };
  const rows = await db.selectFrom('event').select('body').where('kind', '=', 'checklist saved').execute();
  const saved = rows
    .map(({ body }) => (JSON.parse(body) as EventBody).data as EventDataByKind['checklist saved'])
    .find((list) => list.id === id && list.version === version);
  return { ...told, data: saved?.data ?? null };
}

/** One rule for a class of tool. */
export async function toolRuleRows(db: Db): Promise<ToolRuleRow[]> {
  const rows = await db.selectFrom('tool_rule').select(['id', 'version', 'data']).orderBy('class').execute();
  return rows.map(({ data, ...row }) => ({ ...row, data: JSON.parse(data) as ToolRuleData }));
}

/** Checks of a tool, newest first. */
export async function checksOf(db: Db, toolId: string): Promise<CheckRow[]> {
  const rows = await db
    .selectFrom('tool_check')
    .innerJoin('event', 'event.id', 'tool_check.id')
    .innerJoin('tool', 'tool.id', 'tool_check.tool_id')
    .innerJoin('person', 'person.id', 'tool_check.person_id')
    .leftJoin('checklist', 'checklist.id', 'tool_check.checklist_id')
    .select([
      'tool_check.id',
      'tool_check.tool_id as toolId',
      'tool.number',
      'tool_check.kind',
      'tool_check.happened_at as happenedAt',
      'person.name as person',
      'checklist.name as checklist',
      'tool_check.result',
      'tool_check.error',
      'tool_check.data',
    ])
    .where('tool_check.tool_id', '=', toolId)
    .orderBy('tool_check.happened_at_utc', 'desc')
    .orderBy('event.sequence', 'desc')
    .execute();
  return rows.map(({ data, ...row }) => ({ ...row, remarks: (JSON.parse(data) as CheckData).remarks }));
}
