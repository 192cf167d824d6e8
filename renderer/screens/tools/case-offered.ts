import type { CertificateAnalysis } from '../../../core/contract/certificate-view.ts';
import type { CertificateData } from '../../../core/contract/tool.ts';

interface Found {
  readonly data: Pick<CertificateData, 'result' | 'asFound'>;
  readonly analysis: Pick<CertificateAnalysis, 'asFound'>;
}

/**
 * Whether a certificate gives cause to ask what the tool reached before it: its result on arrival failed, or is not
 * decided where points were taken on arrival. A good result on arrival gives none, however it was adjusted.
 */
export function caseOffered({ data, analysis }: Found): boolean {
  const verdict = analysis.asFound?.verdict ?? null;
  if (verdict === 'rejected' || verdict === 'not sure') return true;
  const adjusted = data.asFound !== null && data.asFound !== undefined;
  if (adjusted) return verdict !== 'accepted';
  return data.result === 'outside limits';
}
