import { lineOfCertificate } from '../../../core/calibration/certificate.ts';
import { torqueAtPressure } from '../../../core/calibration/reading.ts';
import { certificateInForce } from '../../../core/calibration/validity.ts';
import type { CheckAssessment, CheckDraft } from '../../../core/contract/check.ts';
import { showQuantity } from '../../../core/text/number.ts';
import type { ReadContext } from '../context.ts';
import { notFound } from '../failure.ts';
import { listInForce } from '../repositories/checklist.ts';
import { certificatesOf, findTool } from '../repositories/tool.ts';
import { comparisonError } from './check.ts';
import { answerFaults } from './checklist-answers.ts';

/** What the answers and comparisons of a check say so far, by its list and its limit. */
export async function assessCheck(context: ReadContext, draft: CheckDraft): Promise<CheckAssessment> {
  const { db } = context;
  const tool = await findTool(db, draft.toolId);
  if (tool === null) throw notFound('tool', 'data.toolId', draft.toolId);
  const { class: toolClass } = tool.data.properties;
  const certificates = toolClass === 'drive unit' ? await certificatesOf(db, [draft.toolId]) : [];
  const certificate = certificateInForce(certificates, draft.on);
  const line = certificate === null ? null : lineOfCertificate(certificate.data);
  const limit = draft.limit?.si ?? null;
  const comparisons = draft.comparisons.map(({ pressure, reference, intended }) => {
    const known = reference !== null && intended !== null && intended.si > 0;
    const error = known ? comparisonError({ reference, intended }) : null;
    return {
      error,
      withinLimit: error === null || limit === null ? null : Math.abs(error) <= limit,
      byCertificate: line === null || pressure === null ? null : torqueAtPressure(line, pressure.si),
    };
  });
  const list = draft.checklist && (await listInForce(db, draft.checklist.id, draft.checklist.version));
  return {
    comparisons,
    certificate: line === null ? null : (certificate?.data.number ?? null),
    against: [
      ...(list?.data ? answerFaults(list.data, draft.answers).map(({ allowed }) => allowed) : []),
      ...comparisons.flatMap(({ error, withinLimit }, at) =>
        error === null || limit === null || withinLimit !== false
          ? []
          : [
              `comparison ${at + 1}: error ${showQuantity(error, 'percent', 3)}, limit ± ${showQuantity(limit, 'percent', 3)}`,
            ],
      ),
    ],
  };
}
