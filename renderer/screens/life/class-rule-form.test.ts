import { describe, expect, test } from 'vitest';
import { classRuleData } from '../../../core/contract/life.ts';
import { CLASS_RULES } from '../../../core/joint/life/class-rules.ts';
import { EMPTY_RULE, FIELDS_BY_GROUP, ruleForm, ruleInput } from './class-rule-form.ts';

describe.each(Object.values(CLASS_RULES))('$name', (rule) => {
  test('comes back from its form as it was', () => {
    expect(classRuleData.parse(ruleInput(ruleForm(rule)))).toEqual(rule);
  });

  test('with fields and signers of the site’s own as well', () => {
    const own = {
      ...rule,
      fields: ['gasket new' as const, 'leak test' as const],
      signs: [{ step: 'reinstate' as const, roles: ['engineer' as const] }],
    };
    expect(classRuleData.parse(ruleInput(ruleForm(own)))).toEqual({
      ...own,
      fields: expect.arrayContaining(own.fields),
    });
  });
});

test('what was typed and is no number is refused under its own name', () => {
  const typed = { ...EMPTY_RULE, name: 'A', level: 'mild' as const, source: 's', witnessPercent: 'ten' };
  const parsed = classRuleData.safeParse(ruleInput(typed));
  expect(parsed.error?.issues.map(({ path }) => path.join('.'))).toEqual(['witnessPercent']);
});

test('every field of the record stands in one group', () => {
  const names = [...FIELDS_BY_GROUP.values()].flat();
  expect(new Set(names).size).toBe(names.length);
  expect(names.length).toBeGreaterThan(80);
});
