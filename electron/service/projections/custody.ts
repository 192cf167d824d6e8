import type { ToolStatus } from '../../../core/contract/custody.ts';
import type { ToolData } from '../../../core/contract/tool.ts';
import type { EventDataByKind } from '../chain/events.ts';
import type { Projector } from '../chain/projector.ts';
import { insertRows } from '../register/insert.ts';
import { toolColumns } from './tool.ts';

type Moved = EventDataByKind['tool moved']['data'];

/** Steps in which a tool changes its place; where it went is then what was said, or not known. */
const CARRIED: readonly Moved['step'][] = [
  'issue',
  'return',
  'send to the laboratory',
  'take back from the laboratory',
];

export const projectMoves: Projector<'tool moved'> = async (db, events) => {
  for (const { id, happenedAt, happenedAtUtc, data: moved } of events) {
    const { data, moves } = moved;
    await insertRows(
      db,
      'tool_move',
      moves.map(({ toolId, from, to }, position) => ({
        event_id: id,
        tool_id: toolId,
        position,
        step: data.step,
        from_status: from,
        to_status: to,
        happened_at: happenedAt,
        happened_at_utc: happenedAtUtc,
        person_id: data.personId,
        holder_id: data.holderId,
        condition: data.condition,
        place: data.place,
        reference: data.reference,
        reason: data.reason,
        kit_id: data.kitId,
      })),
    );
    await insertRows(
      db,
      'event_tool',
      moves.map(({ toolId }, position) => ({
        event_id: id,
        tool_id: toolId,
        role: 'moved' as const,
        position,
      })),
    );
    await insertRows(db, 'event_person', [
      { event_id: id, person_id: data.personId, role: 'handed over' as const, position: 0 },
      ...(data.holderId === null
        ? []
        : [{ event_id: id, person_id: data.holderId, role: 'took over' as const, position: 0 }]),
    ]);
    for (const { toolId, to } of moves) {
      const tool = await db
        .selectFrom('tool')
        .select(['data', 'holder_id as holderId'])
        .where('id', '=', toolId)
        .executeTakeFirstOrThrow();
      const before = JSON.parse(tool.data) as ToolData;
      const place = data.place !== '' || CARRIED.includes(data.step) ? data.place : before.place;
      await db
        .updateTable('tool')
        .set({
          ...toolColumns({ ...before, status: to, place }),
          holder_id: holderAfter(data, to, tool.holderId),
        })
        .where('id', '=', toolId)
        .execute();
    }
  }
};

/** A tool that is barred where it stands is still in the hands of whoever has it. */
function holderAfter({ step, holderId }: Moved, to: ToolStatus, before: string | null): string | null {
  if (to === 'issued') return step === 'issue' ? holderId : before;
  return step === 'quarantine' ? before : null;
}
