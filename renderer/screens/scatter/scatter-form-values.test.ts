import { expect, test } from 'vitest';
import { scatterInput } from '../../../core/contract/scatter.ts';
import { askedOf, emptyValues, measuredFault } from './scatter-form-values.ts';

const JOINT = '00000000-0000-7000-8000-000000000001';

test('what is left blank is not asked with a number, and a plan is not compared with itself', () => {
  const values = emptyValues('staged-thirds');
  const asked = scatterInput.parse(askedOf(JOINT, { ...values, second: 'staged-thirds' }));
  expect(asked.ring).toEqual({ width: null, thickness: null, modulus: null, radius: null });
  expect([asked.gasketStiffness, asked.target, asked.planIds]).toEqual([null, null, ['staged-thirds']]);
});

test('what is typed goes out as typed, in its unit', () => {
  const values = emptyValues('staged-thirds');
  const rest = { ...values.rest, gasketStiffness: { text: '2500', unit: 'MPa' as const } };
  const asked = scatterInput.parse(askedOf(JOINT, { ...values, rest, second: 'pcc-1-legacy' }));
  expect(asked.gasketStiffness).toMatchObject({ text: '2500', unit: 'MPa', si: 2.5e9 });
  expect(asked.planIds).toEqual(['staged-thirds', 'pcc-1-legacy']);
});

test('measured loads are read line by line, and the first that can’t be read is named', () => {
  const values = { ...emptyValues('staged-thirds'), measured: '2 1 104.5\n2;3;99\n3, 1, 101' };
  expect(measuredFault(values.measured)).toBeNull();
  const asked = scatterInput.parse(askedOf(JOINT, values));
  expect(
    asked.measured.map(({ afterPass, loads }) => [afterPass, loads.map(({ bolt, load }) => [bolt, load.si])]),
  ).toEqual([
    [
      2,
      [
        [1, 104_500],
        [3, 99_000],
      ],
    ],
    [3, [[1, 101_000]]],
  ]);
  expect(measuredFault('2 1 104.5\nthree 1 5')).toMatch(/^"three 1 5": a line is pass, bolt and load/);
  expect(measuredFault('')).toBeNull();
});
