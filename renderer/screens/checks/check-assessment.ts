import { useEffect, useState } from 'react';
import { useAsk } from '../../app/ask.ts';
import type { DraftInput } from './check-form-values.ts';

const SETTLE_MS = 300;

/** What the service says of the answers and comparisons as they stand; it is asked once typing rests. */
export function useCheckAssessment(draft: DraftInput, enabled: boolean) {
  const text = JSON.stringify(draft);
  const [settled, setSettled] = useState(text);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(text), SETTLE_MS);
    return () => clearTimeout(timer);
  }, [text]);
  const data = JSON.parse(settled) as DraftInput;
  return useAsk('check.assess', { data }, { enabled, keep: true });
}
