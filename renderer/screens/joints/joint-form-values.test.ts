import { expect, test } from 'vitest';
import { jointData } from '../../../core/contract/joint.ts';
import { EMPTY_JOINT, type JointForm, jointForm, jointInput } from './joint-form-values.ts';

const unitId = '01990000-0000-7000-8000-000000000001';
const started: JointForm = {
  ...EMPTY_JOINT,
  tag: 'J-1',
  unitId,
  flange: { ...EMPTY_JOINT.flange, size: '8', rating: '300' },
};

test('what is left empty is sent as not known', () => {
  const data = jointData.parse(jointInput(started, null));
  expect(data.bolting).toMatchObject({
    count: null,
    thread: null,
    circle: null,
    grip: null,
    nutSeries: null,
  });
  expect(data).toMatchObject({ gasket: null, lubricant: null, target: null, serviceTemperature: null });
});

test('a joint read back into the form and sent again is the same joint, digits as typed', () => {
  const form: JointForm = {
    ...started,
    bolting: {
      ...started.bolting,
      count: '12',
      thread: '7/8-9 UNC',
      grip: { text: '3-7/16', unit: 'in' },
      nutSeries: 'ASME B18.2.2 heavy hex',
    },
    lubricant: {
      ...started.lubricant,
      name: 'nickel-based anti-seize',
      nutFactor: { text: '0.160', unit: 'one' },
    },
    target: {
      ...started.target,
      mode: 'percent of yield',
      percent: { text: '50', unit: 'percent' },
      basis: 'BP-1',
    },
    radialGap: { text: '60', unit: 'mm' },
    axialGap: { text: '240', unit: 'mm' },
  };
  const once = jointData.parse(jointInput(form, null));
  const again = jointData.parse(jointInput(jointForm(once), once));
  expect(again).toEqual(once);
  expect(again.bolting.grip?.text).toBe('3-7/16');
  expect(again.lubricant?.nutFactor?.text).toBe('0.160');
});

test('a number of studs that is not a number is refused, not dropped', () => {
  const form = { ...started, bolting: { ...started.bolting, count: 'twelve' } };
  expect(jointData.safeParse(jointInput(form, null)).success).toBe(false);
});
