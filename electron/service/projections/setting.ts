import type { SettingInput } from '../../../core/contract/setting.ts';
import type { ToolClass } from '../../../core/contract/tool.ts';
import type { Projector } from '../chain/projector.ts';
import { insertRows } from '../register/insert.ts';

export const projectSettings: Projector<'setting issued'> = async (db, events) => {
  for (const { id, recordedAt, data } of events) {
    const { input, card } = data;
    await db
      .insertInto('setting')
      .values({
        id,
        number: data.number,
        kind: input.kind,
        joint_id: input.jointId,
        joint_version: card.jointVersion,
        starts_on: input.startsOn,
        ends_on: input.endsOn,
        issued_at: recordedAt,
        issued_by: data.personId,
        dial_value: card.dial?.value ?? null,
        dial_unit: card.dial?.unit ?? null,
        dial_pa: card.dial?.pressure ?? null,
      })
      .execute();
    await insertRows(db, 'event_joint', [{ event_id: id, joint_id: input.jointId }]);
    await insertRows(db, 'event_person', [
      { event_id: id, person_id: data.personId, role: 'issued', position: 0 },
    ]);
    await insertRows(db, 'event_tool', toolLinks(id, input, null));
  }
};

/** What a setting or a record names of tools, as it was stored. */
type ToolsUsed = Pick<SettingInput, 'tools' | 'torqueTool'>;

/**
 * One link per part of the set, with the part it played; a further wrench has its own position. `usedAt` is null where
 * nothing has been done with them yet.
 */
export function toolLinks(eventId: string, { tools: set, torqueTool }: ToolsUsed, usedAt: string | null) {
  // A body recorded before a kind of part existed does not name it.
  const { couplerIds = [], counterholdId = null, further = [] } = set;
  const wrenches = [set, ...further];
  const link = (role: ToolClass) => (toolId: string, position: number) => ({
    event_id: eventId,
    tool_id: toolId,
    role,
    position,
    used_at: usedAt,
  });
  const one = (id: string | null) => (id === null ? [] : [id]);
  return [
    ...wrenches.flatMap(({ driveId }, at) => one(driveId).map((id) => link('drive unit')(id, at))),
    ...wrenches.flatMap(({ cassetteId }, at) => one(cassetteId).map((id) => link('cassette')(id, at))),
    ...wrenches.flatMap(({ reducerIds }) => reducerIds).map(link('reducer')),
    ...one(set.pumpId).map(link('pump')),
    ...one(set.gaugeId).map(link('gauge')),
    ...wrenches.flatMap(({ hoseIds }) => hoseIds).map(link('hose')),
    ...couplerIds.map(link('coupler')),
    ...one(counterholdId).map(link('counterhold wrench')),
    ...one(torqueTool?.toolId ?? null).map(link('hand torque wrench')),
  ];
}
