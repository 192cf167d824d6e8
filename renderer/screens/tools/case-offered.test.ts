import { expect, test } from 'vitest';
import type { CertificateAnalysis } from '../../../core/contract/certificate-view.ts';
import type { CertificateData } from '../../../core/contract/tool.ts';
import { caseOffered } from './case-offered.ts';

type Verdict = NonNullable<CertificateAnalysis['asFound']>['verdict'];
const POINTS: CertificateData['asFound'] = { kind: 'gauge', points: [] };

const offered = (verdict: Verdict | null, adjusted: boolean, result: CertificateData['result']) =>
  caseOffered({
    data: { result, asFound: adjusted ? POINTS : null },
    analysis: { asFound: verdict && { verdict, worst: null, at: null } },
  });

test.each<[Verdict | null, boolean, CertificateData['result'], boolean]>([
  ['accepted', true, 'within limits', false],
  ['accepted', true, 'outside limits', false],
  ['accepted', false, 'within limits', false],
  ['rejected', true, 'within limits', true],
  ['rejected', false, 'no limits stated', true],
  ['not sure', false, 'within limits', true],
  ['not known', true, 'within limits', true],
  [null, true, 'within limits', true],
  // The first certificate of a tool says nothing of how it worked before.
  ['not known', false, 'within limits', false],
  [null, false, 'no limits stated', false],
  [null, false, 'outside limits', true],
])('as found %s, adjusted %s, %s: offered %s', (verdict, adjusted, result, expected) => {
  expect(offered(verdict, adjusted, result)).toBe(expected);
});
