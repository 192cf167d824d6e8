import type { LimitRow } from '../../../core/contract/card-views.ts';

type State = LimitRow['state'];

/** A limit that is not known is never called a pass. */
export function stateWords(state: State, side: LimitRow['side']): string {
  if (state === 'met') return 'pass';
  if (state === 'not known') return 'not known';
  return side === 'at least' ? 'not reached' : 'exceeded';
}

interface LimitStateProps {
  readonly state: State;
  readonly side: LimitRow['side'];
}

/** Shape and word; each can be told without the other and without colour. */
export function LimitState({ state, side }: LimitStateProps) {
  return (
    <span className={state === 'not met' ? 'limit-state not-met' : 'limit-state'}>
      <svg viewBox="0 0 16 16" aria-hidden="true">
        {state === 'met' && <path d="M2 8.6l4 4 8-9" fill="none" stroke="var(--ink)" strokeWidth="2" />}
        {state === 'not met' && (
          <>
            <rect x="1" y="1" width="14" height="14" rx="1" fill="var(--refusal)" />
            <rect x="3.5" y="6.8" width="9" height="2.4" fill="var(--page)" />
          </>
        )}
        {state === 'not known' && (
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
      {state === 'not known' ? <span className="unknown">not known</span> : stateWords(state, side)}
    </span>
  );
}
