import type { Kysely } from 'kysely';
import type { WorkKind } from '../../../core/contract/setting.ts';
import type { Entered } from '../../../core/units/entered.ts';
import type { KnownTorque, RecordedEvent } from '../chain/events.ts';
import type { Projector } from '../chain/projector.ts';
import { nameKey } from '../fold.ts';
import { lifeOfBreakout, lifeOfTightening } from '../life/events.ts';
import { breakoutTorques } from '../operations/torque.ts';
import { insertRows } from '../register/insert.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { advanceStanding, countOfClass } from './life.ts';
import { toolLinks } from './tool-links.ts';

type WorkEvent = RecordedEvent<'tightening recorded'> | RecordedEvent<'breakout recorded'>;

export const projectTightenings: Projector<'tightening recorded'> = async (db, events) => {
  for (const event of events) {
    const { data } = event.data;
    await db
      .insertInto('tightening')
      .values({
        ...workColumns(event),
        bolts_tightened: data.boltsTightened,
        final_pass_no_turn: data.finalPassNoTurn ? 1 : 0,
        ...typedTorque(data, event.data.torque),
      })
      .execute();
    await linkWork(db, event, 'tightening');
    await insertRows(
      db,
      'tightening_pass',
      // A body recorded before passes were kept names none.
      (data.passIds ?? []).map((passId, position) => ({
        tightening_id: event.id,
        pass_id: passId,
        position,
      })),
    );
    await countOfClass(db, event.id, event.data.life);
    await advanceStanding(db, data.jointId, lifeOfTightening(event.id, event.happenedAt, event.data));
  }
};

export const projectBreakouts: Projector<'breakout recorded'> = async (db, events) => {
  for (const event of events) {
    const { data, torques } = event.data;
    const { median, highest, read } = breakoutTorques(data.readings, torques);
    await db
      .insertInto('breakout')
      .values({
        ...workColumns(event),
        readings: read,
        not_turned: data.readings.filter(({ outcome }) => outcome !== 'turned').length,
        torque_nm: median,
        highest_nm: highest,
      })
      .execute();
    await insertRows(
      db,
      'breakout_reading',
      data.readings.map((reading, index) => ({
        breakout_id: event.id,
        bolt: reading.bolt,
        outcome: reading.outcome,
        ...typedTorque(reading, torques[index] ?? { torque: null, basis: 'not read', certificateId: null }),
      })),
    );
    await linkWork(db, event, 'breakout');
    await advanceStanding(db, data.jointId, lifeOfBreakout(event.id, event.happenedAt, data));
  }
};

function workColumns(event: WorkEvent) {
  const { data, flags } = event.data;
  return {
    id: event.id,
    joint_id: data.jointId,
    setting_id: data.settingId,
    happened_at: event.happenedAt,
    happened_at_utc: event.happenedAtUtc,
    flags: JSON.stringify(flags),
  };
}

function typedTorque(
  typed: { readonly dialled: Entered | null; readonly torque: Entered | null },
  known: KnownTorque,
) {
  return {
    dialled_text: typed.dialled?.text ?? null,
    dialled_unit: typed.dialled?.unit ?? null,
    dialled_pa: typed.dialled?.si ?? null,
    torque_text: typed.torque?.text ?? null,
    torque_unit: typed.torque?.unit ?? null,
    torque_nm: known.torque,
    basis: known.basis,
  };
}

/** Behind every part of the tightening's own set. */
const FIRST_OF_PASSES = 100;

async function linkWork(db: Kysely<RegisterSchema>, event: WorkEvent, kind: WorkKind): Promise<void> {
  const { data, batches, overloads = [], passTools = [] } = event.data;
  await insertRows(db, 'event_joint', [{ event_id: event.id, joint_id: data.jointId }]);
  await insertRows(
    db,
    'event_person',
    data.personIds.map((personId, position) => ({
      event_id: event.id,
      person_id: personId,
      role: 'did the work' as const,
      position,
    })),
  );
  const links = [
    ...(await toolLinks(db, event.id, data, event.happenedAtUtc)),
    ...passTools.map(({ toolId, role }, position) => ({
      event_id: event.id,
      tool_id: toolId,
      role,
      position: FIRST_OF_PASSES + position,
      used_at: event.happenedAtUtc,
    })),
  ];
  await insertRows(db, 'event_tool', links);
  await db
    .updateTable('tool')
    .set(({ eb }) => ({ uses: eb('uses', '+', 1) }))
    .where('id', 'in', [...new Set(links.map(({ tool_id: toolId }) => toolId))])
    .execute();
  await insertRows(
    db,
    'tool_overload',
    overloads.map(({ toolId, text }) => ({
      event_id: event.id,
      tool_id: toolId,
      happened_at: event.happenedAt,
      happened_at_utc: event.happenedAtUtc,
      text,
    })),
  );
  for (const batch of batches) {
    await db
      .insertInto('batch')
      .values({ ...batch, name_key: nameKey(batch.name), number_key: nameKey(batch.number) })
      .onConflict((conflict) => conflict.column('id').doNothing())
      .execute();
  }
  await insertRows(
    db,
    'event_batch',
    batches.map((batch) => ({ event_id: event.id, batch_id: batch.id })),
  );
  await db
    .updateTable('joint')
    .set({ last_event_kind: kind, last_event_at: event.happenedAt, last_event_at_utc: event.happenedAtUtc })
    .where('id', '=', data.jointId)
    .where(({ or, eb }) =>
      or([eb('last_event_at_utc', 'is', null), eb('last_event_at_utc', '<=', event.happenedAtUtc)]),
    )
    .execute();
}
