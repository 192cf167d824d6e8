import type { Kysely } from 'kysely';
import { lineOfCertificate } from '../../../core/calibration/certificate.ts';
import type { CertificateDetail, ToolProperties } from '../../../core/contract/tool.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { certificatesOf } from '../repositories/tool.ts';
import { analyse, asFoundLineOf } from './certificate-analysis.ts';

/** A tool's certificates with what their points say, newest calibration last. */
export async function certificateDetails(
  db: Kysely<RegisterSchema>,
  toolId: string,
  properties: ToolProperties,
  today: string,
): Promise<CertificateDetail[]> {
  const certificates = await certificatesOf(db, [toolId]);
  const companions = [...new Set(certificates.flatMap(({ data }) => data.withToolIds))];
  const numbers = await numbersOf(db, companions);
  return certificates.map(({ id, data, recordedAt }, index) => ({
    id,
    data,
    recordedAt,
    line: lineOfCertificate(data),
    asFoundLine: asFoundLineOf(data),
    analysis: analyse(data, properties, certificates[index - 1]?.data ?? null, today),
    withTools: data.withToolIds.map((companion) => numbers.get(companion) ?? 'not known'),
  }));
}

async function numbersOf(
  db: Kysely<RegisterSchema>,
  toolIds: readonly string[],
): Promise<ReadonlyMap<string, string>> {
  if (toolIds.length === 0) return new Map();
  const rows = await db
    .selectFrom('tool')
    .select(['id', 'number'])
    .where('id', 'in', [...toolIds])
    .execute();
  return new Map(rows.map(({ id, number }) => [id, number]));
}
