import type { CheckInput, CheckKind, ChecklistRow } from '../../../core/contract/check.ts';
import type { FieldFault } from '../../../core/contract/errors.ts';
import type { RequestInput } from '../../../core/contract/requests.ts';
import type { ToolData } from '../../../core/contract/tool.ts';
import { answerUnit } from '../../../core/text/check-words.ts';
import { enter } from '../../../core/units/entered.ts';
import type { Unit } from '../../../core/units/units.ts';
import { withOffset } from '../../app/text/time.ts';
import { blank, needed, orNull, type Typed } from '../../components/typed.ts';

export interface ComparisonRow {
  /** Where a wrench was dialled; a gauge shows it and a hand torque wrench has none. */
  pressure: string;
  intended: string;
  reference: string;
}

/** "yes", "no", or a number as typed; empty text is not answered. */
export type AnswerForm = Typed;

export interface CheckForm {
  /** Id of the list that is followed, or "none"; empty while nothing is chosen. */
  listId: string;
  /** Kind of a check without a list. */
  kind: string;
  /** By list, so that another list does not take over what was answered to this one. */
  answers: Record<string, AnswerForm[]>;
  pressureUnit: string;
  intendedUnit: string;
  referenceUnit: string;
  rows: ComparisonRow[];
  limit: Typed;
  leak: { pressure: Typed; minutes: string; fallAdvance: Typed; fallRetract: Typed };
  result: string;
  happenedAt: string;
  personId: string;
  remarks: string;
}

export const blankComparison = (): ComparisonRow => ({ pressure: '', intended: '', reference: '' });

/** Units are the tool's own where it shows one; what the reference reads in is for the person to say. */
export function emptyCheck({ properties }: ToolData, lists: readonly ChecklistRow[], now: string): CheckForm {
  const own =
    properties.class === 'gauge'
      ? properties.scaleMax.unit
      : properties.class === 'hand torque wrench'
        ? properties.most.unit
        : '';
  const pressure = 'ratedPressure' in properties ? properties.ratedPressure.unit : 'bar';
  return {
    listId: '',
    kind: '',
    answers: Object.fromEntries(
      lists.map(({ id, data }) => [
        id,
        data.questions.map((question) => blank(answerUnit(question) ?? 'one')),
      ]),
    ),
    pressureUnit: '',
    intendedUnit: own,
    referenceUnit: '',
    rows: [blankComparison()],
    limit: blank('percent'),
    leak: {
      pressure: blank(pressure),
      minutes: '',
      fallAdvance: blank(pressure),
      fallRetract: blank(pressure),
    },
    result: '',
    happenedAt: now,
    personId: '',
    remarks: '',
  };
}

/** Lists that are in use for a tool's class, in the order of their names. */
export const listsFor = (lists: readonly ChecklistRow[], { properties }: ToolData): ChecklistRow[] =>
  lists.filter(({ data }) => !data.retired && data.classes.includes(properties.class));

export const WITHOUT_LIST = 'none';

export function chosenKind(form: Pick<CheckForm, 'listId' | 'kind'>, list: ChecklistRow | null) {
  const kind = list === null ? form.kind : list.data.kind;
  return kind === '' ? null : (kind as CheckKind);
}

/** Kinds that hold pressure, of which the fall is recorded. */
export const holdsPressure = (kind: CheckKind | null): boolean =>
  kind === 'leak test' || kind === 'pressure test';

/** What a comparison on a tool of a class is made of; null where the class shows nothing to compare. */
export function comparedOf({ properties }: ToolData): 'torque at pressure' | 'torque' | 'pressure' | null {
  if (properties.class === 'drive unit') return 'torque at pressure';
  if (properties.class === 'hand torque wrench') return 'torque';
  return properties.class === 'gauge' ? 'pressure' : null;
}

const isFilled = ({ pressure, intended, reference }: ComparisonRow) =>
  `${pressure}${intended}${reference}`.trim() !== '';

/** Place of a row among those that are sent; null for one in which nothing is typed. */
export function sentPlace(rows: readonly ComparisonRow[], at: number): number | null {
  const row = rows[at];
  return row !== undefined && isFilled(row) ? rows.slice(0, at).filter(isFilled).length : null;
}

// The list of units per quantity is the schema's to check; an unchosen unit comes back as a named fault.
const quantity = (text: string, unit: string) => ({ text, unit }) as { text: string; unit: never };

function comparisonsInput(form: CheckForm, tool: ToolData): NonNullable<CheckInput['comparisons']> {
  const compared = comparedOf(tool);
  return form.rows.filter(isFilled).map(({ pressure, intended, reference }) => ({
    // A gauge is dialled at what it shows.
    pressure:
      compared === 'torque at pressure'
        ? quantity(pressure, form.pressureUnit)
        : compared === 'pressure'
          ? quantity(intended, form.intendedUnit)
          : null,
    intended: quantity(intended, form.intendedUnit),
    reference: quantity(reference, form.referenceUnit),
  }));
}

/** Answers in the order of the list's questions; what can't be read is sent as typed, to be refused by name. */
export function answersInput(
  { answers }: CheckForm,
  list: ChecklistRow | null,
): NonNullable<CheckInput['answers']> {
  if (list === null) return [];
  const given = answers[list.id] ?? [];
  return list.data.questions.map((question, at) => {
    const answer = given[at];
    // A draft of an earlier version of the list may lack the question.
    const text = answer?.text?.trim() ?? '';
    if (answer === undefined || text === '') return null;
    if (question.answer === 'yes or no') return text === 'yes';
    return enter(text, unitOf(answer, question))?.si ?? (text as never);
  });
}

type Question = ChecklistRow['data']['questions'][number];

/** A plain number has no unit: it is read as it stands. */
const unitOf = (answer: AnswerForm, question: Question): Unit =>
  answerUnit(question) === null ? 'one' : answer.unit;

export function checkInput(
  form: CheckForm,
  toolId: string,
  tool: ToolData,
  list: ChecklistRow | null,
  timeZone: string,
): CheckInput {
  const kind = chosenKind(form, list);
  const compares = kind === 'comparison';
  return {
    toolId,
    kind: kind ?? ('' as CheckKind),
    happenedAt: form.happenedAt === '' ? '' : withOffset(form.happenedAt, timeZone),
    personId: form.personId,
    checklist: list === null ? null : { id: list.id, version: list.version },
    answers: answersInput(form, list),
    comparisons: compares ? comparisonsInput(form, tool) : [],
    limit: compares ? (orNull(form.limit) as CheckInput['limit']) : null,
    leak: holdsPressure(kind) ? leakInput(form) : null,
    result: form.result as CheckInput['result'],
    remarks: form.remarks,
  };
}

/** Null only where nothing was typed: what was measured is not dropped, its gaps are named instead. */
function leakInput({ leak }: CheckForm): CheckInput['leak'] {
  const { pressure, minutes, fallAdvance, fallRetract } = leak;
  const typed = [pressure.text, minutes, fallAdvance.text, fallRetract.text];
  if (typed.every((text) => text.trim() === '')) return null;
  return {
    pressure: needed(pressure),
    minutes: enter(minutes, 'one')?.si ?? (minutes as never),
    fallAdvance: orNull(fallAdvance),
    fallRetract: orNull(fallRetract),
  } as CheckInput['leak'];
}

export type DraftInput = RequestInput<'check.assess'>['data'];

/** What is known of the check while it is typed; a value that can't be read yet counts as missing. */
export function checkDraft(
  form: CheckForm,
  toolId: string,
  tool: ToolData,
  list: ChecklistRow | null,
  on: string,
): DraftInput {
  const readable = <V extends { text: string; unit: string }>(value: V | null) =>
    value !== null && value.unit !== '' && enter(value.text, value.unit as Unit) !== null ? value : null;
  const compares = chosenKind(form, list) === 'comparison';
  return {
    toolId,
    on,
    checklist: list === null ? null : { id: list.id, version: list.version },
    answers: answersInput(form, list).map((answer) => (typeof answer === 'string' ? null : answer)),
    limit: compares ? readable(orNull(form.limit)) : null,
    comparisons: (compares ? comparisonsInput(form, tool) : []).map((row) => ({
      pressure: readable(row.pressure),
      intended: readable(row.intended),
      reference: readable(row.reference),
    })),
  };
}

/** At the form's own rows, and a unit that is not chosen once at its own field instead of once for each row. */
export function checkFaults(faults: readonly FieldFault[], rows: readonly ComparisonRow[]): FieldFault[] {
  const sent = rows.flatMap((row, at) => (isFilled(row) ? [at] : []));
  const named = new Map<string, FieldFault>();
  for (const fault of faults) {
    const [, row, column, unit] = /^data\.comparisons\.(\d+)\.(\w+)(\.unit)?/.exec(fault.field) ?? [];
    const placed =
      unit === undefined
        ? row === undefined
          ? fault
          : { ...fault, field: `data.comparisons.${sent[Number(row)] ?? row}.${column}` }
        : { field: `data.${column}Unit`, value: '', allowed: 'needed: choose the unit' };
    if (!named.has(placed.field)) named.set(placed.field, placed);
  }
  return [...named.values()];
}
