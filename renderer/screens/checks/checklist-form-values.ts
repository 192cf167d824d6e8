import type { CheckKind, ChecklistData, ChecklistInput } from '../../../core/contract/check.ts';
import type { ToolClass } from '../../../core/contract/tool.ts';
import { answerUnit } from '../../../core/text/check-words.ts';
import { enter } from '../../../core/units/entered.ts';
import { fromSI, UNITS, type Unit } from '../../../core/units/units.ts';

type Question = ChecklistData['questions'][number];

export interface QuestionForm {
  text: string;
  answer: Question['answer'];
  least: string;
  most: string;
  unit: string;
}

export interface ChecklistForm {
  name: string;
  kind: string;
  classes: ToolClass[];
  questions: QuestionForm[];
  source: string;
  everyDays: string;
  everyUses: string;
  overdue: ChecklistData['overdue'];
  retired: boolean;
}

export const blankQuestion = (): QuestionForm => ({
  text: '',
  answer: 'yes or no',
  least: '',
  most: '',
  unit: 'bar',
});

export const emptyChecklist = (): ChecklistForm => ({
  name: '',
  kind: '',
  classes: [],
  questions: [blankQuestion()],
  source: '',
  everyDays: '',
  everyUses: '',
  overdue: 'warn',
  retired: false,
});

/** Stored with as many digits as a frozen card; shown with fewer, so that what was typed comes back as it was. */
const DIGITS = { stored: 12, shown: 10 };

export function checklistForm(data: ChecklistData): ChecklistForm {
  return {
    name: data.name,
    kind: data.kind,
    classes: [...data.classes],
    questions: data.questions.map(questionForm),
    source: data.source,
    everyDays: data.everyDays === null ? '' : String(data.everyDays),
    everyUses: data.everyUses === null ? '' : String(data.everyUses),
    overdue: data.overdue,
    retired: data.retired,
  };
}

function questionForm(question: Question): QuestionForm {
  const unit = answerUnit(question);
  const shown = (value: number | null) =>
    value === null
      ? ''
      : String(Number((unit === null ? value : fromSI(value, unit)).toPrecision(DIGITS.shown)));
  return {
    text: question.text,
    answer: question.answer,
    least: shown(question.least),
    most: shown(question.most),
    unit: unit ?? 'bar',
  };
}

/** Counts that are no numbers are sent as typed, to be refused by name. */
export function checklistInput(form: ChecklistForm): ChecklistInput {
  const whole = (text: string) =>
    text.trim() === '' ? null : (enter(text, 'one')?.si ?? (text as unknown as number));
  return {
    name: form.name,
    kind: form.kind as CheckKind,
    classes: form.classes,
    questions: form.questions.map(questionInput),
    source: form.source,
    everyDays: whole(form.everyDays),
    everyUses: whole(form.everyUses),
    overdue: form.overdue,
    retired: form.retired,
  };
}

/** A range belongs to a measured answer; what was typed for another kind stays on the form and is not sent. */
function questionInput({
  text,
  answer,
  least,
  most,
  unit,
}: QuestionForm): ChecklistInput['questions'][number] {
  if (answer === 'yes or no') return { text, answer, least: null, most: null, unit: null };
  const asked = answer === 'number' ? null : unitOf(answer, unit);
  const si = (typed: string) =>
    typed.trim() === '' ? null : (rounded(enter(typed, asked ?? 'one')?.si) ?? (typed as unknown as number));
  return { text, answer, least: si(least), most: si(most), unit: asked as never };
}

/** A unit left over from another kind of answer gives way to the usual one. */
function unitOf(answer: 'pressure' | 'torque', unit: string): Unit {
  const known = Object.hasOwn(UNITS, unit) && UNITS[unit as Unit].quantity === answer;
  return known ? (unit as Unit) : answer === 'pressure' ? 'bar' : 'N.m';
}

const rounded = (value: number | undefined) =>
  value === undefined ? undefined : Number(value.toPrecision(DIGITS.stored));
