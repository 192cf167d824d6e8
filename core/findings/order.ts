import { FINDING_CODES, type FindingCode } from './codes.ts';
import { type Raised, SEVERITIES, type Severity } from './finding.ts';

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
export function inOrder(findings: readonly Raised[]): Raised[] {
  const ordered: Raised[] = [];
  const ranks: number[] = [];
  // A setting has a dozen or two: putting each in its place beats a general sort, and this runs for every setting.
  for (const finding of findings) {
    const own = rank(finding);
    let at = ordered.length;
    for (; at > 0; at--) {
      const before = ordered[at - 1];
      const rankBefore = ranks[at - 1];
      if (before === undefined || rankBefore === undefined || rankBefore < own) break;
      if (rankBefore === own && before.subject <= finding.subject) break;
      ordered[at] = before;
      ranks[at] = rankBefore;
    }
    ordered[at] = finding;
    ranks[at] = own;
  }
  return ordered;
}

function rank({ severity, code }: Raised): number {
  return GRAVITY[severity] * FINDING_CODES.length + PLACE[code];
}
