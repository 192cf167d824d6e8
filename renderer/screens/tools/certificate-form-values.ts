import type { CertificateInput } from '../../../core/contract/tool.ts';
import { enter } from '../../../core/units/entered.ts';
import type { Unit } from '../../../core/units/units.ts';
import { blank, orNull, type Typed } from '../../components/typed.ts';

export interface PointRow {
  /** Pressure of a wrench, or what the gauge showed. */
  first: string;
  /** Torque of a wrench, or the reference's pressure. */
  second: string;
  direction: 'up' | 'down';
}

export interface CertificateForm {
  number: string;
  laboratory: string;
  calibratedOn: string;
  validUntil: string;
  validityBasis: string;
  result: string;
  condition: string;
  withToolIds: string[];
  pressureUnit: string;
  torqueUnit: string;
  rows: PointRow[];
  expandedUncertainty: Typed;
  coverageFactor: string;
  remarks: string;
}

const ROW: PointRow = { first: '', second: '', direction: 'up' };
export const blankRow = (): PointRow => ({ ...ROW });

/** Units have no default: a certificate in psi must not be taken for one in bar. */
export const EMPTY_CERTIFICATE: CertificateForm = {
  number: '',
  laboratory: '',
  calibratedOn: '',
  validUntil: '',
  validityBasis: '',
  result: '',
  condition: '',
  withToolIds: [],
  pressureUnit: '',
  torqueUnit: '',
  rows: Array.from({ length: 5 }, blankRow),
  expandedUncertainty: blank('percent'),
  coverageFactor: '2',
  remarks: '',
};

const filled = (rows: readonly PointRow[]) =>
  rows.filter((row) => row.first.trim() !== '' || row.second.trim() !== '');

export function certificateInput(form: CertificateForm, toolId: string, kind: Measured): CertificateInput {
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
    measured: MEASURED_INPUT[kind](form),
    remarks: form.remarks,
  };
}

export type Measured = CertificateInput['measured']['kind'];

function wrenchInput(form: CertificateForm): CertificateInput['measured'] {
  return {
    kind: 'pressure-torque',
    points: filled(form.rows).map((row) => ({
      pressure: quantity(row.first, form.pressureUnit),
      torque: quantity(row.second, form.torqueUnit),
      direction: row.direction,
    })),
    expandedUncertainty: orNull(form.expandedUncertainty) as never,
    coverageFactor: Number(form.coverageFactor),
  };
}

function gaugeInput(form: CertificateForm): CertificateInput['measured'] {
  return {
    kind: 'gauge',
    points: filled(form.rows).map((row) => ({
      indicated: quantity(row.first, form.pressureUnit),
      reference: quantity(row.second, form.pressureUnit),
    })),
  };
}

function handInput(form: CertificateForm): CertificateInput['measured'] {
  return {
    kind: 'hand torque',
    points: filled(form.rows).map((row) => ({
      set: quantity(row.first, form.torqueUnit),
      reference: quantity(row.second, form.torqueUnit),
    })),
  };
}

const MEASURED_INPUT: Readonly<Record<Measured, (form: CertificateForm) => CertificateInput['measured']>> = {
  'pressure-torque': wrenchInput,
  gauge: gaugeInput,
  'hand torque': handInput,
};

// The list of units per quantity is the schema's to check; an unchosen unit comes back as a named fault.
const quantity = (text: string, unit: string) => ({ text, unit }) as { text: string; unit: never };

/** Rows pasted from a sheet: columns by tab, semicolon or spaces; a third column may say up or down. */
export function pastedRows(text: string): PointRow[] | null {
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== '');
  if (lines.length < 2) return null;
  return lines.map((line) => {
    const [first = '', second = '', third = ''] = line.trim().split(/\s*[\t;]\s*|\s+/);
    return { first, second, direction: /^(down|falling|↓)/i.test(third) ? 'down' : 'up' };
  });
}

/** Whether a typed cell can be read, so that a wrong one is marked before it is sent. */
export const readable = (text: string, unit: string): boolean =>
  text.trim() === '' || enter(text, (unit || 'bar') as Unit) !== null;
