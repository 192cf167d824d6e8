import type { Kysely } from 'kysely';
import type { CheckData } from '../../../core/contract/check.ts';
import type { CaseBasis } from '../../../core/contract/recall.ts';
import type { CertificateData } from '../../../core/contract/tool.ts';
import { showEntered, showNumber } from '../../../core/text/number.ts';
import { invalidField, notFound } from '../failure.ts';
import type { RegisterSchema } from '../register/schema.ts';
import type { Subject } from './subject.ts';

type Statement = Extract<CaseBasis, { kind: 'statement' }>;

/** What says that the subject was wrong, as the register holds it. `toolNumber` names the tool a certificate hangs on. */
export type FailingBasis =
  | {
      readonly kind: 'certificate';
      readonly id: string;
      readonly data: CertificateData;
      readonly toolNumber: string;
    }
  | { readonly kind: 'check'; readonly id: string; readonly data: CheckData; readonly happenedAt: string }
  | Statement;

/** Reads the evidence a case rests on and makes sure that it speaks of the subject and says that something was wrong. */
export async function basisOf(
  db: Kysely<RegisterSchema>,
  subject: Subject,
  basis: CaseBasis,
): Promise<FailingBasis> {
  if (basis.kind === 'statement') {
    if (basis.nutFactor !== null && !(subject.kind === 'batch' && subject.batch === 'lubricant')) {
      throw invalidField(
        'data.basis.nutFactor',
        showEntered(basis.nutFactor),
        'a nut factor only for a batch of lubricant',
      );
    }
    return basis;
  }
  if (subject.kind === 'batch') {
    throw invalidField('data.basis.kind', basis.kind, 'a statement: a batch has no certificate or check');
  }
  return basis.kind === 'certificate'
    ? failedCertificate(db, subject, basis.certificateId)
    : failedCheck(db, subject, basis.checkId);
}

async function failedCertificate(
  db: Kysely<RegisterSchema>,
  subject: Subject,
  id: string,
): Promise<FailingBasis> {
  const row = await db
    .selectFrom('certificate')
    .innerJoin('tool', 'tool.id', 'certificate.tool_id')
    .select(['certificate.data', 'tool.number'])
    .where('certificate.id', '=', id)
    .executeTakeFirst();
  if (!row) throw notFound('certificate', 'data.basis.certificateId', id);
  const data = JSON.parse(row.data) as CertificateData;
  if (data.toolId !== subject.id && !data.withToolIds.includes(subject.id)) {
    throw invalidField('data.basis.certificateId', data.number, `a certificate that names ${subject.name}`);
  }
  if (data.result === 'within limits' && foundOf(data) === null) {
    throw invalidField(
      'data.basis.certificateId',
      data.number,
      'a certificate with points as found, or one outside its limits; this one says that all is within limits',
    );
  }
  return { kind: 'certificate', id, data, toolNumber: row.number };
}

/** Points before an adjustment; null where nothing was adjusted. Certificates recorded before it was kept have none. */
function foundOf({ asFound }: { readonly asFound?: CertificateData['asFound'] }): CertificateData['asFound'] {
  return asFound ?? null;
}

/** What the tool did when it came to the laboratory. */
export function measuredAsFound(data: CertificateData): CertificateData['measured'] {
  return foundOf(data) ?? data.measured;
}

/** Whether the laboratory adjusted the tool and left it within its limits. */
export function putRight(data: CertificateData): boolean {
  return foundOf(data) !== null && data.result === 'within limits';
}

async function failedCheck(db: Kysely<RegisterSchema>, subject: Subject, id: string): Promise<FailingBasis> {
  const row = await db
    .selectFrom('tool_check')
    .select(['data', 'tool_id', 'happened_at'])
    .where('id', '=', id)
    .executeTakeFirst();
  if (!row) throw notFound('check', 'data.basis.checkId', id);
  const data = JSON.parse(row.data) as CheckData;
  if (row.tool_id !== subject.id) {
    throw invalidField('data.basis.checkId', data.kind, `a check of ${subject.name}`);
  }
  if (data.result !== 'failed') throw invalidField('data.basis.checkId', 'passed', 'a failed check');
  return { kind: 'check', id, data, happenedAt: row.happened_at };
}

/** The evidence in words. */
export function basisText(basis: FailingBasis): string {
  switch (basis.kind) {
    case 'certificate':
      return certificateText(basis.data, basis.toolNumber);
    case 'check':
      return `failed check (${basis.data.kind}) of ${basis.data.happenedAt.slice(0, 10)}`;
    case 'statement':
      return [`as stated: ${basis.text}`, ...statedNumbers(basis)].join('; ');
  }
}

function certificateText(data: CertificateData, toolNumber: string): string {
  const found = foundOf(data) === null ? data.result : 'as found';
  return `certificate ${data.number} of ${toolNumber}, ${found}, calibrated on ${data.calibratedOn}`;
}

function statedNumbers({ error, nutFactor }: Statement): string[] {
  return [
    ...(error === null ? [] : [`error ${showNumber(error * 100, 3)} %`]),
    ...(nutFactor === null ? [] : [`K ${showEntered(nutFactor)}`]),
  ];
}
