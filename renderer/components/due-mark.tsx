import type { DueState } from '../../core/contract/check.ts';

/** Said where there is little room; the state's own name stands everywhere else. */
const CLASS: Readonly<Record<DueState, string>> = {
  overdue: 'due-overdue',
  'due before it is needed': 'due-needed',
  'due soon': 'due-soon',
  'in date': 'due-in-date',
  'not known': 'due-unknown',
};

/** Worst first. "Not known" comes before "in date": it is never taken for one. */
export const DUE_ORDER: readonly DueState[] = [
  'overdue',
  'due before it is needed',
  'not known',
  'due soon',
  'in date',
];

export const worstDue = (states: readonly DueState[]): DueState | null =>
  DUE_ORDER.find((state) => states.includes(state)) ?? null;

/** An hourglass that runs out: empty above when overdue, half when soon, full in date, in outline when not known. */
export function DueShape({ state }: { readonly state: DueState }) {
  return (
    <svg className={`due-shape ${CLASS[state]}`} viewBox="0 0 16 16" aria-hidden="true">
      <path d="M3 1.5h10L8 8zM8 8l5 6.5H3z" className="glass" />
      {state === 'overdue' && <path d="M8 8l5 6.5H3z" className="sand" />}
      {state === 'due before it is needed' && (
        <>
          <path d="M6.1 5.5h3.8L8 8z" className="sand" />
          <path d="M5.7 11h4.6l2.7 3.5H3z" className="sand" />
        </>
      )}
      {state === 'due soon' && (
        <>
          <path d="M4.9 4h6.2L8 8z" className="sand" />
          <path d="M4.5 12.6h7L13 14.5H3z" className="sand" />
        </>
      )}
      {state === 'in date' && <path d="M3 1.5h10L8 8z" className="sand" />}
    </svg>
  );
}

/** How a thing that is due stands: shape and word; colour only repeats them. */
export function DueMark({ state, words }: { readonly state: DueState; readonly words?: string }) {
  return (
    <span className={`due ${CLASS[state]}`}>
      <DueShape state={state} />
      {words ?? state}
    </span>
  );
}
