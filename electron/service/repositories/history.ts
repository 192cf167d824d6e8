import type { Kysely } from 'kysely';
import type { HistoryRow } from '../../../core/contract/joint.ts';
import { MEANING_SHORT } from '../../../core/text/signature.ts';
import type { EventBody, EventDataByKind, EventKind } from '../chain/events.ts';
import { stepSummary } from '../operations/step-summary.ts';
import { breakoutSummary, passSummary, tighteningSummary } from '../operations/summary.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { decisionsOnJoint } from './joint-decisions.ts';

const SHOWN_AS: Partial<Record<EventKind, HistoryRow['kind']>> = {
  'tightening recorded': 'tightening',
  'breakout recorded': 'breakout',
  'pass recorded': 'pass',
  'joint saved': 'joint saved',
  'setting issued': 'setting issued',
  'case decided': 'case decided',
  'attachment added': 'file added',
  'joint stepped': 'step',
  'deviation decided': 'deviation decided',
  'cycles counted': 'cycles counted',
  'record signed': 'signed',
};

interface Page {
  readonly id: string;
  readonly page: number;
  readonly pageSize: number;
}

export async function historyPage(
  db: Kysely<RegisterSchema>,
  { id, page, pageSize }: Page,
): Promise<{ rows: HistoryRow[]; total: number }> {
  const { total } = await db
    .selectFrom('event_joint')
    .select(({ fn }) => fn.countAll<number>().as('total'))
    .where('joint_id', '=', id)
    .executeTakeFirstOrThrow();
  const events = await db
    .selectFrom('event_joint')
    .innerJoin('event', 'event.id', 'event_joint.event_id')
    .select(['event.id', 'sequence', 'kind', 'happened_at', 'recorded_at', 'body'])
    .where('event_joint.joint_id', '=', id)
    .orderBy('happened_at_utc', 'desc')
    .orderBy('sequence', 'desc')
    .limit(pageSize)
    .offset((page - 1) * pageSize)
    .execute();
  const people = await peopleOf(
    db,
    events.map((event) => event.id),
  );
  const decisions = await decisionsOnJoint(
    db,
    id,
    events.flatMap((event) => (event.kind === 'case decided' ? [event.id] : [])),
  );
  const rows = events.flatMap((event): HistoryRow[] => {
    const kind = SHOWN_AS[event.kind];
    if (kind === undefined) return [];
    const { data } = JSON.parse(event.body) as EventBody;
    const row = kind === 'case decided' ? decisions.get(event.id) : told(event.id, kind, data);
    if (row === undefined) return [];
    return [
      {
        eventId: event.id,
        sequence: event.sequence,
        kind,
        happenedAt: event.happened_at,
        recordedAt: event.recorded_at,
        by: people.get(event.id)?.join(', ') ?? 'not recorded',
        ...row,
      },
    ];
  });
  return { rows, total };
}

type Told = Pick<HistoryRow, 'summary' | 'flags' | 'settingId' | 'caseId' | 'signedId'>;

function told(
  eventId: string,
  kind: Exclude<HistoryRow['kind'], 'case decided'>,
  data: EventBody['data'],
): Told {
  const none = { flags: [], settingId: null, caseId: null, signedId: null };
  switch (kind) {
    case 'tightening': {
      const work = data as EventDataByKind['tightening recorded'];
      return {
        ...none,
        summary: tighteningSummary(work),
        flags: [...work.flags],
        settingId: work.data.settingId,
      };
    }
    case 'breakout': {
      const work = data as EventDataByKind['breakout recorded'];
      return {
        ...none,
        summary: breakoutSummary(work),
        flags: [...work.flags],
        settingId: work.data.settingId,
      };
    }
    case 'pass': {
      const work = data as EventDataByKind['pass recorded'];
      return {
        ...none,
        summary: passSummary(work),
        flags: [...work.flags],
        settingId: work.data.settingId,
      };
    }
    case 'setting issued': {
      const { number, input, overrides = [] } = data as EventDataByKind['setting issued'];
      const flags = overrides.map(({ code, findings, reason }) => {
        const titles = findings.map(({ title }) => title);
        return `Refusal set aside: ${titles.length === 0 ? code : titles.join('; ')}. Reason: ${reason}`;
      });
      return { ...none, summary: `${number} for ${input.kind}`, flags, settingId: eventId };
    }
    case 'file added': {
      const { name, remarks } = data as EventDataByKind['attachment added'];
      return { ...none, summary: remarks === '' ? name : `${name}: ${remarks}` };
    }
    case 'step': {
      const stepped = data as EventDataByKind['joint stepped'];
      const flags = stepped.outOfOrder.map((reason) => `out of order: ${reason}`);
      return { ...none, summary: stepSummary(stepped), flags };
    }
    case 'cycles counted': {
      const { cycles, from, until, basis } = (data as EventDataByKind['cycles counted']).data;
      return { ...none, summary: `${cycles} thermal cycles from ${from} to ${until}: ${basis}` };
    }
    case 'deviation decided': {
      const { decision, reason } = (data as EventDataByKind['deviation decided']).data;
      return { ...none, summary: `${decision}: ${reason}` };
    }
    case 'signed': {
      const { kind: signed, meaning, knownBy, eventId: signedId } = data as EventDataByKind['record signed'];
      const claim = knownBy === 'name' ? ', signed without sign-in' : '';
      return { ...none, summary: `${signed}: ${MEANING_SHORT[meaning]}${claim}`, signedId };
    }
    case 'joint saved': {
      const { version, importId } = data as EventDataByKind['joint saved'];
      const how = importId === null ? '' : ', imported';
      return { ...none, summary: `Version ${version}${how}` };
    }
  }
}

/** Names of the people who had a part in each event, in the order they were given. */
export async function peopleOf(
  db: Kysely<RegisterSchema>,
  eventIds: readonly string[],
): Promise<Map<string, string[]>> {
  const names = new Map<string, string[]>();
  if (eventIds.length === 0) return names;
  const rows = await db
    .selectFrom('event_person')
    .innerJoin('person', 'person.id', 'event_person.person_id')
    .select(['event_person.event_id', 'person.name'])
    .where('event_person.event_id', 'in', [...eventIds])
    .orderBy('event_person.event_id')
    .orderBy('event_person.position')
    .execute();
  for (const { event_id: eventId, name } of rows) {
    const known = names.get(eventId) ?? [];
    // Somebody may have had several parts in one event.
    if (!known.includes(name)) names.set(eventId, [...known, name]);
  }
  return names;
}
