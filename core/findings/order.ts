import { FINDING_CODES } from './codes.ts';
import { type Finding, SEVERITIES } from './finding.ts';

/** Findings with the gravest first; within a severity in the order of the closed list of codes, then by subject. */
export function inOrder(findings: readonly Finding[]): Finding[] {
  return [...findings].sort(
    (a, b) =>
      SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity) ||
      FINDING_CODES.indexOf(a.code) - FINDING_CODES.indexOf(b.code) ||
      compare(a.subject, b.subject),
  );
}

function compare(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}
