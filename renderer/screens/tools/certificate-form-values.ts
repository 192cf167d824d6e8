import type { EntryDoubt } from '../../../core/contract/certificate-view.ts';
import type { CertificateInput, ToolClass } from '../../../core/contract/tool.ts';
import { enter } from '../../../core/units/entered.ts';
import type { Unit } from '../../../core/units/units.ts';
import { blank, needed, orNull, type Typed } from '../../components/typed.ts';

export interface PointRow {
  /** Pressure of a wrench, what the gauge showed, or what a hand torque wrench was set to. */
  first: string;
  /** Torque, or the reference's reading. */
  second: string;
  direction: 'up' | 'down';
  /** Expanded uncertainty of this point alone; drafts of an earlier version have none. */
  uncertainty?: string;
}

export interface CertificateForm {
  number: string;
  laboratory: string;
  calibratedOn: string;
  validUntil: string;
  validityBasis: string;
  result: string;
  condition: string;
  method: string;
  withToolIds: string[];
  pressureUnit: string;
  torqueUnit: string;
  rows: PointRow[];
  /** The tool was adjusted, and its points on arrival are known. */
  adjusted: boolean;
  foundRows: PointRow[];
  expandedUncertainty: Typed;
  coverageFactor: string;
  environment: { temperature: Typed; humidity: Typed };
  decisionRule: { limit: Typed; guardBand: boolean };
  /** What was confirmed, as it stood then: a doubt that has changed since has to be confirmed again. */
  confirmed: string[];
  remarks: string;
}

const ROW: PointRow = { first: '', second: '', direction: 'up', uncertainty: '' };
export const blankRow = (): PointRow => ({ ...ROW });
const blankRows = () => Array.from({ length: 5 }, blankRow);

/** Units have no default: a certificate in psi must not be taken for one in bar. */
export const EMPTY_CERTIFICATE: CertificateForm = {
  number: '',
  laboratory: '',
  calibratedOn: '',
  validUntil: '',
  validityBasis: '',
  result: '',
  condition: '',
  method: '',
  withToolIds: [],
  pressureUnit: '',
  torqueUnit: '',
  rows: blankRows(),
  adjusted: false,
  foundRows: blankRows(),
  expandedUncertainty: blank('percent'),
  coverageFactor: '2',
  environment: { temperature: blank('degC'), humidity: blank('percent') },
  decisionRule: { limit: blank('percent'), guardBand: false },
  confirmed: [],
  remarks: '',
};

export type Measured = CertificateInput['measured']['kind'];

/** What is measured on a tool of a class; classes that carry no certificate of their own count as a wrench's part. */
export function measuredOf(toolClass: ToolClass): Measured {
  if (toolClass === 'gauge') return 'gauge';
  return toolClass === 'hand torque wrench' ? 'hand torque' : 'pressure-torque';
}

export const isFilled = ({ first, second }: PointRow): boolean => first.trim() !== '' || second.trim() !== '';

const filled = (rows: readonly PointRow[]) => rows.filter(isFilled);

export function certificateInput(
  form: CertificateForm,
  toolId: string,
  kind: Measured,
  doubts: readonly EntryDoubt[],
): CertificateInput {
  const { environment, decisionRule } = form;
  const surroundings = {
    temperature: orNull(environment.temperature),
    humidity: orNull(environment.humidity),
  } as CertificateInput['environment'];
  const rule = { ...decisionRule, limit: needed(decisionRule.limit) } as CertificateInput['decisionRule'];
  return {
    number: form.number,
    toolId,
    withToolIds: form.withToolIds,
    laboratory: form.laboratory,
    calibratedOn: form.calibratedOn,
    validUntil: form.validUntil,
    validityBasis: form.validityBasis,
    result: form.result as CertificateInput['result'],
    condition: form.condition as CertificateInput['condition'],
    measured: MEASURED_INPUT[kind](form.rows, form),
    asFound: form.adjusted ? MEASURED_INPUT[kind](form.foundRows, form) : null,
    method: form.method,
    environment: surroundings?.temperature || surroundings?.humidity ? surroundings : null,
    // A guard band without a limit is sent as it stands, to be named as a fault.
    decisionRule: orNull(decisionRule.limit) === null && !decisionRule.guardBand ? null : rule,
    confirmed: confirmedCodes(form.confirmed, doubts),
    remarks: form.remarks,
  };
}

/** The same while it is being typed: what the points say does not depend on the texts that are still missing. */
export function assessable(
  form: CertificateForm,
  toolId: string,
  kind: Measured,
  today: string,
): CertificateInput {
  const input = certificateInput(form, toolId, kind, []);
  const stated = (text: string) => text.trim() || 'not entered';
  const calibratedOn = form.calibratedOn || today;
  return {
    ...input,
    number: stated(form.number),
    laboratory: stated(form.laboratory),
    validityBasis: stated(form.validityBasis),
    calibratedOn,
    validUntil: form.validUntil || calibratedOn,
    result: input.result || 'no limits stated',
    condition: input.condition || 'as left',
    method: '',
    remarks: '',
  };
}

/** One doubt of several points is confirmed once, for the points it stood on then. */
export interface OpenDoubt {
  readonly code: EntryDoubt['code'];
  readonly texts: readonly string[];
  readonly key: string;
}

export function openDoubts(doubts: readonly EntryDoubt[]): OpenDoubt[] {
  const open = doubts.filter(({ refuses }) => !refuses);
  return [...Map.groupBy(open, ({ code }) => code)].map(([code, same]) => {
    const texts = same.map(({ series, text }) => (series === 'as found' ? `as found, ${text}` : text));
    return { code, texts, key: [code, ...texts].join('\n') };
  });
}

const confirmedCodes = (confirmed: readonly string[], doubts: readonly EntryDoubt[]): string[] =>
  openDoubts(doubts)
    .filter(({ key }) => confirmed.includes(key))
    .map(({ code }) => code);

type MeasuredInput = CertificateInput['measured'];

function wrenchInput(rows: readonly PointRow[], form: CertificateForm): MeasuredInput {
  return {
    kind: 'pressure-torque',
    points: filled(rows).map((row) => ({
      pressure: quantity(row.first, form.pressureUnit),
      torque: quantity(row.second, form.torqueUnit),
      direction: row.direction,
      uncertainty: row.uncertainty?.trim() ? quantity(row.uncertainty, form.torqueUnit) : null,
    })),
    expandedUncertainty: orNull(form.expandedUncertainty) as never,
    coverageFactor: Number(form.coverageFactor),
  };
}

function gaugeInput(rows: readonly PointRow[], form: CertificateForm): MeasuredInput {
  return {
    kind: 'gauge',
    points: filled(rows).map((row) => ({
      indicated: quantity(row.first, form.pressureUnit),
      reference: quantity(row.second, form.pressureUnit),
    })),
  };
}

function handInput(rows: readonly PointRow[], form: CertificateForm): MeasuredInput {
  return {
    kind: 'hand torque',
    points: filled(rows).map((row) => ({
      set: quantity(row.first, form.torqueUnit),
      reference: quantity(row.second, form.torqueUnit),
    })),
  };
}

const MEASURED_INPUT: Readonly<
  Record<Measured, (rows: readonly PointRow[], form: CertificateForm) => MeasuredInput>
> = {
  'pressure-torque': wrenchInput,
  gauge: gaugeInput,
  'hand torque': handInput,
};

// The list of units per quantity is the schema's to check; an unchosen unit comes back as a named fault.
const quantity = (text: string, unit: string) => ({ text, unit }) as { text: string; unit: never };

/** Rows pasted from a sheet: columns by tab, semicolon or spaces; further columns may say up or down, and an uncertainty. */
export function pastedRows(text: string): PointRow[] | null {
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== '');
  if (lines.length < 2) return null;
  return lines.map((line) => {
    const [first = '', second = '', ...further] = line.trim().split(/\s*[\t;]\s*|\s+/);
    const direction = further.some((cell) => FALLING.test(cell)) ? 'down' : 'up';
    const uncertainty = further.find((cell) => cell !== '' && !FALLING.test(cell) && !RISING.test(cell));
    return { first, second, direction, uncertainty: uncertainty ?? '' };
  });
}

const FALLING = /^(down|falling|↓)/i;
const RISING = /^(up|rising|↑)/i;

/** Whether a typed cell can be read, so that a wrong one is marked before it is sent. */
export const readable = (text: string, unit: string): boolean =>
  text.trim() === '' || enter(text, (unit || 'bar') as Unit) !== null;
