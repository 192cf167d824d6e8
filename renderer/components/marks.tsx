import type { Severity } from '../../core/findings/finding.ts';

export const SEVERITY_WORDS: Record<Severity, string> = {
  refusal: 'Refusal',
  warning: 'Warning',
  note: 'Note',
};

/** Outline shape of a finding: a filled block, an open triangle, lines of writing. Readable without colour. */
export function SeverityMark({ severity }: { readonly severity: Severity }) {
  return (
    <svg className="m" viewBox="0 0 16 16" aria-hidden="true">
      {severity === 'refusal' && (
        <>
          <rect x="1" y="1" width="14" height="14" rx="1" fill="var(--refusal)" />
          <rect x="3.5" y="6.8" width="9" height="2.4" fill="var(--page)" />
        </>
      )}
      {severity === 'warning' && (
        <path d="M1.2 2.2h13.6L8 14.6z" fill="none" stroke="var(--warning)" strokeWidth="2" />
      )}
      {severity === 'note' && (
        <path d="M2 4.2h12M2 8h12M2 11.8h7" fill="none" stroke="var(--note)" strokeWidth="2" />
      )}
    </svg>
  );
}
