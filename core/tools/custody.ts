import type * as z from 'zod';
import type { CustodyStep, condition, ToolStatus } from '../contract/custody.ts';

type Condition = z.infer<typeof condition>;

/** Status after a step, or why the step can't be taken. */
export type Custody = { readonly status: ToolStatus } | { readonly refused: string };

type After = { readonly [S in ToolStatus]?: ToolStatus };

/** The table of docs/custody.md; a status a step does not name refuses it. */
const AFTER: { readonly [S in CustodyStep]: After } = {
  issue: { available: 'issued' },
  return: { issued: 'available' },
  'send to the laboratory': {
    available: 'at the laboratory',
    issued: 'at the laboratory',
    quarantined: 'quarantined',
  },
  'take back from the laboratory': { 'at the laboratory': 'available', quarantined: 'quarantined' },
  quarantine: {
    available: 'quarantined',
    issued: 'quarantined',
    'at the laboratory': 'quarantined',
    scrapped: 'quarantined',
  },
  'release from quarantine': { quarantined: 'available' },
  scrap: {
    available: 'scrapped',
    issued: 'scrapped',
    'at the laboratory': 'scrapped',
    quarantined: 'scrapped',
  },
};

/** What has to happen first, by the status that stands in the way. */
const FIRST: { readonly [S in ToolStatus]: string } = {
  available: 'it is in the tool room',
  issued: 'it is issued; return it first',
  'at the laboratory': 'it is at the laboratory; take it back first',
  quarantined: 'it is quarantined; release it first, with a reason',
  scrapped: 'it is scrapped; if that was a slip, quarantine it with a reason',
};

/**
 * Status of a tool after a step of custody.
 *
 * @param status status before the step
 * @param step what happens to the tool
 * @param condition as it came back; anything but good leads from a return to quarantine
 * @returns status after the step, or why it is refused and what to do first
 * @example custodyAfter('quarantined', 'issue').refused // 'it is quarantined; release it first, with a reason'
 * @source rule of this program: docs/custody.md
 */
export function custodyAfter(
  status: ToolStatus,
  step: CustodyStep,
  condition: Condition | null = null,
): Custody {
  const after = AFTER[step][status];
  if (after === undefined) return { refused: refusal(status, step) };
  const doubtful = step === 'return' && condition !== null && condition !== 'good';
  return { status: doubtful ? 'quarantined' : after };
}

function refusal(status: ToolStatus, step: CustodyStep): string {
  if (status === 'quarantined' && step === 'quarantine') return 'it is quarantined already';
  if (status === 'scrapped' && step === 'scrap') return 'it is scrapped already';
  if (step === 'release from quarantine' && status !== 'scrapped') return 'it is not quarantined';
  return FIRST[status];
}
