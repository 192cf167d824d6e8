import type { GasketData } from '../../../core/contract/gasket.ts';
import type { JointInput } from '../../../core/contract/joint.ts';
import type { Unit } from '../../../core/units/units.ts';
import { blanks, orNullEach, type Typed, textOrNull, typedEach } from '../../components/typed.ts';

const GASKET_UNITS = {
  thickness: 'mm',
  contactInside: 'mm',
  contactOutside: 'mm',
  pitchDiameter: 'mm',
  ringWidth: 'mm',
  partitionArea: 'mm2',
  partitionShare: 'percent',
  factorM: 'one',
  stressY: 'MPa',
  seatingStress: 'MPa',
  operatingStress: 'MPa',
  stressMax: 'MPa',
  targetStress: 'MPa',
  retainedOperating: 'percent',
  retainedTest: 'percent',
  rotationMax: 'deg',
  expansion: 'um/m.K',
} as const satisfies Record<string, Unit>;

export type GasketForm = Record<keyof typeof GASKET_UNITS, Typed> & {
  type: string;
  kind: string;
  codeType: string;
  batch: string;
  source: string;
};

export const EMPTY_GASKET: GasketForm = {
  ...blanks(GASKET_UNITS),
  type: '',
  kind: '',
  codeType: '',
  batch: '',
  source: '',
};

export function gasketForm(gasket: GasketData | null): GasketForm {
  return {
    ...typedEach(gasket, GASKET_UNITS),
    type: gasket?.type ?? '',
    kind: gasket?.kind ?? '',
    codeType: gasket?.codeType ?? '',
    batch: gasket?.batch ?? '',
    source: gasket?.source ?? '',
  };
}

type GasketInput = NonNullable<JointInput['gasket']>;

export function gasketInput(form: GasketForm): GasketInput {
  return {
    ...orNullEach(form, GASKET_UNITS),
    type: form.type,
    kind: textOrNull(form.kind) as GasketInput['kind'],
    codeType: textOrNull(form.codeType),
    batch: form.batch,
    source: form.source,
  };
}

/** Null as long as nothing is typed; values without a type are sent, and the type is asked for. */
export function firstGasketInput(form: GasketForm): GasketInput | null {
  const { type, kind, codeType, batch, source, ...values } = form;
  const empty =
    [type, kind, codeType, batch, source].every((text) => text.trim() === '') &&
    Object.values(values).every((value) => value.text.trim() === '');
  return empty ? null : gasketInput(form);
}
