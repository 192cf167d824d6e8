/** How a value stands against its limit; a limit that is not known is never drawn as one that is kept. */
export type Standing = 'kept' | 'broken' | 'not sure' | 'not known';

/** Each shape can be told from the others without colour. */
export function StandingShape({ standing }: { readonly standing: Standing }) {
  return (
    <svg viewBox="0 0 16 16" aria-hidden="true">
      {SHAPES[standing]}
    </svg>
  );
}

const SHAPES = {
  kept: <path d="M2 8.6l4 4 8-9" fill="none" stroke="var(--ink)" strokeWidth="2" />,
  broken: (
    <>
      <rect x="1" y="1" width="14" height="14" rx="1" fill="var(--refusal)" />
      <rect x="3.5" y="6.8" width="9" height="2.4" fill="var(--page)" />
    </>
  ),
  'not sure': <path d="M1.2 2.2h13.6L8 14.6z" fill="none" stroke="var(--warning)" strokeWidth="2" />,
  'not known': (
    <circle
      cx="8"
      cy="8"
      r="6"
      fill="none"
      stroke="var(--ink-2)"
      strokeWidth="1.6"
      strokeDasharray="2.4 2.4"
    />
  ),
};
