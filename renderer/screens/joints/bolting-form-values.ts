import type { JointData, JointInput, StressArea } from '../../../core/contract/joint.ts';
import { retainsPressure } from '../../../core/joint/identity.ts';
import type { Unit } from '../../../core/units/units.ts';
import {
  blank,
  blanks,
  needed,
  orNullEach,
  type Typed,
  textOrNull,
  typed,
  typedEach,
} from '../../components/typed.ts';

const BOLTING_UNITS = {
  circle: 'mm',
  yieldStrength: 'MPa',
  studLength: 'mm',
  grip: 'mm',
  tensileStrength: 'MPa',
  nutTensileStrength: 'MPa',
} as const satisfies Record<string, Unit>;

export type BoltingForm = Record<keyof typeof BOLTING_UNITS, Typed> & {
  count: string;
  thread: string;
  grade: string;
  yieldOrigin: string;
  nutSeries: string;
  nutGrade: string;
  reason: string;
  /** "yes", "no", or empty while nobody has said. */
  pressureRetaining: string;
};

export const EMPTY_BOLTING: BoltingForm = {
  ...blanks(BOLTING_UNITS),
  count: '',
  thread: '',
  grade: '',
  yieldOrigin: '',
  nutSeries: '',
  nutGrade: '',
  reason: '',
  pressureRetaining: '',
};

export function boltingForm(bolting: JointData['bolting']): BoltingForm {
  return {
    ...typedEach(bolting, BOLTING_UNITS),
    count: bolting.count === null ? '' : String(bolting.count),
    thread: bolting.thread ?? '',
    grade: bolting.grade ?? '',
    yieldOrigin: bolting.yieldOrigin,
    nutSeries: bolting.nutSeries ?? '',
    nutGrade: bolting.nutGrade ?? '',
    reason: bolting.reason,
    pressureRetaining: yesNo(retainsPressure(bolting)),
  };
}

export function boltingInput(form: BoltingForm): JointInput['bolting'] {
  return {
    ...orNullEach(form, BOLTING_UNITS),
    count: form.count.trim() === '' ? null : Number(form.count),
    thread: textOrNull(form.thread),
    grade: textOrNull(form.grade),
    yieldOrigin: form.yieldOrigin,
    nutSeries: textOrNull(form.nutSeries) as JointInput['bolting']['nutSeries'],
    nutGrade: textOrNull(form.nutGrade),
    reason: form.reason,
    pressureRetaining: form.pressureRetaining === '' ? null : form.pressureRetaining === 'yes',
  };
}

const yesNo = (value: boolean | null) => (value === null ? '' : value ? 'yes' : 'no');

const LUBRICANT_UNITS = {
  nutFactor: 'one',
  nutFactorCv: 'percent',
  nutFactorBatchCv: 'percent',
  frictionThread: 'one',
  frictionBearing: 'one',
} as const satisfies Record<string, Unit>;

export type LubricantForm = Record<keyof typeof LUBRICANT_UNITS, Typed> & {
  name: string;
  batch: string;
  evidence: string;
  source: string;
};

export const EMPTY_LUBRICANT: LubricantForm = {
  ...blanks(LUBRICANT_UNITS),
  name: '',
  batch: '',
  evidence: 'assumed',
  source: '',
};

export function lubricantForm(lubricant: JointData['lubricant']): LubricantForm {
  return {
    ...typedEach(lubricant, LUBRICANT_UNITS),
    name: lubricant?.name ?? '',
    batch: lubricant?.batch ?? '',
    evidence: lubricant?.evidence ?? 'assumed',
    source: lubricant?.source ?? '',
  };
}

/** Null as long as nothing is typed that says anything about the lubricant. */
export function lubricantInput(form: LubricantForm): JointInput['lubricant'] {
  const values = orNullEach(form, LUBRICANT_UNITS);
  const typedAny = Object.values(values).some((value) => value !== null);
  if (form.name.trim() === '' && form.batch.trim() === '' && !typedAny) return null;
  const evidence = form.evidence as NonNullable<JointInput['lubricant']>['evidence'];
  return { ...values, name: form.name, batch: form.batch, evidence, source: form.source };
}

export interface TargetForm {
  mode: string;
  percent: Typed;
  stress: Typed;
  load: Typed;
  torque: Typed;
  area: string;
  basis: string;
}

export const EMPTY_TARGET: TargetForm = {
  mode: '',
  percent: blank('percent'),
  stress: blank('MPa'),
  load: blank('kN'),
  torque: blank('N.m'),
  area: 'tensile',
  basis: '',
};

export function targetForm(target: JointData['target']): TargetForm {
  const form = { ...EMPTY_TARGET };
  if (target === null) return form;
  form.mode = target.mode;
  form.basis = target.basis;
  if ('area' in target) form.area = target.area;
  if (target.mode === 'percent of yield') form.percent = typed(target.percent, 'percent');
  if (target.mode === 'bolt stress') form.stress = typed(target.stress, 'MPa');
  if (target.mode === 'bolt load') form.load = typed(target.load, 'kN');
  if (target.mode === 'torque') form.torque = typed(target.torque, 'N.m');
  return form;
}

export function targetInput(form: TargetForm): JointInput['target'] {
  const area = form.area as StressArea;
  const { basis } = form;
  switch (form.mode) {
    case 'percent of yield':
      return { mode: 'percent of yield', percent: needed(form.percent), area, basis };
    case 'bolt stress':
      return { mode: 'bolt stress', stress: needed(form.stress), area, basis };
    case 'bolt load':
      return { mode: 'bolt load', load: needed(form.load), basis };
    case 'torque':
      return { mode: 'torque', torque: needed(form.torque), basis };
    case 'gasket stress':
      return { mode: 'gasket stress', basis };
    case 'component limits':
      return { mode: 'component limits', basis };
    default:
      return null;
  }
}

const LIMIT_UNITS = {
  boltStressMax: 'MPa',
  boltStressMin: 'MPa',
  flangeBoltStressMax: 'MPa',
  flangeRotationMax: 'deg',
} as const satisfies Record<string, Unit>;

export type LimitsForm = Record<keyof typeof LIMIT_UNITS, Typed> & {
  boltStressArea: string;
  source: string;
};

export const EMPTY_LIMITS: LimitsForm = { ...blanks(LIMIT_UNITS), boltStressArea: 'tensile', source: '' };

export function limitsForm(limits: JointData['limits']): LimitsForm {
  return {
    ...typedEach(limits, LIMIT_UNITS),
    boltStressArea: limits.boltStressArea,
    source: limits.source,
  };
}

export function limitsInput(form: LimitsForm): JointInput['limits'] {
  return {
    ...orNullEach(form, LIMIT_UNITS),
    boltStressArea: form.boltStressArea as StressArea,
    source: form.source,
  };
}

/** Further bolts of the joint with a size, circle or load of their own. */
export interface BoltSetForm {
  name: string;
  bolting: BoltingForm;
  lubricant: LubricantForm;
  target: TargetForm;
  limits: LimitsForm;
  space: { radialGap: Typed; axialGap: Typed };
}

export const EMPTY_BOLT_SET: BoltSetForm = {
  name: '',
  bolting: EMPTY_BOLTING,
  lubricant: EMPTY_LUBRICANT,
  target: EMPTY_TARGET,
  limits: EMPTY_LIMITS,
  space: { radialGap: blank('mm'), axialGap: blank('mm') },
};

type BoltSet = JointData['boltSets'][number];

export const boltSetForm = (set: BoltSet): BoltSetForm => ({
  name: set.name,
  bolting: boltingForm(set.bolting),
  lubricant: lubricantForm(set.lubricant),
  target: targetForm(set.target),
  limits: limitsForm(set.limits),
  space: typedEach(set.space, { radialGap: 'mm', axialGap: 'mm' }),
});

export const boltSetInput = (form: BoltSetForm): NonNullable<JointInput['boltSets']>[number] => ({
  name: form.name,
  bolting: boltingInput(form.bolting),
  lubricant: lubricantInput(form.lubricant),
  target: targetInput(form.target),
  limits: limitsInput(form.limits),
  space: orNullEach(form.space, { radialGap: 'mm', axialGap: 'mm' }),
});
