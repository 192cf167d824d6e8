import { isDeepStrictEqual } from 'node:util';
import { lineOfCertificate } from '../../../core/calibration/certificate.ts';
import type { CertificateData, ToolClass } from '../../../core/contract/tool.ts';
import { append } from '../chain/append.ts';
import type { WriteContext } from '../context.ts';
import { invalidField, notFound, RequestFailure } from '../failure.ts';
import { nameKey } from '../fold.ts';
import { checkDistinct } from '../operations/distinct.ts';
import { duplicateOf, nextVersion, saved } from '../operations/edit.ts';
import {
  certificatesOf,
  findTool,
  toolIdByNumber,
  toolPage,
  toolsWithCertificates,
  usesOf,
} from '../repositories/tool.ts';
import type { Read, Write } from './handler.ts';

export const listTools: Read<'tool.list'> = ({ db }, input) => toolPage(db, input);

export const getTool: Read<'tool.get'> = async ({ db }, { id }) => {
  const tool = await findTool(db, id);
  if (tool === null) throw notFound('tool', 'id', id);
  const certificates = await certificatesOf(db, [id]);
  const companions = await toolsWithCertificates(db, {
    ids: [...new Set(certificates.flatMap(({ data }) => data.withToolIds))],
  });
  const numberOf = new Map(companions.map((companion) => [companion.id, companion.data.number]));
  return {
    id,
    version: tool.version,
    data: tool.data,
    certificates: certificates.toReversed().map((certificate) => ({
      id: certificate.id,
      data: certificate.data,
      recordedAt: certificate.recordedAt,
      line: lineOfCertificate(certificate.data),
      withTools: certificate.data.withToolIds.map((toolId) => numberOf.get(toolId) ?? 'not known'),
    })),
    uses: await usesOf(db, id),
  };
};

export const saveTool: Write<'tool.save'> = async (context, { id, version, data }) => {
  const { db, newId } = context;
  const current = id === null ? null : await findTool(db, id);
  const next = nextVersion('tool', id, version, current);
  const namesake = await toolIdByNumber(db, nameKey(data.number));
  if (namesake !== null && namesake !== id) throw duplicateOf('tool', 'data.number', data.number);
  if (current && current.data.properties.class !== data.properties.class) {
    throw invalidField(
      'data.properties.class',
      data.properties.class,
      `${current.data.properties.class}: records already name this tool as one; enter another tool instead`,
    );
  }
  if (current && isDeepStrictEqual(current.data, data)) return saved(current.id, current.version);
  const toolId = id ?? newId();
  await append(context, [
    { kind: 'tool saved', id: newId(), data: { id: toolId, version: next, data, importId: null } },
  ]);
  return saved(toolId, next);
};

export const addCertificate: Write<'certificate.add'> = async (context, { data }) => {
  const id = await recordCertificate(context, data, null);
  return saved(id, null);
};

const MEASURED_OF: Partial<Record<ToolClass, CertificateData['measured']['kind']>> = {
  'drive unit': 'pressure-torque',
  gauge: 'gauge',
};

/** Checks what the certificate says against the register and records it. */
export async function recordCertificate(
  context: WriteContext,
  data: CertificateData,
  importId: string | null,
): Promise<string> {
  const { db, newId } = context;
  const tool = await findTool(db, data.toolId);
  if (tool === null) throw notFound('tool', 'data.toolId', data.toolId);
  const expected = MEASURED_OF[tool.data.properties.class];
  if (expected !== data.measured.kind) {
    throw invalidField(
      'data.measured.kind',
      data.measured.kind,
      expected ??
        `no certificate on a ${tool.data.properties.class}: it hangs on the drive unit or the gauge`,
    );
  }
  if (data.validUntil < data.calibratedOn) {
    throw invalidField('data.validUntil', data.validUntil, `${data.calibratedOn} (calibrated on) or later`);
  }
  if (data.measured.kind === 'pressure-torque' && lineOfCertificate(data) === null) {
    throw invalidField(
      'data.measured.points',
      `${data.measured.points.length} points`,
      'points at three pressures or more, from which a line can be drawn',
    );
  }
  checkDistinct('data.withToolIds', data.withToolIds);
  const companions = await toolsWithCertificates(db, { ids: data.withToolIds });
  const missing = data.withToolIds.find((toolId) => !companions.some(({ id }) => id === toolId));
  if (missing !== undefined) throw notFound('tool', 'data.withToolIds', missing);
  const namesake = await db
    .selectFrom('certificate')
    .select('id')
    .where('tool_id', '=', data.toolId)
    .where('number_key', '=', nameKey(data.number))
    .executeTakeFirst();
  if (namesake) {
    throw new RequestFailure(
      'duplicate',
      `${tool.data.number} has a certificate ${data.number} already. Certificates are never changed: enter a corrected one under its own number`,
      [{ field: 'data.number', value: data.number, allowed: 'a number this tool has no certificate under' }],
    );
  }
  const id = newId();
  await append(context, [{ kind: 'certificate added', id, data: { data, importId } }]);
  return id;
}
