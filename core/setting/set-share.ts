import type { InputGap } from '../findings/outcome.ts';

/** What a further bolt set puts on the gasket while it stands at its own target. */
export interface SetShare {
  readonly name: string;
  /** nb */
  readonly count: number | null;
  /** F of one of its bolts, N */
  readonly load: number | null;
  readonly missing: readonly InputGap[];
}
