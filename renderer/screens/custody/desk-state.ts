import type { CustodyStep } from '../../../core/contract/custody.ts';
import { remembered } from '../../app/remember.ts';
import type { FoundTool } from '../../components/scan-field.tsx';

/** One act at the desk while it is being put together; it outlives the page and the program. */
export interface DeskState {
  readonly step: CustodyStep;
  readonly tools: readonly FoundTool[];
  readonly personId: string;
  readonly holderId: string;
  readonly condition: string;
  readonly place: string;
  readonly reference: string;
  readonly kit: { readonly id: string; readonly name: string } | null;
  readonly reason: string;
  /** As typed in the site's time; empty is the moment it is recorded. */
  readonly happenedAt: string;
}

export const EMPTY_DESK: DeskState = {
  step: 'issue',
  tools: [],
  personId: '',
  holderId: '',
  condition: '',
  place: '',
  reference: '',
  kit: null,
  reason: '',
  happenedAt: '',
};

export const deskState = remembered<DeskState>('custody-desk', EMPTY_DESK);

/** Lays tools on the desk for a step; who stands at the desk stays. */
export function layOnDesk(tools: readonly FoundTool[], rest: Partial<DeskState> = {}): void {
  const { personId } = deskState.get();
  deskState.set({ ...EMPTY_DESK, personId, ...rest, tools });
}

/** Adds one tool to what lies on the desk already. */
export function addToDesk(tool: FoundTool): void {
  const desk = deskState.get();
  if (!desk.tools.some(({ id }) => id === tool.id)) deskState.set({ ...desk, tools: [...desk.tools, tool] });
}

/** What is left on the desk after an act: nothing but the person and the step, for the next one. */
export const cleared = ({ step, personId }: DeskState): DeskState => ({ ...EMPTY_DESK, step, personId });
