import { isDeepStrictEqual } from 'node:util';
import type { AffectedEvent, CaseDetail, CaseSubject, RecallView } from '../../../core/contract/recall.ts';
import { freeze } from '../../../core/units/round.ts';
import { append } from '../chain/append.ts';
import type { ReadContext, WriteContext } from '../context.ts';
import { invalidField, notFound, RequestFailure } from '../failure.ts';
import { quarantineTools } from '../operations/custody.ts';
import { checkDistinct } from '../operations/distinct.ts';
import { saved } from '../operations/edit.ts';
import { checkNotLater, checkPerson } from '../operations/who-and-when.ts';
import { basisText } from '../recall/basis.ts';
import {
  casePage,
  caseSummary,
  closureOf,
  decisionsOf,
  findCase,
  nextCaseNumber,
  type StoredCase,
} from '../recall/cases.ts';
import { asClosed, recallOf, scopeOf } from '../recall/recall.ts';
import { batchPage } from '../repositories/batch.ts';
import type { Read, Write } from './handler.ts';

export const previewCase: Read<'case.preview'> = async (context, { data }) =>
  recallOf(context, await scopeOf(context, data));

/** Opens a case and bars the tool in one step; what it finds is worked out when it is read. */
export const openCase: Write<'case.open'> = async (context, { data }) => {
  checkNotLater(context, data.happenedAt);
  await checkPerson(context, 'data.personId', data.personId);
  const { subject, basis } = await scopeOf(context, data);
  await checkNotOpenAlready(context, data.subject, data.basis);
  const number = await nextCaseNumber(context.db);
  const id = context.newId();
  await append(context, [
    {
      kind: 'case opened',
      id,
      happenedAt: data.happenedAt,
      data: { number, subject: subject.name, basis: basisText(basis), data },
    },
  ]);
  if (data.quarantine && subject.kind === 'tool') {
    const reason = `case ${number}: ${basisText(basis)}`.slice(0, 500);
    await quarantineTools(context, {
      toolIds: [subject.id],
      personId: data.personId,
      reason,
      causeId: id,
    });
  }
  return saved(id, null);
};

/** One piece of evidence against a tool is one case; statements may differ in what they state. */
async function checkNotOpenAlready(
  { db }: WriteContext,
  subject: CaseSubject,
  basis: StoredCase['data']['basis'],
): Promise<void> {
  if (basis.kind === 'statement') return;
  const evidence = basis.kind === 'certificate' ? basis.certificateId : basis.checkId;
  const rows = await db
    .selectFrom('recall_case')
    .leftJoin('recall_closure', 'recall_closure.case_id', 'recall_case.id')
    .select(['recall_case.number', 'recall_case.data'])
    .where('recall_case.basis_event_id', '=', evidence)
    .where('recall_closure.id', 'is', null)
    .execute();
  const other = rows.find(({ data }) =>
    isDeepStrictEqual((JSON.parse(data) as StoredCase['data']).subject, subject),
  );
  if (other === undefined) return;
  throw new RequestFailure('duplicate', `Case ${other.number} is open on this evidence already`, [
    { field: 'data.basis', value: other.number, allowed: 'evidence that no open case rests on' },
  ]);
}

export const listCases: Read<'case.list'> = (context, input) => casePage(context, input);

export const getCase: Read<'case.get'> = async (context, { id }) => {
  const one = await findCase(context.db, id);
  if (one === null) throw notFound('case', 'id', id);
  const summary = await caseSummary(context, one);
  const { data, hash } = one;
  if (one.closed === null)
    return { summary, data, recall: await currentRecall(context, one), closed: null, hash };
  const { data: close, recall, person } = await closureOf(context.db, one.closed.id);
  const { happenedAt, conclusion, measures } = close;
  const since = await addedSince(context, one, recall);
  return { summary, data, recall, closed: { person, happenedAt, conclusion, measures, since }, hash };
};

async function currentRecall(
  context: Pick<ReadContext, 'db' | 'site'>,
  one: StoredCase,
): Promise<RecallView> {
  const decisions = await decisionsOf(context.db, one.id);
  return recallOf(
    context,
    await scopeOf(context, one.data),
    new Map([...decisions].map(([id, { personId: _, ...decision }]) => [id, decision])),
  );
}

/** Work that was recorded late and lies in the case's window: nobody has decided on it. */
async function addedSince(
  context: ReadContext,
  one: StoredCase,
  frozen: RecallView,
): Promise<NonNullable<CaseDetail['closed']>['since']> {
  const now = await recallOf(context, asClosed(await scopeOf(context, one.data), frozen));
  const known = new Set(frozen.affected.map(({ eventId }) => eventId));
  const added = now.affected.filter(({ eventId }) => !known.has(eventId));
  const others = new Set(frozen.otherUses.map(({ eventId }) => eventId));
  return [
    ...added.map(
      ({ tag, happenedAt, worst }) => `${tag}: tightening of ${happenedAt}, recorded later; ${worst}`,
    ),
    ...now.otherUses
      .filter(({ eventId }) => !others.has(eventId))
      .map(({ tag, happenedAt }) => `${tag}: breakout of ${happenedAt}, recorded later`),
  ];
}

export const decideCase: Write<'case.decide'> = async (context, { data }) => {
  checkNotLater(context, data.happenedAt);
  checkDistinct('data.eventIds', data.eventIds);
  await checkPerson(context, 'data.personId', data.personId);
  const one = await openCaseNamed(context, data.caseId);
  const { affected } = await currentRecall(context, one);
  data.eventIds.forEach((eventId, index) => {
    if (affected.some((event) => event.eventId === eventId)) return;
    throw invalidField(`data.eventIds.${index}`, eventId, `a tightening that case ${one.number} lists`);
  });
  const id = context.newId();
  await append(context, [{ kind: 'case decided', id, happenedAt: data.happenedAt, data: { data } }]);
  return saved(id, null);
};

async function openCaseNamed({ db }: WriteContext, caseId: string): Promise<StoredCase> {
  const one = await findCase(db, caseId);
  if (one === null) throw notFound('case', 'data.caseId', caseId);
  if (one.closed === null) return one;
  throw new RequestFailure(
    'refused',
    `Case ${one.number} is closed; what came up since needs a case of its own`,
    [{ field: 'data.caseId', value: one.number, allowed: 'an open case' }],
  );
}

/** Closes a case once each load that is still there is decided on, by somebody who did not decide alone. */
export const closeCase: Write<'case.close'> = async (context, { data }) => {
  checkNotLater(context, data.happenedAt);
  await checkPerson(context, 'data.personId', data.personId);
  const one = await openCaseNamed(context, data.caseId);
  const recall = await currentRecall(context, one);
  const undecided = recall.affected.filter(needsDecision);
  if (undecided.length > 0) {
    throw new RequestFailure(
      'refused',
      `Case ${one.number} can not be closed: ${undecided.length} of its records need a decision`,
      undecided.map(({ tag, happenedAt, worst }) => ({
        field: 'data.caseId',
        value: `${tag}, ${happenedAt}`,
        allowed: `a decision: its load is ${worst}`,
      })),
    );
  }
  const deciders = new Set(
    [...(await decisionsOf(context.db, one.id)).values()].map(({ personId }) => personId),
  );
  if (deciders.size === 1 && deciders.has(data.personId)) {
    throw new RequestFailure('refused', 'Nobody approves what they alone decided', [
      {
        field: 'data.personId',
        value: data.personId,
        allowed: 'a person other than the one who made every decision',
      },
    ]);
  }
  const id = context.newId();
  await append(context, [
    { kind: 'case closed', id, happenedAt: data.happenedAt, data: { data, recall: freeze(recall) } },
  ]);
  return saved(id, null);
};

function needsDecision({ worst, redoneAt, decision }: AffectedEvent): boolean {
  return worst !== 'kept' && redoneAt === null && decision === null;
}

export const listBatches: Read<'batch.list'> = ({ db }, input) => batchPage(db, input);
