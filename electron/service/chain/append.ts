import { canonicalText } from '../../../core/audit/canonical.ts';
import { eventHash, NO_PREVIOUS } from '../../../core/audit/chain.ts';
import type { WriteContext } from '../context.ts';
import { insertRows } from '../register/insert.ts';
import { atSite, toUtc } from '../time.ts';
import { BODY_VERSION, type EventBody, type EventDraft, type RecordedEvent } from './events.ts';
import { project } from './project.ts';
import { sha256 } from './sha256.ts';

/** Records events at the end of this origin's chain and brings the columns up to date with them. */
export async function append(
  context: WriteContext,
  drafts: readonly EventDraft[],
): Promise<readonly RecordedEvent[]> {
  const { db, originId, clock, site, actor } = context;
  const now = clock();
  const last = await db
    .selectFrom('event')
    .select(['sequence', 'hash'])
    .where('origin_id', '=', originId)
    .orderBy('sequence', 'desc')
    .limit(1)
    .executeTakeFirst();
  let sequence = last?.sequence ?? 0;
  let previousHash = last?.hash ?? NO_PREVIOUS;
  const recordedNow = atSite(now, site.timeZone);
  const events = drafts.map((draft) => {
    sequence += 1;
    const body: EventBody = {
      bodyVersion: BODY_VERSION,
      id: draft.id,
      kind: draft.kind,
      originId,
      sequence,
      happenedAt: draft.happenedAt ?? recordedNow,
      recordedAt: now.toISOString(),
      recordedBy: actor?.personId ?? null,
      supersedes: draft.supersedes ?? null,
      data: draft.data,
    };
    const event = recordedEvent(canonicalText(body), previousHash);
    previousHash = event.hash;
    return event;
  });
  await insertRows(db, 'event', events.map(eventRow));
  await project(db, events);
  return events;
}

/** Reads an event back from its verbatim text: the text is the record, the columns follow from it. */
export function recordedEvent(body: string, previousHash: string): RecordedEvent {
  const { id, originId, sequence, kind, happenedAt, recordedAt, supersedes, data } = JSON.parse(
    body,
  ) as EventBody;
  return {
    id,
    originId,
    sequence,
    previousHash,
    hash: eventHash(sha256, previousHash, body),
    body,
    kind,
    happenedAt,
    happenedAtUtc: toUtc(happenedAt),
    recordedAt,
    supersedes,
    data,
  };
}

function eventRow(event: RecordedEvent) {
  return {
    id: event.id,
    origin_id: event.originId,
    sequence: event.sequence,
    previous_hash: event.previousHash,
    hash: event.hash,
    body: event.body,
    body_version: BODY_VERSION,
    kind: event.kind,
    happened_at: event.happenedAt,
    happened_at_utc: event.happenedAtUtc,
    recorded_at: event.recordedAt,
    supersedes: event.supersedes,
  };
}
