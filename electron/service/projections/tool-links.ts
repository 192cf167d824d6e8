import type { Kysely } from 'kysely';
import type { SettingInput } from '../../../core/contract/setting.ts';
import type { ToolClass } from '../../../core/contract/tool.ts';
import type { RegisterSchema } from '../register/schema.ts';

/** What a setting or a record names of tools, as it was stored. */
type ToolsUsed = Pick<SettingInput, 'tools' | 'torqueTool'>;

/** A tool with the part it played in a setting or a record of work. */
export interface ToolLink {
  readonly event_id: string;
  readonly tool_id: string;
  readonly role: ToolClass;
  readonly position: number;
  readonly used_at: string | null;
}

/**
 * One link per part of the set, with the part it played; a further wrench has its own position. `usedAt` is null where
 * nothing has been done with them yet.
 */
export async function toolLinks(
  db: Kysely<RegisterSchema>,
  eventId: string,
  { tools: set, torqueTool }: ToolsUsed,
  usedAt: string | null,
): Promise<ToolLink[]> {
  // A body recorded before a kind of part existed does not name it.
  const { couplerIds = [], counterholdId = null, further = [] } = set;
  const wrenches = [set, ...further];
  const one = (id: string | null) => (id === null ? [] : [id]);
  const squareDrives = await squareDriveHeads(
    db,
    wrenches.flatMap(({ cassetteId }) => one(cassetteId)),
  );
  const link =
    (role: ToolClass) =>
    (toolId: string, position: number): ToolLink => ({
      event_id: eventId,
      tool_id: toolId,
      role,
      position,
      used_at: usedAt,
    });
  const head = (toolId: string, position: number) =>
    link(squareDrives.has(toolId) ? 'square-drive head' : 'cassette')(toolId, position);
  return [
    ...wrenches.flatMap(({ driveId }, at) => one(driveId).map((id) => link('drive unit')(id, at))),
    ...wrenches.flatMap(({ cassetteId }, at) => one(cassetteId).map((id) => head(id, at))),
    ...wrenches.flatMap(({ reducerIds }) => reducerIds).map(link('reducer')),
    ...one(set.pumpId).map(link('pump')),
    ...one(set.gaugeId).map(link('gauge')),
    ...wrenches.flatMap(({ hoseIds }) => hoseIds).map(link('hose')),
    ...couplerIds.map(link('coupler')),
    ...one(counterholdId).map(link('counterhold wrench')),
    ...one(torqueTool?.toolId ?? null).map(link('hand torque wrench')),
  ];
}

/** A square-drive head stands in the cassette's place of a set. What class a tool has never changes. */
async function squareDriveHeads(
  db: Kysely<RegisterSchema>,
  toolIds: readonly string[],
): Promise<ReadonlySet<string>> {
  if (toolIds.length === 0) return new Set();
  const rows = await db
    .selectFrom('tool')
    .select('id')
    .where('id', 'in', [...toolIds])
    .where('class', '=', 'square-drive head')
    .execute();
  return new Set(rows.map(({ id }) => id));
}
