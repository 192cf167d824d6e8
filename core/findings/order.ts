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
  const count = findings.length;
  // Rank and place in one number, so that a plain numeric sort does it: this runs for every setting.
  const keys = Float64Array.from(findings, (finding, index) => rank(finding) * count + index).sort();
  const ordered: Raised[] = [];
  for (const key of keys) {
    const finding = findings[key % count];
    if (finding !== undefined) ordered.push(finding);
  }
  // Few share a rank, and those mostly stand right already.
  for (let end = 1; end < ordered.length; end++) {
    for (let at = end; at > 0; at--) {
      const [before, after] = [ordered[at - 1], ordered[at]];
      if (before === undefined || after === undefined || !sameRank(before, after)) break;
      if (before.subject <= after.subject) break;
      ordered[at - 1] = after;
      ordered[at] = before;
    }
  }
  return ordered;
}

function sameRank(a: Raised, b: Raised): boolean {
  return a.code === b.code && a.severity === b.severity;
}

function rank({ severity, code }: Raised): number {
  return GRAVITY[severity] * FINDING_CODES.length + PLACE[code];
}
