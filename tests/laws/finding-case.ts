import type { WorkKind } from '../../core/contract/setting.ts';
import type { Severity } from '../../core/findings/finding.ts';
import type { InputDraft } from './complete-input.ts';

export type Change = (input: InputDraft) => void;

/** A change of an input that has nothing against it, and the severity of the finding it brings out. */
export interface Case {
  readonly kind?: WorkKind;
  readonly severity: Severity;
  readonly change: Change;
}
