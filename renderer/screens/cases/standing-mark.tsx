import type { AffectedEvent } from '../../../core/contract/recall.ts';

type Standing = AffectedEvent['worst'];

const WORDS: Readonly<Record<Standing, string>> = {
  broken: 'limit broken',
  'not sure': 'not sure',
  kept: 'kept',
  'not known': 'not known',
};

/** How a real load stands against its limits: shape and word, so that "not sure" and "not known" never look like kept. */
export function StandingMark({ standing, words }: { readonly standing: Standing; readonly words?: string }) {
  return (
    <span className={standing === 'broken' ? 'limit-state not-met' : 'limit-state'}>
      <svg viewBox="0 0 16 16" aria-hidden="true">
        {standing === 'kept' && <path d="M2 8.6l4 4 8-9" fill="none" stroke="var(--ink)" strokeWidth="2" />}
        {standing === 'broken' && (
          <>
            <rect x="1" y="1" width="14" height="14" rx="1" fill="var(--refusal)" />
            <rect x="3.5" y="6.8" width="9" height="2.4" fill="var(--page)" />
          </>
        )}
        {standing === 'not sure' && (
          <path d="M1.2 2.2h13.6L8 14.6z" fill="none" stroke="var(--warning)" strokeWidth="2" />
        )}
        {standing === 'not known' && (
          <circle
            cx="8"
            cy="8"
            r="6"
            fill="none"
            stroke="var(--ink-2)"
            strokeWidth="1.6"
            strokeDasharray="2.4 2.4"
          />
        )}
      </svg>
      <span className={standing === 'not known' ? 'unknown' : undefined}>{words ?? WORDS[standing]}</span>
    </span>
  );
}
