import { expect, test } from 'vitest';
import { checklistData } from '../../../core/contract/check.ts';
import {
  type ChecklistForm,
  checklistForm,
  checklistInput,
  emptyChecklist,
} from './checklist-form-values.ts';

const question = (part: Partial<ChecklistForm['questions'][number]>) => ({
  text: 'Opens at',
  answer: 'pressure' as const,
  least: '',
  most: '',
  unit: 'psi',
  ...part,
});
const form = (...questions: ChecklistForm['questions']): ChecklistForm => ({
  ...emptyChecklist(),
  name: 'Relief valve',
  kind: 'function',
  classes: ['pump'],
  source: 'page 4',
  questions,
});

test('a range is stored in SI beside the unit it was entered in, and comes back as it was', () => {
  const input = checklistInput(form(question({ least: '8700', most: '10150' })));
  const stored = checklistData.parse(input);
  // 1 psi = 6894.757293 Pa (NIST SP 811, Appendix B).
  expect(stored.questions[0]?.least).toBeCloseTo(8700 * 6894.757293, 0);
  expect(checklistForm(stored).questions[0]).toMatchObject({ least: '8700', most: '10150', unit: 'psi' });
  expect(checklistInput(checklistForm(stored))).toEqual(stored);
});

test('a list that was entered without units comes back unchanged but for the unit it is shown in', () => {
  const stored = checklistData.parse(checklistInput(form(question({ unit: 'bar', least: '600' }))));
  const older = { ...stored, questions: stored.questions.map((each) => ({ ...each, unit: null })) };
  expect(checklistForm(older).questions[0]).toMatchObject({ least: '600', unit: 'bar' });
  expect(checklistInput(checklistForm(older)).questions[0]).toMatchObject({ least: 6e7, unit: 'bar' });
});

test('yes or no has no range, and a unit of another kind gives way', () => {
  const { questions } = checklistInput(
    form(
      question({ answer: 'yes or no', least: '5' }),
      question({ answer: 'torque', unit: 'psi', least: '5' }),
      question({ answer: 'number', least: '8', most: '16' }),
    ),
  );
  expect(questions).toMatchObject([
    { answer: 'yes or no', least: null, unit: null },
    { answer: 'torque', least: 5, unit: 'N.m' },
    { answer: 'number', least: 8, most: 16, unit: null },
  ]);
});

test('what is no number is refused at its field, not taken for empty', () => {
  const input = checklistInput({ ...form(question({ most: '7,5' })), everyDays: 'six' });
  const issues = checklistData.safeParse(input).error?.issues ?? [];
  expect(issues.map(({ path }) => path.join('.'))).toEqual(['questions.0.most', 'everyDays']);
});
