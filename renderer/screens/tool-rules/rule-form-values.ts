import type { ToolRuleData, ToolRuleInput } from '../../../core/contract/check.ts';
import type { ToolClass } from '../../../core/contract/tool.ts';
import { CERTIFIED } from '../../../core/tools/certified.ts';
import { enter } from '../../../core/units/entered.ts';
import { blank, orNull, type Typed, typed } from '../../components/typed.ts';

export interface RuleForm {
  class: ToolClass | '';
  certificateDays: string;
  certificateUses: string;
  dueAt: string;
  noticeDays: string;
  hoseUseMonths: string;
  hoseAgeMonths: string;
  hoseTestMonths: string;
  hoseTestFactor: string;
  lineAgreement: Typed;
  source: string;
}

const DEFAULT_NOTICE_DAYS = '30';

export const emptyRule = (toolClass: ToolClass | ''): RuleForm => ({
  class: toolClass,
  certificateDays: '',
  certificateUses: '',
  dueAt: '',
  noticeDays: DEFAULT_NOTICE_DAYS,
  hoseUseMonths: '',
  hoseAgeMonths: '',
  hoseTestMonths: '',
  hoseTestFactor: '',
  lineAgreement: blank('percent'),
  source: '',
});

const text = (value: number | null) => (value === null ? '' : String(value));

export const ruleForm = (data: ToolRuleData): RuleForm => ({
  class: data.class,
  certificateDays: text(data.certificateDays),
  certificateUses: text(data.certificateUses),
  dueAt: data.dueAt,
  noticeDays: text(data.noticeDays),
  hoseUseMonths: text(data.hoseUseMonths),
  hoseAgeMonths: text(data.hoseAgeMonths),
  hoseTestMonths: text(data.hoseTestMonths),
  hoseTestFactor: text(data.hoseTestFactor),
  lineAgreement: typed(data.lineAgreement, 'percent'),
  source: data.source,
});

const CERTIFICATE = ['certificateDays', 'certificateUses'] as const;
const HOSE = ['hoseAgeMonths', 'hoseUseMonths', 'hoseTestMonths', 'hoseTestFactor'] as const;

/** Groups of fields a class's rule has; one that holds something is shown for any class, so that nothing hides. */
export function groupsOf(form: RuleForm): { certificate: boolean; hose: boolean; line: boolean } {
  const holds = (names: readonly (keyof RuleForm)[]) =>
    names.some((name) => typeof form[name] === 'string' && form[name].trim() !== '');
  return {
    certificate: CERTIFIED.some((each) => each === form.class) || holds(CERTIFICATE),
    hose: form.class === 'hose' || holds(HOSE),
    line: form.class === 'drive unit' || form.lineAgreement.text.trim() !== '',
  };
}

/** A number that can't be read is sent as typed, to be refused by name. */
export function ruleInput(form: RuleForm): ToolRuleInput {
  const number = (typed: string) =>
    typed.trim() === '' ? null : (enter(typed, 'one')?.si ?? (typed as unknown as number));
  return {
    class: form.class as ToolClass,
    certificateDays: number(form.certificateDays),
    certificateUses: number(form.certificateUses),
    dueAt: form.dueAt as ToolRuleInput['dueAt'],
    noticeDays: number(form.noticeDays) ?? ('' as unknown as number),
    hoseUseMonths: number(form.hoseUseMonths),
    hoseAgeMonths: number(form.hoseAgeMonths),
    hoseTestMonths: number(form.hoseTestMonths),
    hoseTestFactor: number(form.hoseTestFactor),
    lineAgreement: orNull(form.lineAgreement) as ToolRuleInput['lineAgreement'],
    source: form.source,
  };
}
