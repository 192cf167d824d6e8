import type { Kysely } from 'kysely';
import type { AffectedEvent, CaseData, RecallView, SuspectWindow } from '../../../core/contract/recall.ts';
import { affectedLoad } from '../../../core/recall/affected.ts';
import { worstFirst } from '../../../core/recall/order.ts';
import { suspectWindow } from '../../../core/recall/window.ts';
import type { Site } from '../context.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { atSite, toUtc } from '../time.ts';
import { basisOf, basisText, type FailingBasis } from './basis.ts';
import { windowEvidence } from './evidence.ts';
import { type Later, laterWork } from './redone.ts';
import { type Subject, subjectOf } from './subject.ts';
import { type Bounds, batchUses, breakoutsOfSubject, type UseRow, usesOfSubject } from './uses.ts';
import { type RecordedUse, recordedUses } from './work.ts';

type Db = Kysely<RegisterSchema>;
type Place = { readonly db: Db; readonly site: Site };
type Decision = AffectedEvent['decision'];

/** What bounds a case, read anew each time: evidence that is entered late counts as if it had been there. */
export interface CaseScope {
  readonly subject: Subject;
  readonly basis: FailingBasis;
  readonly window: SuspectWindow;
  /** The window in UTC, to the millisecond. */
  readonly bounds: Bounds;
}

export async function scopeOf({ db, site }: Place, data: CaseData): Promise<CaseScope> {
  const subject = await subjectOf(db, data.subject);
  const basis = await basisOf(db, subject, data.basis);
  const { from, fromBasis, to, toBasis } = suspectWindow(
    await windowEvidence(db, site, subject, basis, data),
  );
  const shown = (utc: string) => atSite(new Date(utc), site.timeZone);
  return {
    subject,
    basis,
    window: { from: from === null ? null : shown(from), fromBasis, to: shown(to), toBasis },
    bounds: { from, to },
  };
}

/** The same case within the window it was closed with: evidence that came later does not move that. */
export function asClosed(scope: CaseScope, { window }: RecallView): CaseScope {
  const { from, to } = window;
  return { ...scope, window, bounds: { from: from === null ? null : toUtc(from), to: toUtc(to) } };
}

/** Everything a case finds, worst first. `decisions` are those in force, by tightening. */
export async function recallOf(
  place: Place,
  scope: CaseScope,
  decisions: ReadonlyMap<string, Decision> = new Map(),
): Promise<RecallView> {
  const { subject, basis, window, bounds } = scope;
  const rows = await usesOfSubject(place.db, subject, bounds);
  const affected = await affectedEvents(place, scope, rows, rows, decisions);
  const breakouts = await breakoutsOfSubject(place.db, subject, bounds);
  return {
    subject: subject.name,
    basis: basisText(basis),
    window,
    affected: worstFirst(affected),
    otherUses: breakouts.map((row) => ({
      ...row,
      what: 'breakout: what was read on it was read with the suspect',
    })),
  };
}

/** One record as the case sees it; null when the case does not reach it. */
export async function affectedRecord(
  place: Place,
  scope: CaseScope,
  { eventId, jointId }: { readonly eventId: string; readonly jointId: string },
): Promise<AffectedEvent | null> {
  const rows = await usesOfSubject(place.db, scope.subject, scope.bounds, jointId);
  const own = rows.filter((row) => row.eventId === eventId);
  const [affected] = await affectedEvents(place, scope, rows, own, new Map());
  return affected ?? null;
}

async function affectedEvents(
  { db, site }: Place,
  { subject, basis }: CaseScope,
  all: readonly UseRow[],
  wanted: readonly UseRow[],
  decisions: ReadonlyMap<string, Decision>,
): Promise<AffectedEvent[]> {
  if (wanted.length === 0) return [];
  const uses = await recordedUses(db, site, subject, basis, wanted);
  const later = await laterWork(
    db,
    uses.map(({ row, boltSet, studs }) => ({ ...row, boltSet, studs })),
    await suspectTightenings(db, subject, all),
  );
  return uses.map((one) =>
    affectedEvent(one, later.get(one.row.eventId), decisions.get(one.row.eventId) ?? null),
  );
}

/** A batch stays wrong after the case was opened; a tool is right again or barred. */
async function suspectTightenings(
  db: Db,
  subject: Subject,
  all: readonly UseRow[],
): Promise<ReadonlySet<string>> {
  const rows =
    subject.kind === 'tool'
      ? all
      : await batchUses(db, subject.id, { from: null, to: END_OF_TIME }).execute();
  return new Set(rows.map(({ eventId }) => eventId));
}

const END_OF_TIME = toUtc('9999-12-31T00:00:00Z');

function affectedEvent(
  { row, use }: RecordedUse,
  later: Later | undefined,
  decision: Decision,
): AffectedEvent {
  const load = affectedLoad(use);
  const { eventId, jointId, tag, happenedAt, role, dialled } = row;
  return {
    eventId,
    jointId,
    tag,
    happenedAt,
    role,
    pressure: dialled,
    ...load,
    limits: [...load.limits],
    basis: [load.basis, ...(later?.partly ?? [])].join('; '),
    redoneAt: later?.at ?? null,
    decision,
  };
}
