import type { JointData, JointInput, StressArea } from '../../../core/contract/joint.ts';
import { blank, needed, orNull, type Typed, textOrNull, typed } from '../../components/typed.ts';

/** Everything on the joint form, also what the chosen kind of flange or target doesn't need. */
export interface JointForm {
  tag: string;
  unitId: string;
  location: string;
  service: string;
  serviceTemperature: Typed;
  flange: {
    kind: 'standard' | 'custom';
    standard: string;
    size: string;
    rating: string;
    facing: string;
    description: string;
  };
  bolting: {
    count: string;
    thread: string;
    circle: Typed;
    grade: string;
    yieldStrength: Typed;
    yieldOrigin: string;
    studLength: Typed;
    grip: Typed;
    nutSeries: string;
  };
  gasket: { type: string; thickness: Typed };
  lubricant: {
    name: string;
    batch: string;
    nutFactor: Typed;
    nutFactorCv: Typed;
    frictionThread: Typed;
    frictionBearing: Typed;
    evidence: string;
    source: string;
  };
  target: {
    mode: string;
    percent: Typed;
    stress: Typed;
    load: Typed;
    torque: Typed;
    area: string;
    basis: string;
  };
  limits: {
    boltStressMax: Typed;
    boltStressMin: Typed;
    boltStressArea: string;
    flangeBoltStressMax: Typed;
    source: string;
  };
  radialGap: Typed;
  remarks: string;
}

export const EMPTY_JOINT: JointForm = {
  tag: '',
  unitId: '',
  location: '',
  service: '',
  serviceTemperature: blank('degC'),
  flange: {
    kind: 'standard',
    standard: 'ASME B16.5',
    size: '',
    rating: '',
    facing: 'raised face',
    description: '',
  },
  bolting: {
    count: '',
    thread: '',
    circle: blank('mm'),
    grade: '',
    yieldStrength: blank('MPa'),
    yieldOrigin: '',
    studLength: blank('mm'),
    grip: blank('mm'),
    nutSeries: '',
  },
  gasket: { type: '', thickness: blank('mm') },
  lubricant: {
    name: '',
    batch: '',
    nutFactor: blank('one'),
    nutFactorCv: blank('percent'),
    frictionThread: blank('one'),
    frictionBearing: blank('one'),
    evidence: 'assumed',
    source: '',
  },
  target: {
    mode: '',
    percent: blank('percent'),
    stress: blank('MPa'),
    load: blank('kN'),
    torque: blank('N.m'),
    area: 'tensile',
    basis: '',
  },
  limits: {
    boltStressMax: blank('MPa'),
    boltStressMin: blank('MPa'),
    boltStressArea: 'tensile',
    flangeBoltStressMax: blank('MPa'),
    source: '',
  },
  radialGap: blank('mm'),
  remarks: '',
};

export function jointForm(data: JointData): JointForm {
  const { bolting, gasket, lubricant, limits } = data;
  return {
    tag: data.tag,
    unitId: data.unitId,
    location: data.location,
    service: data.service,
    serviceTemperature: typed(data.serviceTemperature, 'degC'),
    flange: { ...EMPTY_JOINT.flange, ...data.flange },
    bolting: {
      count: bolting.count === null ? '' : String(bolting.count),
      thread: bolting.thread ?? '',
      circle: typed(bolting.circle, 'mm'),
      grade: bolting.grade ?? '',
      yieldStrength: typed(bolting.yieldStrength, 'MPa'),
      yieldOrigin: bolting.yieldOrigin,
      studLength: typed(bolting.studLength, 'mm'),
      grip: typed(bolting.grip, 'mm'),
      nutSeries: bolting.nutSeries ?? '',
    },
    gasket: { type: gasket?.type ?? '', thickness: typed(gasket?.thickness, 'mm') },
    lubricant: {
      name: lubricant?.name ?? '',
      batch: lubricant?.batch ?? '',
      nutFactor: typed(lubricant?.nutFactor, 'one'),
      nutFactorCv: typed(lubricant?.nutFactorCv, 'percent'),
      frictionThread: typed(lubricant?.frictionThread, 'one'),
      frictionBearing: typed(lubricant?.frictionBearing, 'one'),
      evidence: lubricant?.evidence ?? 'assumed',
      source: lubricant?.source ?? '',
    },
    target: targetForm(data),
    limits: {
      boltStressMax: typed(limits.boltStressMax, 'MPa'),
      boltStressMin: typed(limits.boltStressMin, 'MPa'),
      boltStressArea: limits.boltStressArea,
      flangeBoltStressMax: typed(limits.flangeBoltStressMax, 'MPa'),
      source: limits.source,
    },
    radialGap: typed(data.space.radialGap, 'mm'),
    remarks: data.remarks,
  };
}

function targetForm({ target }: JointData): JointForm['target'] {
  const form = { ...EMPTY_JOINT.target };
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

/**
 * Only what the chosen kinds need is sent; whether it is allowed is the service's to say. What the form doesn't show
 * is kept from the stored joint.
 */
export function jointInput(form: JointForm, stored: JointData | null): JointInput {
  return {
    ...stored,
    tag: form.tag,
    unitId: form.unitId,
    location: form.location,
    service: form.service,
    serviceTemperature: orNull(form.serviceTemperature),
    flange: flangeInput(form.flange),
    bolting: {
      ...stored?.bolting,
      count: form.bolting.count.trim() === '' ? null : Number(form.bolting.count),
      thread: textOrNull(form.bolting.thread),
      circle: orNull(form.bolting.circle),
      grade: textOrNull(form.bolting.grade),
      yieldStrength: orNull(form.bolting.yieldStrength),
      yieldOrigin: form.bolting.yieldOrigin,
      studLength: orNull(form.bolting.studLength),
      grip: orNull(form.bolting.grip),
      nutSeries: textOrNull(form.bolting.nutSeries) as JointInput['bolting']['nutSeries'],
    },
    gasket: gasketInput(form.gasket, stored),
    lubricant: lubricantInput(form.lubricant, stored),
    target: targetInput(form.target),
    limits: {
      ...stored?.limits,
      boltStressMax: orNull(form.limits.boltStressMax),
      boltStressMin: orNull(form.limits.boltStressMin),
      boltStressArea: form.limits.boltStressArea as StressArea,
      flangeBoltStressMax: orNull(form.limits.flangeBoltStressMax),
      source: form.limits.source,
    },
    space: { radialGap: orNull(form.radialGap) },
    remarks: form.remarks,
  };
}

function flangeInput(flange: JointForm['flange']): JointInput['flange'] {
  if (flange.kind === 'custom') return { kind: 'custom', description: flange.description };
  const { standard, size, rating, facing } = flange;
  return { kind: 'standard', standard, size, rating, facing } as JointInput['flange'];
}

function gasketInput(
  { type, thickness }: JointForm['gasket'],
  stored: JointData | null,
): JointInput['gasket'] {
  const nothing = type.trim() === '' && thickness.text.trim() === '';
  return nothing ? null : ({ ...stored?.gasket, type, thickness: orNull(thickness) } as JointInput['gasket']);
}

function lubricantInput(form: JointForm['lubricant'], stored: JointData | null): JointInput['lubricant'] {
  const values = {
    nutFactor: orNull(form.nutFactor),
    nutFactorCv: orNull(form.nutFactorCv),
    frictionThread: orNull(form.frictionThread),
    frictionBearing: orNull(form.frictionBearing),
  };
  const typedAny = Object.values(values).some((value) => value !== null);
  if (form.name.trim() === '' && form.batch.trim() === '' && !typedAny) return null;
  const evidence = form.evidence as NonNullable<JointInput['lubricant']>['evidence'];
  return {
    ...stored?.lubricant,
    name: form.name,
    batch: form.batch,
    ...values,
    evidence,
    source: form.source,
  };
}

function targetInput(form: JointForm['target']): JointInput['target'] {
  const area = form.area as StressArea;
  const { basis } = form;
  switch (form.mode) {
    case 'percent of yield':
      return { mode: 'percent of yield', percent: needed(form.percent), area, basis } as JointInput['target'];
    case 'bolt stress':
      return { mode: 'bolt stress', stress: needed(form.stress), area, basis } as JointInput['target'];
    case 'bolt load':
      return { mode: 'bolt load', load: needed(form.load), basis } as JointInput['target'];
    case 'torque':
      return { mode: 'torque', torque: needed(form.torque), basis } as JointInput['target'];
    default:
      return null;
  }
}
