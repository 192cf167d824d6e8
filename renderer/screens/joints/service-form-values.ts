import type { JointData, JointInput } from '../../../core/contract/joint.ts';
import type { Unit } from '../../../core/units/units.ts';
import { blanks, orNullEach, type Typed, typedEach } from '../../components/typed.ts';

export const PRESSURE_CASES = ['design', 'operating', 'test'] as const;
const CASE_UNITS = { pressure: 'bar', temperature: 'degC' } as const satisfies Record<string, Unit>;

export type PressuresForm = Record<
  (typeof PRESSURE_CASES)[number],
  Record<keyof typeof CASE_UNITS, Typed>
> & { source: string };

export const EMPTY_PRESSURES: PressuresForm = {
  design: blanks(CASE_UNITS),
  operating: blanks(CASE_UNITS),
  test: blanks(CASE_UNITS),
  source: '',
};

export const pressuresForm = (pressures: JointData['pressures']): PressuresForm => ({
  design: typedEach(pressures.design, CASE_UNITS),
  operating: typedEach(pressures.operating, CASE_UNITS),
  test: typedEach(pressures.test, CASE_UNITS),
  source: pressures.source,
});

export const pressuresInput = (form: PressuresForm): JointInput['pressures'] => ({
  design: orNullEach(form.design, CASE_UNITS),
  operating: orNullEach(form.operating, CASE_UNITS),
  test: orNullEach(form.test, CASE_UNITS),
  source: form.source,
});

const HOT_UNITS = {
  assemblyTemperature: 'degC',
  boltTemperature: 'degC',
  flangeTemperature: 'degC',
  boltExpansion: 'um/m.K',
  flangeExpansion: 'um/m.K',
  boltModulus: 'MPa',
  boltModulusHot: 'MPa',
  boltYieldHot: 'MPa',
  jointStiffness: 'kN/mm',
} as const satisfies Record<string, Unit>;

export type HotForm = Record<keyof typeof HOT_UNITS, Typed> & { source: string };

export const EMPTY_HOT: HotForm = { ...blanks(HOT_UNITS), source: '' };

export const hotForm = (hot: JointData['hot']): HotForm => ({
  ...typedEach(hot, HOT_UNITS),
  source: hot.source,
});

export const hotInput = (form: HotForm): JointInput['hot'] => ({
  ...orNullEach(form, HOT_UNITS),
  source: form.source,
});

const WINDOW_UNITS = { from: 'degC', to: 'degC' } as const satisfies Record<string, Unit>;

/** `gasketExcluded` is "yes", "no", or empty while the site has not said. */
export type RetighteningForm = Record<keyof typeof WINDOW_UNITS, Typed> & {
  procedure: string;
  gasketExcluded: string;
};

export const EMPTY_RETIGHTENING: RetighteningForm = {
  ...blanks(WINDOW_UNITS),
  procedure: '',
  gasketExcluded: '',
};

export const retighteningForm = (retightening: JointData['retightening']): RetighteningForm => ({
  ...typedEach(retightening, WINDOW_UNITS),
  procedure: retightening.procedure,
  gasketExcluded: retightening.gasketExcluded === null ? '' : retightening.gasketExcluded ? 'yes' : 'no',
});

export const retighteningInput = (form: RetighteningForm): JointInput['retightening'] => ({
  ...orNullEach(form, WINDOW_UNITS),
  procedure: form.procedure,
  gasketExcluded: form.gasketExcluded === '' ? null : form.gasketExcluded === 'yes',
});
