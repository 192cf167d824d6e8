import type { Projector } from '../chain/projector.ts';
import { nameKey } from '../fold.ts';
import { insertRows } from '../register/insert.ts';

export const projectChecks: Projector<'tool checked'> = async (db, events) => {
  await insertRows(
    db,
    'tool_check',
    events.map(({ id, happenedAt, happenedAtUtc, data: { data, error } }) => ({
      id,
      tool_id: data.toolId,
      kind: data.kind,
      happened_at: happenedAt,
      happened_at_utc: happenedAtUtc,
      person_id: data.personId,
      checklist_id: data.checklist?.id ?? null,
      checklist_version: data.checklist?.version ?? null,
      result: data.result,
      error,
      data: JSON.stringify(data),
    })),
  );
  await insertRows(
    db,
    'event_tool',
    events.map(({ id, data: { data } }) => ({
      event_id: id,
      tool_id: data.toolId,
      role: 'checked' as const,
      position: 0,
    })),
  );
  await insertRows(
    db,
    'event_person',
    events.map(({ id, data: { data } }) => ({
      event_id: id,
      person_id: data.personId,
      role: 'checked' as const,
      position: 0,
    })),
  );
};

export const projectChecklists: Projector<'checklist saved'> = async (db, events) => {
  for (const { data: saved } of events) {
    const { name, kind, retired } = saved.data;
    const row = {
      version: saved.version,
      name,
      name_key: nameKey(name),
      kind,
      retired: retired ? 1 : 0,
      data: JSON.stringify(saved.data),
    };
    await db
      .insertInto('checklist')
      .values({ id: saved.id, ...row })
      .onConflict((conflict) => conflict.column('id').doUpdateSet(row))
      .execute();
  }
};

export const projectToolRules: Projector<'tool rule saved'> = async (db, events) => {
  for (const { data: saved } of events) {
    const row = { version: saved.version, class: saved.data.class, data: JSON.stringify(saved.data) };
    await db
      .insertInto('tool_rule')
      .values({ id: saved.id, ...row })
      .onConflict((conflict) => conflict.column('id').doUpdateSet(row))
      .execute();
  }
};
