import type { ChecklistInput, ToolRuleInput } from '../core/contract/check.ts';
import { HOSE_AGE_MONTHS } from './absences.ts';

/** The invented site took up its rules and lists this many days before today. */
export const RULES_SINCE_DAYS = 215;

const SOURCE = 'invented site rule TR-01, edition 2 (demo)';
const LIST_SOURCE =
  'invented site procedure TR-04, edition 1 (demo); a real site takes these from the tool’s own instructions';
const YEAR = 365;

/** What the invented site asks of each class of tool. */
export const TOOL_RULES: readonly ToolRuleInput[] = [
  {
    class: 'drive unit',
    certificateDays: YEAR,
    certificateUses: 400,
    dueAt: 'exact day',
    lineAgreement: { text: '3', unit: 'percent' },
    source: SOURCE,
  },
  { class: 'gauge', certificateDays: YEAR, certificateUses: null, dueAt: 'exact day', source: SOURCE },
  {
    class: 'hand torque wrench',
    certificateDays: YEAR,
    certificateUses: null,
    dueAt: 'exact day',
    source: SOURCE,
  },
  {
    class: 'hose',
    certificateDays: null,
    certificateUses: null,
    dueAt: 'end of month',
    noticeDays: 60,
    hoseAgeMonths: HOSE_AGE_MONTHS,
    hoseTestMonths: 12,
    hoseTestFactor: 1.5,
    source: SOURCE,
  },
  { class: 'pump', certificateDays: null, certificateUses: null, dueAt: 'end of month', source: SOURCE },
];

const yesNo = (text: string) => ({ text, answer: 'yes or no' }) as const;

const list = (
  name: string,
  kind: ChecklistInput['kind'],
  classes: ChecklistInput['classes'],
  everyDays: number | null,
  questions: ChecklistInput['questions'],
): ChecklistInput => ({
  name,
  kind,
  classes,
  questions,
  source: LIST_SOURCE,
  everyDays,
  everyUses: null,
});

export const SEALS = 'Seal inspection';
export const LEAK = 'Leak test at rated pressure';
export const COMPARISON = 'Comparison on the reference cell';
export const GAUGE_COMPARISON = 'Comparison with the reference gauge';
export const ZERO = 'Zero of the gauge';
export const CLEANING = 'Cleaning and lubrication';
export const FASTENERS = 'Fasteners and reaction member';

/** Lists of checks; the comparisons are done on the wrenches that work most, and asked of none. */
export const CHECKLISTS: readonly ChecklistInput[] = [
  list(SEALS, 'seal inspection', ['drive unit', 'pump'], 180, [
    yesNo('Pressure is off and the lines are disconnected'),
    yesNo('No oil at the piston rod, swivel or couplings'),
    yesNo('Seals not cut, hardened or extruded'),
  ]),
  list(LEAK, 'leak test', ['drive unit', 'pump'], 365, [
    yesNo('Nobody stands in line with hoses and couplings while it is under pressure'),
    yesNo('No oil seen on the advance side'),
    yesNo('No oil seen on the retract side'),
  ]),
  list(COMPARISON, 'comparison', ['drive unit'], null, [
    yesNo('The reference cell is in date'),
    yesNo('Set up as in use: reaction member on a firm stop, hands clear'),
  ]),
  list(GAUGE_COMPARISON, 'comparison', ['gauge'], null, [yesNo('The reference gauge is in date')]),
  list(ZERO, 'zero of the gauge', ['gauge'], 60, [
    yesNo('The pointer stands within its zero mark with no pressure on'),
    yesNo('Glass and face whole, one unit used'),
  ]),
  list(CLEANING, 'cleaning and lubrication', ['drive unit'], 120, [
    yesNo('Old grease and dirt removed'),
    yesNo('Ratchet teeth dry: no lubricant on them (common practice)'),
    yesNo('Sliding faces lubricated as the tool’s own instructions say'),
  ]),
  list(FASTENERS, 'fasteners', ['drive unit'], 180, [
    yesNo('All screws and pins there and tight'),
    yesNo('Reaction member without cracks or bends'),
  ]),
];
