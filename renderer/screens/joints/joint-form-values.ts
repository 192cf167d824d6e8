import type { JointData, JointInput } from '../../../core/contract/joint.ts';
import { blank, orNull, type Typed, textOrNull, typed } from '../../components/typed.ts';
import {
  type BoltingForm,
  type BoltSetForm,
  boltingForm,
  boltingInput,
  boltSetForm,
  boltSetInput,
  EMPTY_BOLTING,
  EMPTY_LIMITS,
  EMPTY_LUBRICANT,
  EMPTY_TARGET,
  type LimitsForm,
  type LubricantForm,
  limitsForm,
  limitsInput,
  lubricantForm,
  lubricantInput,
  type TargetForm,
  targetForm,
  targetInput,
} from './bolting-form-values.ts';
import {
  EMPTY_GASKET,
  firstGasketInput,
  type GasketForm,
  gasketForm,
  gasketInput,
} from './gasket-form-values.ts';
import { EMPTY_IDENTITY, type IdentityForm, identityForm, identityInput } from './identity-form-values.ts';
import {
  EMPTY_HOT,
  EMPTY_PRESSURES,
  EMPTY_RETIGHTENING,
  type HotForm,
  hotForm,
  hotInput,
  type PressuresForm,
  pressuresForm,
  pressuresInput,
  type RetighteningForm,
  retighteningForm,
  retighteningInput,
} from './service-form-values.ts';

/** Everything on the joint form, also what the chosen kind of flange or target doesn't need. */
export interface JointForm {
  tag: string;
  unitId: string;
  location: string;
  identity: IdentityForm;
  service: string;
  serviceTemperature: Typed;
  flange: {
    kind: 'standard' | 'custom';
    standard: string;
    size: string;
    rating: string;
    facing: string;
    description: string;
    /** Row of the site's flange table; empty for none. */
    siteRow: string;
  };
  flangeMaterial: string;
  bolting: BoltingForm;
  gasket: GasketForm;
  furtherGaskets: GasketForm[];
  lubricant: LubricantForm;
  target: TargetForm;
  limits: LimitsForm;
  radialGap: Typed;
  axialGap: Typed;
  pressures: PressuresForm;
  hot: HotForm;
  retightening: RetighteningForm;
  boltSets: BoltSetForm[];
  remarks: string;
}

export const EMPTY_JOINT: JointForm = {
  tag: '',
  unitId: '',
  location: '',
  identity: EMPTY_IDENTITY,
  service: '',
  serviceTemperature: blank('degC'),
  flange: {
    kind: 'standard',
    standard: 'ASME B16.5',
    size: '',
    rating: '',
    facing: 'raised face',
    description: '',
    siteRow: '',
  },
  flangeMaterial: '',
  bolting: EMPTY_BOLTING,
  gasket: EMPTY_GASKET,
  furtherGaskets: [],
  lubricant: EMPTY_LUBRICANT,
  target: EMPTY_TARGET,
  limits: EMPTY_LIMITS,
  radialGap: blank('mm'),
  axialGap: blank('mm'),
  pressures: EMPTY_PRESSURES,
  hot: EMPTY_HOT,
  retightening: EMPTY_RETIGHTENING,
  boltSets: [],
  remarks: '',
};

export function jointForm(data: JointData): JointForm {
  return {
    tag: data.tag,
    unitId: data.unitId,
    location: data.location,
    identity: identityForm(data),
    service: data.service,
    serviceTemperature: typed(data.serviceTemperature, 'degC'),
    flange: { ...EMPTY_JOINT.flange, ...data.flange, siteRow: siteRowOf(data) },
    flangeMaterial: data.flangeMaterial ?? '',
    bolting: boltingForm(data.bolting),
    gasket: gasketForm(data.gasket),
    furtherGaskets: data.furtherGaskets.map(gasketForm),
    lubricant: lubricantForm(data.lubricant),
    target: targetForm(data.target),
    limits: limitsForm(data.limits),
    radialGap: typed(data.space.radialGap, 'mm'),
    axialGap: typed(data.space.axialGap ?? null, 'mm'),
    pressures: pressuresForm(data.pressures),
    hot: hotForm(data.hot),
    retightening: retighteningForm(data.retightening),
    boltSets: data.boltSets.map(boltSetForm),
    remarks: data.remarks,
  };
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
    identity: identityInput(form.identity),
    service: form.service,
    serviceTemperature: orNull(form.serviceTemperature),
    flange: flangeInput(form.flange),
    flangeMaterial: textOrNull(form.flangeMaterial),
    bolting: boltingInput(form.bolting),
    gasket: firstGasketInput(form.gasket),
    furtherGaskets: form.furtherGaskets.map(gasketInput),
    lubricant: lubricantInput(form.lubricant),
    target: targetInput(form.target),
    limits: limitsInput(form.limits),
    space: { radialGap: orNull(form.radialGap), axialGap: orNull(form.axialGap) },
    pressures: pressuresInput(form.pressures),
    hot: hotInput(form.hot),
    retightening: retighteningInput(form.retightening),
    boltSets: form.boltSets.map(boltSetInput),
    remarks: form.remarks,
  };
}

const siteRowOf = ({ flange }: JointData) => (flange.kind === 'custom' ? (flange.siteRow ?? '') : '');

function flangeInput(flange: JointForm['flange']): JointInput['flange'] {
  if (flange.kind === 'custom') {
    return { kind: 'custom', description: flange.description, siteRow: textOrNull(flange.siteRow) };
  }
  const { standard, size, rating, facing } = flange;
  return { kind: 'standard', standard, size, rating, facing } as JointInput['flange'];
}
