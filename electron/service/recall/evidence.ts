import type { Kysely } from 'kysely';
import type { CheckData } from '../../../core/contract/check.ts';
import type { CaseData } from '../../../core/contract/recall.ts';
import type { CertificateData } from '../../../core/contract/tool.ts';
import type { GoodEvidence, NamedMoment, WindowEvidence } from '../../../core/recall/window.ts';
import type { Site } from '../context.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { endOfDay, startOfDay, toUtc } from '../time.ts';
import { basisText, type FailingBasis, putRight } from './basis.ts';
import type { Subject } from './subject.ts';

type Db = Kysely<RegisterSchema>;

/** Everything that bounds the time in which the subject may have been wrong. */
export async function windowEvidence(
  db: Db,
  { timeZone }: Site,
  subject: Subject,
  basis: FailingBasis,
  data: Pick<CaseData, 'happenedAt' | 'since'>,
): Promise<WindowEvidence> {
  const opened = { at: toUtc(data.happenedAt), text: 'counted until the case was opened' };
  const since =
    data.since === null
      ? null
      : { at: startOfDay(data.since, timeZone), text: `first suspect day as entered: ${data.since}` };
  const failing = failingMoment(timeZone, basis, opened.at);
  if (subject.kind === 'batch') return { good: [], barred: [], failing, opened, since };
  const good = [
    ...(await goodCertificates(db, timeZone, subject.id, basis)),
    ...(await goodChecks(db, subject.id)),
  ];
  return { good, barred: await bars(db, subject.id, failing.at), failing, opened, since };
}

function failingMoment(timeZone: string, basis: FailingBasis, openedAt: string): WindowEvidence['failing'] {
  const text = basisText(basis);
  switch (basis.kind) {
    case 'certificate':
      return { at: lastMoment(basis.data.calibratedOn, timeZone), text, putRight: putRight(basis.data) };
    case 'check':
      return { at: toUtc(basis.happenedAt), text, putRight: false };
    case 'statement':
      return { at: openedAt, text, putRight: false };
  }
}

function lastMoment(date: string, timeZone: string): string {
  return new Date(Date.parse(endOfDay(date, timeZone)) - 1).toISOString();
}

/**
 * A tool that left the laboratory within its limits was right from then on. Where it had been adjusted, its uses before
 * are a matter of what was found then, not of a later failure.
 */
async function goodCertificates(
  db: Db,
  timeZone: string,
  toolId: string,
  basis: FailingBasis,
): Promise<GoodEvidence[]> {
  const rows = await db
    .selectFrom('event_tool')
    .innerJoin('certificate', 'certificate.id', 'event_tool.event_id')
    .innerJoin('tool', 'tool.id', 'certificate.tool_id')
    .select(['certificate.id', 'certificate.data', 'tool.number'])
    .where('event_tool.tool_id', '=', toolId)
    .where('event_tool.role', 'in', ['calibrated', 'calibrated with'])
    .where('certificate.result', '=', 'within limits')
    .execute();
  return rows.flatMap(({ id, data, number }) => {
    if (basis.kind === 'certificate' && id === basis.id) return [];
    const certificate = JSON.parse(data) as CertificateData;
    const { calibratedOn } = certificate;
    const how = putRight(certificate) ? 'adjusted and left within limits' : 'within limits';
    return [
      {
        first: startOfDay(calibratedOn, timeZone),
        last: lastMoment(calibratedOn, timeZone),
        text: `certificate ${certificate.number} of ${number}, ${how}, calibrated on ${calibratedOn}`,
      },
    ];
  });
}

/** Only a check that compares says something of torque or pressure; a gauge's zero counts as one. */
async function goodChecks(db: Db, toolId: string): Promise<GoodEvidence[]> {
  const rows = await db
    .selectFrom('tool_check')
    .select(['data', 'happened_at', 'happened_at_utc'])
    .where('tool_id', '=', toolId)
    .where('result', '=', 'passed')
    .execute();
  return rows.flatMap(({ data, happened_at: happenedAt, happened_at_utc: at }) => {
    const check = JSON.parse(data) as CheckData;
    if (check.comparisons.length === 0 && check.kind !== 'zero of the gauge') return [];
    return [{ first: at, last: at, text: `passed check (${check.kind}) of ${happenedAt.slice(0, 10)}` }];
  });
}

async function bars(db: Db, toolId: string, failedAt: string): Promise<NamedMoment[]> {
  const moves = await db
    .selectFrom('tool_move')
    .innerJoin('event', 'event.id', 'tool_move.event_id')
    .select(['tool_move.to_status as status', 'tool_move.happened_at', 'tool_move.happened_at_utc as at'])
    .where('tool_move.tool_id', '=', toolId)
    .orderBy('tool_move.happened_at_utc')
    .orderBy('event.sequence')
    .execute();
  const isBarred = (status: string | undefined) => status === 'quarantined' || status === 'scrapped';
  const standing = moves.findLast(({ at }) => at <= failedAt);
  return [
    ...(isBarred(standing?.status) ? [{ at: failedAt, text: 'barred by then' }] : []),
    ...moves
      .filter(({ status, at }) => isBarred(status) && at > failedAt)
      .map(({ happened_at: happenedAt, at }) => ({ at, text: `barred on ${happenedAt.slice(0, 10)}` })),
  ];
}
