import { type Kysely, sql } from 'kysely';
import type {
  AffectedEvent,
  CaseData,
  CaseSummary,
  CloseData,
  RecallView,
} from '../../../core/contract/recall.ts';
import type { EventBody, EventDataByKind } from '../chain/events.ts';
import type { Site } from '../context.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { scopeOf } from './recall.ts';
import { countUses } from './uses.ts';

type Db = Kysely<RegisterSchema>;
type Place = { readonly db: Db; readonly site: Site };

/** A case as the register's columns hold it. */
export interface StoredCase {
  readonly id: string;
  readonly number: string;
  readonly openedAt: string;
  readonly openedBy: string;
  readonly subject: string;
  readonly basis: string;
  readonly toolId: string | null;
  readonly hash: string;
  readonly data: CaseData;
  /** Counts as they stood on closing; null while it is open. */
  readonly closed: { readonly id: string; readonly affected: number; readonly decided: number } | null;
}

function caseQuery(db: Db) {
  return db
    .selectFrom('recall_case')
    .innerJoin('event', 'event.id', 'recall_case.id')
    .innerJoin('person', 'person.id', 'recall_case.person_id')
    .leftJoin('recall_closure', 'recall_closure.case_id', 'recall_case.id')
    .select([
      'recall_case.id',
      'recall_case.number',
      'recall_case.happened_at as openedAt',
      'person.name as openedBy',
      'recall_case.subject',
      'recall_case.basis',
      'recall_case.tool_id as toolId',
      'event.hash',
      'recall_case.data',
      'recall_closure.id as closedId',
      'recall_closure.affected',
      'recall_closure.decided',
    ]);
}

type CaseRow = Awaited<ReturnType<ReturnType<typeof caseQuery>['executeTakeFirstOrThrow']>>;

function stored({ data, closedId, affected, decided, ...row }: CaseRow): StoredCase {
  return {
    ...row,
    data: JSON.parse(data) as CaseData,
    closed: closedId === null ? null : { id: closedId, affected: affected ?? 0, decided: decided ?? 0 },
  };
}

export async function findCase(db: Db, id: string): Promise<StoredCase | null> {
  const row = await caseQuery(db).where('recall_case.id', '=', id).executeTakeFirst();
  return row ? stored(row) : null;
}

export async function casesOfTool(db: Db, toolId: string): Promise<StoredCase[]> {
  const rows = await caseQuery(db)
    .where('recall_case.tool_id', '=', toolId)
    .orderBy('recall_case.happened_at_utc', 'desc')
    .orderBy('recall_case.number', 'desc')
    .execute();
  return rows.map(stored);
}

/** Cases about a tool or a batch that had a part in a record, oldest first. */
export async function casesTouching(db: Db, eventId: string): Promise<StoredCase[]> {
  const rows = await caseQuery(db)
    .where(({ eb, or, selectFrom }) =>
      or([
        eb(
          'recall_case.tool_id',
          'in',
          selectFrom('event_tool').select('tool_id').where('event_id', '=', eventId),
        ),
        eb(
          'recall_case.batch_id',
          'in',
          selectFrom('event_batch').select('batch_id').where('event_id', '=', eventId),
        ),
      ]),
    )
    .orderBy('recall_case.number')
    .execute();
  return rows.map(stored);
}

interface CasePage {
  readonly state: CaseSummary['state'] | null;
  readonly page: number;
  readonly pageSize: number;
}

/** Newest first. */
export async function casePage(
  place: Place,
  { state, page, pageSize }: CasePage,
): Promise<{ rows: CaseSummary[]; total: number }> {
  const { db } = place;
  const closed = state === null ? null : state === 'closed';
  const { total } = await db
    .selectFrom('recall_case')
    .leftJoin('recall_closure', 'recall_closure.case_id', 'recall_case.id')
    .select(({ fn }) => fn.countAll<number>().as('total'))
    .$if(closed !== null, (query) =>
      query.where('recall_closure.id', closed === true ? 'is not' : 'is', null),
    )
    .executeTakeFirstOrThrow();
  const rows = await caseQuery(db)
    .$if(closed !== null, (query) =>
      query.where('recall_closure.id', closed === true ? 'is not' : 'is', null),
    )
    .orderBy('recall_case.happened_at_utc', 'desc')
    .orderBy('recall_case.number', 'desc')
    .limit(pageSize)
    .offset((page - 1) * pageSize)
    .execute();
  const summaries: CaseSummary[] = [];
  for (const row of rows) summaries.push(await caseSummary(place, stored(row)));
  return { rows: summaries, total };
}

export async function caseSummary(place: Place, one: StoredCase): Promise<CaseSummary> {
  const { id, number, openedAt, openedBy, subject, basis, toolId, closed } = one;
  return {
    id,
    number,
    openedAt,
    openedBy,
    subject,
    toolId,
    basis,
    state: closed === null ? 'open' : 'closed',
    ...(closed === null
      ? await countsOf(place, one)
      : { affected: closed.affected, decided: closed.decided }),
  };
}

async function countsOf(place: Place, { id, data }: StoredCase) {
  const { subject, bounds } = await scopeOf(place, data);
  const affected = await countUses(place.db, subject, bounds);
  const { decided } = await place.db
    .selectFrom('recall_decision')
    .innerJoin('tightening', 'tightening.id', 'recall_decision.tightening_id')
    .select(({ fn }) => fn.count<number>('tightening.id').distinct().as('decided'))
    .where('recall_decision.case_id', '=', id)
    // A good check that came later may have taken decided records out of the window.
    .where('tightening.happened_at_utc', '<=', bounds.to)
    .$if(bounds.from !== null, (query) => query.where('tightening.happened_at_utc', '>=', bounds.from ?? ''))
    .executeTakeFirstOrThrow();
  return { affected, decided };
}

type Decision = NonNullable<AffectedEvent['decision']> & { readonly personId: string };

/** Decisions in force, by tightening: the one recorded last counts, the earlier ones stay in the log. */
export async function decisionsOf(db: Db, caseId: string): Promise<Map<string, Decision>> {
  const rows = await db
    .selectFrom('recall_decision')
    .innerJoin('event', 'event.id', 'recall_decision.event_id')
    .innerJoin('person', 'person.id', 'recall_decision.person_id')
    .select([
      'recall_decision.tightening_id as tighteningId',
      'recall_decision.decision',
      'recall_decision.reason',
      'person.name as person',
      'recall_decision.person_id as personId',
      'recall_decision.happened_at as happenedAt',
    ])
    .where('recall_decision.case_id', '=', caseId)
    .orderBy('event.recorded_at')
    .orderBy('event.sequence')
    .execute();
  return new Map(rows.map(({ tighteningId, ...decision }) => [tighteningId, decision]));
}

/** What was frozen on closing. */
export async function closureOf(
  db: Db,
  closureId: string,
): Promise<{ readonly data: CloseData; readonly recall: RecallView; readonly person: string }> {
  const row = await db
    .selectFrom('recall_closure')
    .innerJoin('event', 'event.id', 'recall_closure.id')
    .innerJoin('person', 'person.id', 'recall_closure.person_id')
    .select(['event.body', 'person.name as person'])
    .where('recall_closure.id', '=', closureId)
    .executeTakeFirstOrThrow();
  const { data, recall } = (JSON.parse(row.body) as EventBody).data as EventDataByKind['case closed'];
  return { data, recall, person: row.person };
}

/** Numbers run on over the whole register: OT-0001, OT-0002, … */
export async function nextCaseNumber(db: Db): Promise<string> {
  const { last } = await db
    .selectFrom('recall_case')
    .select(sql<number | null>`max(cast(substr(number, 4) as integer))`.as('last'))
    .executeTakeFirstOrThrow();
  return `OT-${String((last ?? 0) + 1).padStart(4, '0')}`;
}
