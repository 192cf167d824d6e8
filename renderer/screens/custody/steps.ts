import type { CustodyStep, MoveInput } from '../../../core/contract/custody.ts';
import { textOrNull } from '../../components/typed.ts';
import type { DeskState } from './desk-state.ts';

interface StepWords {
  readonly step: CustodyStep;
  /** On the choice. */
  readonly name: string;
  /** On the button, before the tools. */
  readonly act: string;
  /** Said when it is done: "W-03 is issued." */
  readonly done: string;
  readonly fields: readonly ('holder' | 'condition' | 'place' | 'reference' | 'reason')[];
  /** Label of the reference, which means something else at each step. */
  readonly reference: string;
}

export const STEPS: readonly StepWords[] = [
  {
    step: 'issue',
    name: 'Issue',
    act: 'Issue',
    done: 'issued',
    fields: ['holder', 'place', 'reference'],
    reference: 'Job or order',
  },
  {
    step: 'return',
    name: 'Return',
    act: 'Take back',
    done: 'back in the tool room',
    fields: ['condition', 'place', 'reference', 'reason'],
    reference: 'Job or order',
  },
  {
    step: 'send to the laboratory',
    name: 'To the laboratory',
    act: 'Send to the laboratory:',
    done: 'at the laboratory',
    fields: ['place', 'reference'],
    reference: 'Laboratory and order',
  },
  {
    step: 'take back from the laboratory',
    name: 'From the laboratory',
    act: 'Take back from the laboratory:',
    done: 'back from the laboratory',
    fields: ['place', 'reference'],
    reference: 'Laboratory and order',
  },
  {
    step: 'quarantine',
    name: 'Quarantine',
    act: 'Quarantine',
    done: 'quarantined',
    fields: ['place', 'reference', 'reason'],
    reference: 'Report or order',
  },
  {
    step: 'release from quarantine',
    name: 'Release',
    act: 'Release',
    done: 'released from quarantine',
    fields: ['place', 'reference', 'reason'],
    reference: 'Report or order',
  },
  {
    step: 'scrap',
    name: 'Scrap',
    act: 'Scrap',
    done: 'scrapped',
    fields: ['place', 'reference', 'reason'],
    reference: 'Report or order',
  },
];

export function stepWords(step: CustodyStep): StepWords {
  const found = STEPS.find((each) => each.step === step);
  if (found === undefined) throw new Error(`no words for the step ${step}`);
  return found;
}

/** What is sent: only the fields that the chosen step shows. */
export function moveInput(desk: DeskState, happenedAt: string): MoveInput {
  const { fields } = stepWords(desk.step);
  return {
    toolIds: desk.tools.map(({ id }) => id),
    step: desk.step,
    happenedAt,
    personId: desk.personId,
    holderId: fields.includes('holder') ? textOrNull(desk.holderId) : null,
    condition: (fields.includes('condition') ? textOrNull(desk.condition) : null) as MoveInput['condition'],
    place: desk.place,
    reference: desk.reference,
    kitId: desk.step === 'issue' ? (desk.kit?.id ?? null) : null,
    reason: fields.includes('reason') ? desk.reason : '',
  };
}

/** "W-03", "W-03 and G-17", "W-03, G-17 and H-2". */
export function named(numbers: readonly string[]): string {
  const [last, ...others] = [...numbers].reverse();
  if (others.length === 0) return last ?? '';
  return `${others.reverse().join(', ')} and ${last}`;
}
