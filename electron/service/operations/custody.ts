import type { CustodyStep, MoveData } from '../../../core/contract/custody.ts';
import type { FieldFault } from '../../../core/contract/errors.ts';
import type { ToolData } from '../../../core/contract/tool.ts';
import { custodyAfter } from '../../../core/tools/custody.ts';
import { append } from '../chain/append.ts';
import type { EventDraft, StatusChange } from '../chain/events.ts';
import type { WriteContext } from '../context.ts';
import { invalidField, notFound, RequestFailure } from '../failure.ts';
import { newestMoves, openKitsWith } from '../repositories/custody.ts';
import { openCases } from '../repositories/open-cases.ts';
import { atSite, dateAtSite, toUtc } from '../time.ts';
import { checkDistinct } from './distinct.ts';
import { checkNotLater, checkPerson } from './who-and-when.ts';

/** Moves tools one step of custody, all of them or none; a refusal names each tool that stands against it. */
export async function moveTools(context: WriteContext, data: MoveData): Promise<string> {
  await checkMove(context, data);
  const tools = await toolsOf(context, data.toolIds);
  const obstacles = await obstaclesOf(context, data);
  const moves: StatusChange[] = [];
  const faults: FieldFault[] = [];
  tools.forEach(({ id, number, status }, index) => {
    const after = custodyAfter(status, data.step);
    const against = [...('refused' in after ? [after.refused] : []), ...(obstacles.get(id) ?? [])];
    if ('status' in after) moves.push({ toolId: id, from: status, to: after.status });
    for (const allowed of against) faults.push({ field: `data.toolIds.${index}`, value: number, allowed });
  });
  if (faults.length > 0) throw cannotMove(data.step, faults, tools.length);
  const id = context.newId();
  const drafts: EventDraft[] = [
    { kind: 'tool moved', id, happenedAt: data.happenedAt, data: { data, moves, causeId: null } },
  ];
  if (data.step === 'return' && data.condition !== null && data.condition !== 'good') {
    const reason = data.reason === '' ? '' : `: ${data.reason}`;
    drafts.push(
      barring(context, {
        changes: moves.map(({ toolId, to }) => ({ toolId, from: to, to: 'quarantined' })),
        happenedAt: data.happenedAt,
        personId: data.personId,
        reason: `returned ${data.condition}${reason}`.slice(0, 500),
        causeId: id,
      }),
    );
  }
  await append(context, drafts);
  return id;
}

interface Barring {
  readonly toolIds: readonly string[];
  readonly personId: string;
  readonly reason: string;
  /** Event that leads to it. */
  readonly causeId: string;
}

/** Bars tools at the moment of recording; answers which of them were not barred or scrapped already. */
export async function quarantineTools(
  context: WriteContext,
  { toolIds, personId, reason, causeId }: Barring,
): Promise<readonly string[]> {
  const changes = (await toolsOf(context, toolIds)).flatMap(({ id, status }): StatusChange[] =>
    status === 'quarantined' || status === 'scrapped'
      ? []
      : [{ toolId: id, from: status, to: 'quarantined' }],
  );
  if (changes.length === 0) return [];
  const happenedAt = atSite(context.clock(), context.site.timeZone);
  await append(context, [barring(context, { changes, happenedAt, personId, reason, causeId })]);
  return changes.map(({ toolId }) => toolId);
}

function barring(
  { newId }: WriteContext,
  change: {
    readonly changes: readonly StatusChange[];
    readonly happenedAt: string;
    readonly personId: string;
    readonly reason: string;
    readonly causeId: string;
  },
): EventDraft {
  const { changes, happenedAt, personId, reason, causeId } = change;
  const data: MoveData = {
    toolIds: changes.map(({ toolId }) => toolId),
    step: 'quarantine',
    happenedAt,
    personId,
    holderId: null,
    condition: null,
    place: '',
    reference: '',
    kitId: null,
    reason,
  };
  return { kind: 'tool moved', id: newId(), happenedAt, data: { data, moves: changes, causeId } };
}

const WITH_REASON: readonly CustodyStep[] = ['quarantine', 'release from quarantine', 'scrap'];

async function checkMove(context: WriteContext, data: MoveData): Promise<void> {
  const { step, holderId, condition, kitId, reason } = data;
  checkNotLater(context, data.happenedAt);
  checkDistinct('data.toolIds', data.toolIds);
  await checkPerson(context, 'data.personId', data.personId);
  if (step === 'issue' && holderId === null) {
    throw invalidField('data.holderId', '', 'needed to issue: who takes it');
  }
  if (step !== 'issue' && holderId !== null) {
    throw invalidField('data.holderId', holderId, `none for "${step}": only an issued tool has a holder`);
  }
  if (holderId !== null) await checkPerson(context, 'data.holderId', holderId);
  if (step === 'return' && condition === null) {
    throw invalidField('data.condition', '', 'needed on return: good, to be looked at or damaged');
  }
  if (step !== 'return' && condition !== null) {
    throw invalidField('data.condition', condition, `none for "${step}": the condition is told on return`);
  }
  if (WITH_REASON.includes(step) && reason === '') {
    throw invalidField('data.reason', '', `needed for "${step}"`);
  }
  if (kitId === null) return;
  if (step !== 'issue') throw invalidField('data.kitId', kitId, `none for "${step}": a kit is for issuing`);
  const kit = await context.db
    .selectFrom('kit')
    .select(['name', 'closed'])
    .where('id', '=', kitId)
    .executeTakeFirst();
  if (!kit) throw notFound('kit', 'data.kitId', kitId);
  if (kit.closed === 1) throw invalidField('data.kitId', kit.name, 'a kit that is not closed');
}

interface ToolToMove {
  readonly id: string;
  readonly number: string;
  readonly status: ToolData['status'];
}

/** In the order they were named. */
async function toolsOf({ db }: WriteContext, toolIds: readonly string[]): Promise<ToolToMove[]> {
  const rows = await db
    .selectFrom('tool')
    .select(['id', 'number', 'status'])
    .where('id', 'in', [...toolIds])
    .execute();
  return toolIds.map((id, index) => {
    const row = rows.find((tool) => tool.id === id);
    if (row === undefined) throw notFound('tool', `data.toolIds.${index}`, id);
    return row;
  });
}

/** What stands against the step beside the tool's status, by tool. */
async function obstaclesOf(context: WriteContext, data: MoveData): Promise<Map<string, string[]>> {
  const { db, site } = context;
  const obstacles = new Map<string, string[]>();
  const add = (toolId: string, text: string) =>
    obstacles.set(toolId, [...(obstacles.get(toolId) ?? []), text]);
  const moment = toUtc(data.happenedAt);
  for (const { toolId, happenedAt, happenedAtUtc } of await newestMoves(db, data.toolIds)) {
    if (happenedAtUtc > moment)
      add(toolId, `it was moved later, at ${happenedAt}: moves are entered in their order`);
  }
  if (data.step === 'release from quarantine') {
    for (const [toolId, cases] of await openCases(db, data.toolIds)) {
      for (const { number } of cases) add(toolId, `case ${number} is open; close it first`);
    }
  }
  if (data.step === 'issue') {
    const day = dateAtSite(data.happenedAt, site.timeZone);
    for (const kit of await openKitsWith(db, data.toolIds)) {
      if (kit.id === data.kitId || day < kit.from || day > kit.to) continue;
      add(
        kit.toolId,
        `kit "${kit.name}" holds it from ${kit.from} to ${kit.to}; issue it with that kit, or take it out of the kit`,
      );
    }
  }
  return obstacles;
}

function cannotMove(step: CustodyStep, faults: readonly FieldFault[], asked: number): RequestFailure {
  const tools = new Set(faults.map(({ value }) => value)).size;
  const [first] = faults;
  const one = first === undefined ? '' : `${first.value}: ${first.allowed}`;
  const rest = tools > 1 ? ` (and ${tools - 1} more)` : '';
  const none = asked > 1 ? '; nothing was moved' : '';
  return new RequestFailure('refused', `Can not ${step}. ${one}${rest}${none}`, faults);
}
