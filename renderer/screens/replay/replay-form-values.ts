import type { Assumption } from '../../../core/contract/replay.ts';
import type { RequestInput } from '../../../core/contract/requests.ts';
import { blank, orNull, type Typed, textOrNull } from '../../components/typed.ts';

export interface ReplayForm {
  kind: Assumption['kind'];
  nutFactor: string;
  thread: string;
  seating: Typed;
  most: Typed;
  unitId: string;
  lubricant: string;
  batch: string;
  setting: string;
  from: string;
  to: string;
}

export const emptyReplay = (): ReplayForm => ({
  kind: 'nut factor',
  nutFactor: '',
  thread: '',
  seating: blank('MPa'),
  most: blank('MPa'),
  unitId: '',
  lubricant: '',
  batch: '',
  setting: '',
  from: '',
  to: '',
});

export function replayInput(form: ReplayForm): RequestInput<'replay.run'> {
  return {
    assumption: assumptionOf(form),
    scope: {
      unitId: textOrNull(form.unitId),
      lubricant: form.lubricant,
      batch: form.batch,
      setting: form.setting,
      from: textOrNull(form.from),
      to: textOrNull(form.to),
    },
  };
}

function assumptionOf(form: ReplayForm): RequestInput<'replay.run'>['assumption'] {
  switch (form.kind) {
    case 'nut factor':
      return { kind: 'nut factor', nutFactor: { text: form.nutFactor, unit: 'one' } };
    case 'stud size':
      return { kind: 'stud size', thread: form.thread };
    case 'gasket limit':
      return { kind: 'gasket limit', seating: orNull(form.seating), most: orNull(form.most) };
  }
}
