import type { HistoryFinding, TamperKind } from '../../../core/contract/history.ts';
import type { Found } from './tasks.ts';

/** Findings one piece of work tells in full: a register that was rewritten has one for each record. */
const TOLD = 100;

interface About {
  readonly originId: string;
  readonly sequence: number;
  readonly eventId: string | null;
}

export interface Collector {
  add(kind: TamperKind, detail: string, about?: About | null): void;
  found(looked: number): Found;
}

export function collector(): Collector {
  const findings: HistoryFinding[] = [];
  let total = 0;
  return {
    add(kind, detail, about = null) {
      total += 1;
      if (findings.length >= TOLD) return;
      const { originId = null, sequence = null, eventId = null } = about ?? {};
      findings.push({ kind, originId, sequence, eventId, detail });
    },
    found: (looked) => ({ findings, total, looked }),
  };
}
