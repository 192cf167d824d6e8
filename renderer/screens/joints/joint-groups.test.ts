import { expect, test } from 'vitest';
import { jointData } from '../../../core/contract/joint.ts';
import { EMPTY_BOLT_SET } from './bolting-form-values.ts';
import { EMPTY_GASKET } from './gasket-form-values.ts';
import { EMPTY_JOINT, type JointForm, jointForm, jointInput } from './joint-form-values.ts';
import { jointGroups } from './joint-groups.ts';

const girth: JointForm = {
  ...EMPTY_JOINT,
  tag: 'J-1',
  unitId: '01990000-0000-7000-8000-000000000001',
  flange: { ...EMPTY_JOINT.flange, kind: 'custom', description: 'girth joint' },
  gasket: {
    ...EMPTY_GASKET,
    type: 'flat, graphite faced',
    kind: 'flat',
    contactInside: { text: '980', unit: 'mm' },
    factorM: { text: '2.75', unit: 'one' },
    source: 'data sheet 4',
  },
  furtherGaskets: [{ ...EMPTY_GASKET, type: 'flat, shell side' }],
  pressures: {
    ...EMPTY_JOINT.pressures,
    design: { pressure: { text: '40', unit: 'bar' }, temperature: { text: '250', unit: 'degC' } },
  },
  retightening: { ...EMPTY_JOINT.retightening, gasketExcluded: 'no' },
  boltSets: [{ ...EMPTY_BOLT_SET, name: 'inner', bolting: { ...EMPTY_BOLT_SET.bolting, count: '8' } }],
};

test('gasket data, pressures, retightening and bolt sets survive the way through the form', () => {
  const once = jointData.parse(jointInput(girth, null));
  expect(once.gasket?.contactInside?.si).toBe(0.98);
  expect(once.pressures.design.pressure?.si).toBe(4e6);
  expect(once.retightening.gasketExcluded).toBe(false);
  expect(once.boltSets[0]).toMatchObject({ name: 'inner', bolting: { count: 8 }, lubricant: null });
  expect(jointData.parse(jointInput(jointForm(once), once))).toEqual(once);
});

test('each part of the page names its source, and null is left for the words "not known"', () => {
  const groups = jointGroups(jointData.parse(jointInput(girth, null)));
  expect(groups.map(({ name }) => name)).toEqual([
    'Identity',
    'Thread and nut strength',
    'Gasket data sheet',
    'Gasket 2 in series',
    'Pressure cases',
    'Hot service',
    'Retightening',
    'Bolt set inner',
  ]);
  const line = (group: string, name: string) =>
    groups.find((each) => each.name === group)?.lines.find((each) => each.name === name);
  expect(line('Gasket data sheet', 'Factor m')).toMatchObject({ text: '2.75', source: 'data sheet 4' });
  expect(line('Gasket data sheet', 'Target stress')).toMatchObject({ text: null, source: '' });
  expect(line('Pressure cases', 'Pressure, design')?.text).toBe('40 bar');
  expect(line('Retightening', 'Gasket excluded')?.text).toBe('no');
});
