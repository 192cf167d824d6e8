import type { FieldFault } from '../../../core/contract/errors.ts';
import type { CertificateForm, Measured, PointRow } from './certificate-form-values.ts';
import { isFilled } from './certificate-form-values.ts';

type Column = 'first' | 'second' | 'uncertainty';

interface ColumnWords {
  readonly column: Column;
  /** What the contract calls it. */
  readonly path: string;
  readonly words: string;
  /** Field of the form that holds its unit. */
  readonly unit: 'pressureUnit' | 'torqueUnit';
}

/** Columns of a certificate's points as the form shows them. */
export const COLUMNS: Readonly<Record<Measured, readonly ColumnWords[]>> = {
  'pressure-torque': [
    { column: 'first', path: 'pressure', words: 'Pressure', unit: 'pressureUnit' },
    { column: 'second', path: 'torque', words: 'Torque', unit: 'torqueUnit' },
    { column: 'uncertainty', path: 'uncertainty', words: 'Own uncertainty', unit: 'torqueUnit' },
  ],
  gauge: [
    { column: 'first', path: 'indicated', words: 'Gauge showed', unit: 'pressureUnit' },
    { column: 'second', path: 'reference', words: 'Reference', unit: 'pressureUnit' },
  ],
  'hand torque': [
    { column: 'first', path: 'set', words: 'Wrench set to', unit: 'torqueUnit' },
    { column: 'second', path: 'reference', words: 'Reference', unit: 'torqueUnit' },
  ],
};

/**
 * Faults at the form's own rows, of which empty ones are not sent, and a unit that is not chosen once at its own field
 * instead of at every point.
 */
export function certificateFaults(
  faults: readonly FieldFault[],
  kind: Measured,
  { rows, foundRows }: Pick<CertificateForm, 'rows' | 'foundRows'>,
): FieldFault[] {
  const placed = faults.map((fault): FieldFault => {
    const [, series = '', at, path, unit] =
      /^data\.(measured|asFound)\.points\.(\d+)(?:\.(\w+))?(\.unit)?/.exec(fault.field) ?? [];
    if (at === undefined) return fault;
    const column = COLUMNS[kind].find((each) => each.path === path);
    if (unit !== undefined && column !== undefined)
      return { field: `data.${column.unit}`, value: '', allowed: 'needed: choose the unit' };
    const row = rowOf(series === 'asFound' ? foundRows : rows, Number(at));
    const end = path === undefined ? '' : `.${path}`;
    return { ...fault, field: `data.${series}.points.${row}${end}` };
  });
  return [...new Map(placed.map((fault) => [`${fault.field} ${fault.allowed}`, fault])).values()];
}

/** Place on the form of the n-th row that is sent. */
function rowOf(rows: readonly PointRow[], sent: number): number {
  const places = rows.flatMap((row, place) => (isFilled(row) ? [place] : []));
  return places[sent] ?? sent;
}
