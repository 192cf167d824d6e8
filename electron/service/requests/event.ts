import type { BreakoutData, EventDetail, TighteningData } from '../../../core/contract/event.ts';
import type { JointData } from '../../../core/contract/joint.ts';
import { showEntered } from '../../../core/text/number.ts';
import type { Entered } from '../../../core/units/entered.ts';
import type { EventBody, EventDataByKind } from '../chain/events.ts';
import type { ReadContext } from '../context.ts';
import { notFound } from '../failure.ts';
import { competenceNotes } from '../operations/competence.ts';
import { saved } from '../operations/edit.ts';
import * as work from '../operations/record.ts';
import { checkNotLater } from '../operations/who-and-when.ts';
import { casesOfRecord } from '../recall/of-record.ts';
import { peopleOf } from '../repositories/history.ts';
import { passesById, type RecordedPass, stintViews } from '../repositories/pass.ts';
import type { Read, Write } from './handler.ts';

export const recordTightening: Write<'event.recordTightening'> = async (context, { data }) => {
  checkNotLater(context, data.happenedAt);
  return saved(await work.recordTightening(context, data), null);
};

export const recordBreakout: Write<'event.recordBreakout'> = async (context, { data }) => {
  checkNotLater(context, data.happenedAt);
  return saved(await work.recordBreakout(context, data), null);
};

export const readBreakoutOrTightening: Read<'event.get'> = async ({ db, site }, { id }) => {
  const row = await db
    .selectFrom('event')
    .innerJoin('event_joint', 'event_joint.event_id', 'event.id')
    .innerJoin('joint', 'joint.id', 'event_joint.joint_id')
    .select([
      'event.sequence',
      'event.hash',
      'event.previous_hash',
      'event.body',
      'joint.id as jointId',
      'joint.tag',
      'joint.data',
    ])
    .where('event.id', '=', id)
    .where('event.kind', 'in', ['tightening recorded', 'breakout recorded'])
    .executeTakeFirst();
  if (!row) throw notFound('tightening or breakout', 'id', id);
  const body = JSON.parse(row.body) as EventBody;
  const tools = await db
    .selectFrom('event_tool')
    .innerJoin('tool', 'tool.id', 'event_tool.tool_id')
    .select(['tool.id', 'tool.number', 'event_tool.role'])
    .where('event_tool.event_id', '=', id)
    .orderBy('event_tool.role')
    .orderBy('event_tool.position')
    .execute();
  const { data, batches } = body.data as EventDataByKind['tightening recorded' | 'breakout recorded'];
  return {
    id,
    jointId: row.jointId,
    tag: row.tag,
    happenedAt: body.happenedAt,
    recordedAt: body.recordedAt,
    sequence: row.sequence,
    hash: row.hash,
    previousHash: row.previous_hash,
    people: (await peopleOf(db, [id])).get(id) ?? [],
    tools,
    cases: await casesOfRecord({ db, site }, { eventId: id, jointId: row.jointId }),
    boltSet: boltSetName(JSON.parse(row.data) as JointData, data.boltSet),
    batches: batches.map(({ kind, name, number }) => ({ kind, name, number })),
    passes: await stintViews(db, await passesOfRecord(db, body)),
    ...workOf(body),
  };
};

async function passesOfRecord(db: ReadContext['db'], body: EventBody): Promise<RecordedPass[]> {
  if (body.kind !== 'tightening recorded') return [];
  // A body recorded before passes were kept names none.
  const { passIds = [] } = (body.data as EventDataByKind['tightening recorded']).data;
  const passes = await passesById(db, passIds);
  return passIds.flatMap((id) => passes.get(id) ?? []);
}

/** As the joint stands now; a set that has been taken off since then keeps its number. */
function boltSetName({ boltSets }: JointData, index: number): string | null {
  if (index === 0) return boltSets.length === 0 ? null : 'bolting of the joint';
  return boltSets[index - 1]?.name ?? `bolt set ${index}`;
}

const shown = (value: Entered | null) => (value === null ? null : showEntered(value));

function toolOf({ torqueTool }: TighteningData | BreakoutData): EventDetail['torqueTool'] {
  return torqueTool && { number: torqueTool.number, certificate: torqueTool.certificate };
}

type Work = Pick<
  EventDetail,
  | 'kind'
  | 'settingId'
  | 'torques'
  | 'method'
  | 'torqueTool'
  | 'load'
  | 'boltsTightened'
  | 'finalPassNoTurn'
  | 'flags'
  | 'notes'
  | 'remarks'
>;

function workOf(body: EventBody): Work {
  if (body.kind === 'tightening recorded') {
    const { data, torque, flags } = body.data as EventDataByKind['tightening recorded'];
    return {
      kind: 'tightening',
      settingId: data.settingId,
      torques: [
        {
          bolt: null,
          dialled: shown(data.dialled),
          torque: torque.torque,
          outcome: null,
          basis: torque.basis,
        },
      ],
      method: data.method,
      torqueTool: toolOf(data),
      load: data.load?.si ?? null,
      boltsTightened: data.boltsTightened,
      finalPassNoTurn: data.finalPassNoTurn,
      flags: [...flags],
      notes: competenceNotes(body.data as EventDataByKind['tightening recorded']),
      remarks: data.remarks,
    };
  }
  const { data, torques, flags } = body.data as EventDataByKind['breakout recorded'];
  return {
    kind: 'breakout',
    settingId: data.settingId,
    torques: data.readings.map(({ bolt, outcome, dialled }, index) => ({
      bolt,
      outcome,
      dialled: shown(dialled),
      torque: torques[index]?.torque ?? null,
      basis: torques[index]?.basis ?? 'not read',
    })),
    method: data.method,
    torqueTool: toolOf(data),
    load: null,
    boltsTightened: null,
    finalPassNoTurn: null,
    flags: [...flags],
    notes: competenceNotes(body.data as EventDataByKind['breakout recorded']),
    remarks: data.remarks,
  };
}
