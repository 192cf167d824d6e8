import type { RequestInput } from '../../../core/contract/requests.ts';
import { enter } from '../../../core/units/entered.ts';
import { withOffset } from '../../app/text/time.ts';

export interface CyclesForm {
  jointIds: string[];
  from: string;
  until: string;
  cycles: string;
  basis: string;
  personId: string;
  happenedAt: string;
  remarks: string;
  /** Count whose place it takes; empty for none. */
  supersedes: string;
}

export const emptyCycles = (jointId: string, now: string): CyclesForm => ({
  jointIds: [jointId],
  from: '',
  until: '',
  cycles: '',
  basis: '',
  personId: '',
  happenedAt: now,
  remarks: '',
  supersedes: '',
});

/** A number that can't be read goes on as it was typed, to be refused by name. */
export function cyclesInput(form: CyclesForm, timeZone: string): Omit<RequestInput<'cycles.record'>, 'key'> {
  const { supersedes, cycles, happenedAt, ...data } = form;
  return {
    supersedes: supersedes === '' ? null : supersedes,
    data: {
      ...data,
      cycles: enter(cycles, 'one')?.si ?? (cycles as never),
      happenedAt: happenedAt === '' ? '' : withOffset(happenedAt, timeZone),
    },
  };
}
