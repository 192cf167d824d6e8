import type { TighteningInput } from '../../core/contract/event.ts';
import type { PassInput } from '../../core/contract/pass.ts';
import type { RequestInput } from '../../core/contract/requests.ts';

export type SentRecord =
  | { readonly name: 'pass.record'; readonly input: RequestInput<'pass.record'> }
  | { readonly name: 'event.recordTightening'; readonly input: RequestInput<'event.recordTightening'> }
  | { readonly name: 'event.sign'; readonly input: RequestInput<'event.sign'> };

export interface JointToWorkAt {
  readonly jointId: string;
  /** Passes of its setting, without the moments. */
  readonly passes: readonly PassInput[];
  readonly tightening: TighteningInput;
}

/** What a process is told before it starts to work. */
export interface WorkOrder {
  readonly folder: string;
  /** Added to the clock, so that the work is done on the day the settings are for. */
  readonly clockOffset: number;
  readonly joints: readonly JointToWorkAt[];
  /** Which joint comes first. */
  readonly turn: number;
  /** Sent by the process before and not answered when it was killed. */
  readonly pending: SentRecord | null;
}
