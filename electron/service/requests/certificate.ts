import { lineOfCertificate } from '../../../core/calibration/certificate.ts';
import { checkConfirmed, measuredTool, recordCertificate } from '../operations/certificate.ts';
import { analyse, asFoundLineOf } from '../operations/certificate-analysis.ts';
import { saved } from '../operations/edit.ts';
import { certificatesOf } from '../repositories/tool.ts';
import { todayAt } from '../time.ts';
import type { Read, Write } from './handler.ts';

/** What the points say before they are recorded; the certificate before them is the newest earlier one. */
export const assessCertificate: Read<'certificate.assess'> = async (context, { data }) => {
  const tool = await measuredTool(context, data);
  const earlier = (await certificatesOf(context.db, [data.toolId])).filter(
    (certificate) => certificate.data.calibratedOn < data.calibratedOn,
  );
  const analysis = analyse(data, tool.data.properties, earlier.at(-1)?.data ?? null, todayAt(context));
  return { ...analysis, line: lineOfCertificate(data), asFoundLine: asFoundLineOf(data) };
};

export const addCertificate: Write<'certificate.add'> = async (context, { data }) => {
  await checkConfirmed(context, data);
  return saved(await recordCertificate(context, data, null), null);
};
