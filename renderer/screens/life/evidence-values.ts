import { withOffset } from '../../app/text/time.ts';
import { blank, orNull, type Typed } from '../../components/typed.ts';
import type { EvidenceField, EvidenceGroup } from './field-kinds.ts';

/** What stands in a field while it is typed: text, a quantity, ticks, or rows. */
type FormValue = string | Typed | FormTicks | FormRows;
export interface FormTicks {
  readonly ticked: readonly string[];
}
export interface FormRows {
  readonly rows: readonly FormEvidence[];
  readonly none: boolean;
}
export interface FormEvidence {
  [name: string]: FormValue | FormEvidence;
}

const allFields = (groups: readonly EvidenceGroup[]) => groups.flatMap(({ fields }) => fields);

/** A step's form before anything is entered. */
export const emptyEvidence = (groups: readonly EvidenceGroup[]): FormEvidence => emptyRow(allFields(groups));

export function emptyRow(fields: readonly EvidenceField[]): FormEvidence {
  const form: FormEvidence = {};
  for (const field of fields) put(form, field.name, emptyValue(field));
  return form;
}

function emptyValue(field: EvidenceField): FormValue {
  switch (field.kind) {
    case 'answer':
      return 'not known';
    case 'choice':
      return field.blank === undefined ? (field.options[0] ?? '') : '';
    case 'quantity':
      return blank(field.unit);
    case 'ticks':
      return { ticked: [] };
    case 'list':
      return { rows: Array.from({ length: field.start ?? 0 }, () => emptyRow(field.fields)), none: false };
    default:
      return '';
  }
}

/** What is sent of a form; blank fields are left out, which says that they are not known. */
export function evidenceInput(
  form: FormEvidence,
  groups: readonly EvidenceGroup[],
  timeZone: string,
): Record<string, unknown> {
  const evidence = rowInput(form, allFields(groups), timeZone);
  const measured = evidence.loadMeasurement as { method?: unknown } | undefined;
  // Loads without a method would be lost without a word; the register refuses them by name.
  if (measured !== undefined && Object.keys(measured).length === 0) delete evidence.loadMeasurement;
  return evidence;
}

function rowInput(form: FormEvidence, fields: readonly EvidenceField[], timeZone: string) {
  const input: Record<string, unknown> = {};
  for (const field of fields) {
    const value = valueInput(field, at(form, field.name), timeZone);
    if (value !== undefined) put(input, field.name, value);
  }
  return input;
}

function valueInput(field: EvidenceField, value: FormValue | FormEvidence | undefined, timeZone: string) {
  switch (field.kind) {
    case 'quantity':
      return orNull(value as Typed) ?? undefined;
    case 'ticks': {
      const { ticked } = value as FormTicks;
      if (ticked.length === 0) return undefined;
      return ticked.filter((one) => one !== field.none);
    }
    case 'list':
      return listInput(field, value as FormRows, timeZone);
    default:
      return textInput(field.kind, String(value ?? '').trim(), timeZone);
  }
}

type TextKind = Exclude<EvidenceField['kind'], 'quantity' | 'ticks' | 'list'>;

function textInput(kind: TextKind, text: string, timeZone: string): unknown {
  if (text === '') return undefined;
  switch (kind) {
    case 'whole':
      return wholeOrText(text);
    case 'moment':
      return withOffset(text, timeZone);
    case 'bolts':
    case 'lines': {
      if (text.toLowerCase() === 'none') return [];
      const parts = text.split(',').map((part) => part.trim());
      return kind === 'lines' ? parts : parts.map(wholeOrText);
    }
    default:
      return text;
  }
}

/** A number that can't be read is sent as typed, to be refused by name. */
const wholeOrText = (text: string) => (/^\d+$/.test(text) ? Number(text) : text);

type ListField = Extract<EvidenceField, { kind: 'list' }>;

/** Rows nobody touched are no rows. */
function listInput(field: ListField, { rows, none }: FormRows, timeZone: string) {
  const untouched = JSON.stringify(rowInput(emptyRow(field.fields), field.fields, timeZone));
  const filled = rows
    .map((row) => rowInput(row, field.fields, timeZone))
    .filter((row) => JSON.stringify(row) !== untouched);
  if (filled.length > 0) return filled;
  return none && field.none !== undefined ? [] : undefined;
}

export function at(form: FormEvidence, path: string): FormValue | FormEvidence | undefined {
  return path
    .split('.')
    .reduce<FormValue | FormEvidence | undefined>(
      (value, name) => (value as FormEvidence | undefined)?.[name],
      form,
    );
}

function put(into: Record<string, unknown>, path: string, value: unknown): void {
  const names = path.split('.');
  const last = names.pop() ?? path;
  let place = into;
  for (const name of names) {
    place[name] ??= {};
    place = place[name] as Record<string, unknown>;
  }
  place[last] = value;
}
