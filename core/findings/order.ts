import { FINDING_CODES, type FindingCode } from './codes.ts';
import { type Finding, SEVERITIES, type Severity } from './finding.ts';

const GRAVITY = rankOf<Severity>(SEVERITIES);
const PLACE = rankOf<FindingCode>(FINDING_CODES);

function rankOf<K extends string>(listed: readonly K[]): Readonly<Record<K, number>> {
  return Object.fromEntries(listed.map((key, rank) => [key, rank])) as Record<K, number>;
}

/**
 * Findings with the gravest first; within a severity in the order of the closed list of codes, then by subject.
 *
 * @param findings in any order
 * @returns a sorted copy
 * @example inOrder([{ severity: 'note', code: 'bolt_set_unknown', subject: '' }, { severity: 'refusal', code:
 * 'bolt_set_unknown', subject: '' }])[0]?.severity // 'refusal'
 * @source rule of this program
 */
export function inOrder(findings: readonly Finding[]): Finding[] {
  return findings
    .map((finding) => ({
      finding,
      rank: GRAVITY[finding.severity] * FINDING_CODES.length + PLACE[finding.code],
    }))
    .sort((a, b) => a.rank - b.rank || compare(a.finding.subject, b.finding.subject))
    .map(({ finding }) => finding);
}

function compare(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}
