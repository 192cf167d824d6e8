import { type Kysely, sql } from 'kysely';
import type { AuditGroup, AuditRow } from '../../../core/contract/audit.ts';
import type { ParsedInput } from '../../../core/contract/requests.ts';
import type { RefusalBody } from '../access/refusals.ts';
import type { EventBody, EventKind } from '../chain/events.ts';
import { auditWords } from '../operations/audit-words.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { endOfDay, startOfDay } from '../time.ts';
import { peopleOf } from './history.ts';

type Db = Kysely<RegisterSchema>;

/** Which events an auditor looks for under which heading. A setting counts only when a refusal was set aside for it. */
const GROUP_OF: Readonly<Partial<Record<EventKind, AuditGroup>>> = {
  'setting issued': 'refusals set aside',
  'sign-in begun': 'sign-in',
  'signed in': 'sign-in',
  'sign-in failed': 'sign-in',
  'locked out': 'sign-in',
  'secret changed': 'sign-in',
  'person saved': 'people and roles',
  'person roles saved': 'people and roles',
  'competence saved': 'people and roles',
  'site row saved': 'reference data',
  'pass plan saved': 'reference data',
  'pass plan approved': 'reference data',
  'table values confirmed': 'reference data',
  'tool rule saved': 'site rules',
  'checklist saved': 'site rules',
  'register created': 'register data',
  'unit saved': 'register data',
  'joint saved': 'register data',
  'tool saved': 'register data',
  'kit saved': 'register data',
  'certificate added': 'register data',
  'import confirmed': 'register data',
  'record signed': 'signatures',
};

const kindsOf = (group: AuditGroup | null): EventKind[] =>
  (Object.keys(GROUP_OF) as EventKind[]).filter((kind) => group === null || GROUP_OF[kind] === group);

/** Newest first, events and refusals together. */
export async function auditPage(
  db: Db,
  timeZone: string,
  input: ParsedInput<'audit.list'>,
): Promise<{ rows: AuditRow[]; total: number }> {
  const found = entries(db, timeZone, input);
  const { total } = await found
    .select(({ fn }) => fn.countAll<number>().as('total'))
    .executeTakeFirstOrThrow();
  const page = await found
    .select(['id', 'at', 'source'])
    .orderBy('at', 'desc')
    .orderBy('id', 'desc')
    .limit(input.pageSize)
    .offset((input.page - 1) * input.pageSize)
    .execute();
  const ids = (source: 'event' | 'refusal') =>
    page.filter((row) => row.source === source).map(({ id }) => id);
  const told = new Map([...(await eventRows(db, ids('event'))), ...(await refusalRows(db, ids('refusal')))]);
  return { rows: page.flatMap(({ id }) => told.get(id) ?? []), total };
}

function entries(db: Db, timeZone: string, { group, personId, from, to }: ParsedInput<'audit.list'>) {
  const kinds = group === 'refused' ? [] : kindsOf(group);
  const first = from === null ? null : startOfDay(from, timeZone);
  const end = to === null ? null : endOfDay(to, timeZone);
  const events = db
    .selectFrom('event')
    .select(['event.id', 'event.recorded_at as at', sql<'event' | 'refusal'>`'event'`.as('source')])
    .where('event.kind', 'in', kinds.length === 0 ? ['register created'] : kinds)
    .$if(kinds.length === 0, (query) => query.where(sql<boolean>`0`))
    .where((eb) =>
      eb.or([
        eb('event.kind', '<>', 'setting issued'),
        eb.exists(
          eb
            .selectFrom('setting_override')
            .select('code')
            .whereRef('setting_override.setting_id', '=', 'event.id'),
        ),
      ]),
    )
    .$if(first !== null, (query) => query.where('event.recorded_at', '>=', first ?? ''))
    .$if(end !== null, (query) => query.where('event.recorded_at', '<', end ?? ''))
    .$if(personId !== null, (query) =>
      query.where((eb) =>
        eb.or([
          eb.exists(
            eb
              .selectFrom('event_person')
              .select('event_id')
              .whereRef('event_person.event_id', '=', 'event.id')
              .where('event_person.person_id', '=', personId ?? ''),
          ),
          eb(sql<string>`event.body ->> '$.recordedBy'`, '=', personId ?? ''),
        ]),
      ),
    );
  const refusals = db
    .selectFrom('refusal')
    .select(['refusal.id', 'refusal.refused_at as at', sql<'event' | 'refusal'>`'refusal'`.as('source')])
    .$if(group !== null && group !== 'refused', (query) => query.where(sql<boolean>`0`))
    .$if(first !== null, (query) => query.where('refused_at', '>=', first ?? ''))
    .$if(end !== null, (query) => query.where('refused_at', '<', end ?? ''))
    .$if(personId !== null, (query) => query.where('person_id', '=', personId ?? ''));
  return db.selectFrom(events.unionAll(refusals).as('entry'));
}

async function eventRows(db: Db, ids: readonly string[]): Promise<Map<string, AuditRow>> {
  if (ids.length === 0) return new Map();
  const events = await db.selectFrom('event').select(['id', 'kind', 'body']).where('id', 'in', ids).execute();
  const bodies = events.map(({ id, kind, body }) => ({ id, kind, body: JSON.parse(body) as EventBody }));
  const people = await peopleOf(db, ids);
  const words = await auditWords(db, bodies);
  const recorders = await names(
    db,
    bodies.flatMap(({ body }) => body.recordedBy ?? []),
  );
  return new Map(
    bodies.flatMap(({ id, kind, body }) => {
      const group = GROUP_OF[kind];
      const told = words.get(id);
      if (group === undefined || told === undefined) return [];
      const who = body.recordedBy ? recorders.get(body.recordedBy) : people.get(id)?.join(', ');
      const row: AuditRow = {
        id,
        group,
        at: body.recordedAt,
        who: who ?? 'nobody signed in',
        eventId: id,
        jointId: null,
        ...told,
      };
      return [[id, row]];
    }),
  );
}

async function refusalRows(db: Db, ids: readonly string[]): Promise<Map<string, AuditRow>> {
  if (ids.length === 0) return new Map();
  const rows = await db
    .selectFrom('refusal')
    .leftJoin('person', 'person.id', 'refusal.person_id')
    .select(['refusal.id', 'refusal.body', 'person.name'])
    .where('refusal.id', 'in', ids)
    .execute();
  return new Map(
    rows.map(({ id, body, name }) => {
      const { refusedAt, refused } = JSON.parse(body) as RefusalBody;
      const claimed = refused.signedIn || name === null ? '' : ', by name only';
      const row: AuditRow = {
        id,
        group: 'refused',
        at: refusedAt,
        who: `${name ?? 'nobody signed in'}${claimed}`,
        what: refused.request,
        detail: refused.message,
        eventId: null,
        jointId: refused.jointId,
      };
      return [id, row];
    }),
  );
}

async function names(db: Db, ids: readonly string[]): Promise<Map<string, string>> {
  if (ids.length === 0) return new Map();
  const rows = await db.selectFrom('person').select(['id', 'name']).where('id', 'in', ids).execute();
  return new Map(rows.map(({ id, name }) => [id, name]));
}
