import { expect, test } from 'vitest';
import { passPlanData } from '../../../core/contract/site.ts';
import { emptyPlan, planForm, planInput } from './plan-form-values.ts';

test('a stored plan goes through the form unchanged', () => {
  const plan = passPlanData.parse({
    name: 'Halves',
    source: 'procedure 7',
    groupSize: 3,
    steps: [
      {
        name: 'Half',
        fraction: { text: '1/2', unit: 'one' },
        order: 'groups',
        tools: 2,
        stopWhen: 'it stalls',
      },
      {
        name: 'Full',
        fraction: { text: '100', unit: 'percent' },
        order: 'star',
        tools: 1,
        stopWhen: 'it stalls',
      },
    ],
    checks: ['gap at four places', 'no nut turns'],
    retired: true,
  });
  expect(passPlanData.parse(planInput(planForm(plan)))).toEqual(plan);
});

test('empty lines are no checks', () => {
  const checks = ' gap \n\n  \nturn';
  expect(planInput({ ...emptyPlan(), groupSize: ' ', checks })).toMatchObject({
    groupSize: null,
    checks: ['gap', 'turn'],
  });
});
