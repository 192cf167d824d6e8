import type { Outcome } from '../../core/findings/outcome.ts';

/** Value of an outcome that a check needs; the gaps it waits for otherwise. */
export function known<T>(outcome: Outcome<T>): T {
  if (outcome.value === null) {
    throw new Error(outcome.missing.map(({ symbol, reason }) => `${symbol} ${reason}`).join(', '));
  }
  return outcome.value;
}
