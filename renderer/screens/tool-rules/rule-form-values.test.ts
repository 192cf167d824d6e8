import { expect, test } from 'vitest';
import { toolRuleData } from '../../../core/contract/check.ts';
import { emptyRule, groupsOf, type RuleForm, ruleForm, ruleInput } from './rule-form-values.ts';

const form = (changes: Partial<RuleForm>): RuleForm => ({
  ...emptyRule('hose'),
  dueAt: 'end of month',
  source: 'procedure 7, edition 2',
  ...changes,
});

test('a rule comes back as it was entered; what is empty asks nothing', () => {
  const stored = toolRuleData.parse(ruleInput(form({ hoseTestMonths: '12', hoseTestFactor: '1.5' })));
  expect(stored).toMatchObject({
    certificateDays: null,
    hoseAgeMonths: null,
    hoseTestMonths: 12,
    hoseTestFactor: 1.5,
    noticeDays: 30,
  });
  expect(toolRuleData.parse(ruleInput(ruleForm(stored)))).toEqual(stored);
});

test('what is no number, and an empty notice, are refused at their fields', () => {
  const input = ruleInput(form({ hoseAgeMonths: '6 years', noticeDays: '' }));
  const issues = toolRuleData.safeParse(input).error?.issues ?? [];
  expect(issues.map(({ path }) => path.join('.'))).toEqual(['noticeDays', 'hoseAgeMonths']);
});

test('each class has its own fields, and none hides a value that it holds', () => {
  expect(groupsOf(form({}))).toEqual({ certificate: false, hose: true, line: false });
  expect(groupsOf(form({ class: 'drive unit' }))).toEqual({ certificate: true, hose: false, line: true });
  expect(groupsOf(form({ class: 'pump' }))).toEqual({ certificate: false, hose: false, line: false });
  expect(groupsOf(form({ class: 'pump', certificateDays: '365' }))).toMatchObject({ certificate: true });
});
