import type { RequestInput } from '../../../core/contract/requests.ts';
import { blank, needed, orNull, type Typed, textOrNull } from '../../components/typed.ts';

/** What a person copies from an instruction sheet; empty is what it does not say. */
export interface SheetForm {
  boltCount: string;
  thread: string;
  grade: string;
  gasket: string;
  torque: Typed;
  torqueTolerance: Typed;
}

export const EMPTY_SHEET: SheetForm = {
  boltCount: '',
  thread: '',
  grade: '',
  gasket: '',
  torque: blank('N.m'),
  torqueTolerance: { text: '5', unit: 'percent' },
};

export function sheetInput(jointId: string, form: SheetForm): RequestInput<'joint.compareSheet'> {
  return {
    jointId,
    boltCount: form.boltCount.trim() === '' ? null : Number(form.boltCount),
    thread: textOrNull(form.thread),
    grade: textOrNull(form.grade),
    gasket: textOrNull(form.gasket),
    torque: orNull(form.torque),
    torqueTolerance: needed(form.torqueTolerance),
  };
}
