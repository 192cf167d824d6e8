import type { Kysely } from 'kysely';
import type { RegisterSchema } from '../register/schema.ts';

export interface OpenCase {
  readonly id: string;
  readonly number: string;
}

/** Open cases by the tool they name; a tool without one is left out. */
export async function openCases(
  db: Kysely<RegisterSchema>,
  toolIds: readonly string[],
): Promise<ReadonlyMap<string, readonly OpenCase[]>> {
  const byTool = new Map<string, OpenCase[]>();
  if (toolIds.length === 0) return byTool;
  const rows = await db
    .selectFrom('recall_case')
    .leftJoin('recall_closure', 'recall_closure.case_id', 'recall_case.id')
    .select(['recall_case.id', 'recall_case.number', 'recall_case.tool_id as toolId'])
    .where('recall_case.tool_id', 'in', [...toolIds])
    .where('recall_closure.id', 'is', null)
    .orderBy('recall_case.number')
    .execute();
  for (const { id, number, toolId } of rows) {
    if (toolId !== null) byTool.set(toolId, [...(byTool.get(toolId) ?? []), { id, number }]);
  }
  return byTool;
}
