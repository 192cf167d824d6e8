import type { ImportFault, ImportOptions } from '../../../core/contract/import.ts';
import { parseNumber } from '../../../core/units/entered.ts';
import { UNITS, type Unit } from '../../../core/units/units.ts';
import { type Column, type FileQuantity, type MatchedColumns, unitOfColumn } from './column.ts';
import type { TableRow } from './table.ts';

/** A quantity in the contract's input form, with a point as the decimal sign. */
export interface Quantity {
  readonly text: string;
  readonly unit: Unit;
}

/**
 * Reads the cells of one row by heading and collects what is wrong with them. `otherwise` is what holds when the file
 * has no such column: the value on the register when the row changes a record, so that a short list erases nothing.
 * A column that is there with a blank cell means blank.
 */
export interface RowReader {
  readonly line: number;
  readonly faults: ImportFault[];
  /** Every quantity read so far. */
  readonly quantities: ReadonlyMap<string, Quantity>;
  has(heading: string): boolean;
  /** Trimmed text of the cell, '' when blank or not in the file. */
  raw(heading: string): string;
  text(heading: string, otherwise?: string): string;
  optional(heading: string, otherwise?: string | null): string | null;
  quantity(heading: string, otherwise?: Quantity | null): Quantity | null;
  /** A quantity whose unit depends on another cell of the row. */
  quantityIn(heading: string, unit: Unit): Quantity | null;
  number(heading: string, otherwise?: number | null): number | null;
  choice<T extends string>(heading: string, allowed: readonly T[], otherwise?: T | null): T | null;
  fault(heading: string, allowed: string): void;
  /** The unit chosen for the file. */
  unit(quantity: FileQuantity): Unit;
}

export interface RowContext {
  readonly matched: MatchedColumns;
  readonly byHeading: ReadonlyMap<string, Column>;
  readonly options: ImportOptions;
}

export function rowContext(matched: MatchedColumns, options: ImportOptions): RowContext {
  return {
    matched,
    options,
    byHeading: new Map(matched.columns.map((column) => [column.heading, column])),
  };
}

/** A row with too few or too many cells can't be trusted cell by cell: which one is missing is not known. */
export function raggedFault(row: TableRow, width: number): ImportFault | null {
  const surplus = row.cells.slice(width).some((cell) => cell.trim() !== '');
  if (row.cells.length >= width && !surplus) return null;
  return {
    line: row.line,
    column: '(whole row)',
    value: `${row.cells.length} cells`,
    allowed: `${width} cells, as many as there are headings`,
  };
}

export function rowReader(row: TableRow, context: RowContext): RowReader {
  const { matched, options } = context;
  const faults: ImportFault[] = [];
  const quantities = new Map<string, Quantity>();
  const has = (heading: string) => matched.positions.has(heading);
  const raw = (heading: string) => (row.cells[matched.positions.get(heading) ?? -1] ?? '').trim();
  const fault = (heading: string, allowed: string) => {
    faults.push({ line: row.line, column: heading, value: raw(heading), allowed });
  };

  for (const heading of matched.positions.keys()) {
    if (raw(heading).includes('\uFFFD')) {
      fault(heading, 'readable text; a character was already lost when the file was written');
    }
  }

  const optional = (heading: string, otherwise: string | null = null) =>
    has(heading) ? raw(heading) || null : otherwise;

  const quantityIn = (heading: string, unit: Unit): Quantity | null => {
    const cell = raw(heading);
    if (cell === '') return null;
    const parsed = parseNumber(cell, options.decimalSign);
    if (!parsed.ok) {
      fault(heading, numberWanted(cell, parsed.reason, unit, options.decimalSign));
      return null;
    }
    const read = { text: withPoint(cell, options.decimalSign), unit };
    quantities.set(heading, read);
    return read;
  };

  return {
    line: row.line,
    faults,
    quantities,
    unit: (quantity) => options.units[quantity] as Unit,
    has,
    raw,
    fault,
    optional,
    quantityIn,
    text: (heading, otherwise = '') => (has(heading) ? raw(heading) : otherwise),
    quantity(heading, otherwise = null) {
      if (!has(heading)) return otherwise;
      const column = context.byHeading.get(heading);
      return quantityIn(heading, (column && unitOfColumn(column, options)) ?? 'one');
    },
    number(heading, otherwise = null) {
      if (!has(heading)) return otherwise;
      const read = quantityIn(heading, 'one');
      if (read === null) return null;
      const parsed = parseNumber(read.text, '.');
      return parsed.ok ? parsed.value : null;
    },
    choice(heading, allowed, otherwise = null) {
      if (!has(heading)) return otherwise;
      const cell = raw(heading);
      if (cell === '') return null;
      const folded = cell.replace(/\s+/g, ' ').toLowerCase();
      const found = allowed.find((option) => option.toLowerCase() === folded);
      if (found === undefined) fault(heading, `one of: ${allowed.join(', ')}`);
      return found ?? null;
    },
  };
}

function withPoint(cell: string, decimalSign: ImportOptions['decimalSign']): string {
  return decimalSign === ',' ? cell.replace(',', '.') : cell;
}

const SIGN_NAMES = { '.': 'a point', ',': 'a comma' };

function numberWanted(cell: string, reason: string, unit: Unit, sign: ImportOptions['decimalSign']): string {
  const label = UNITS[unit].label;
  const alone = label ? `a number alone; this column is in ${label}` : 'a number alone';
  if (/^[-+−]?[\d.,\s/-]*\d\s*["'°%µa-z]/i.test(cell) && !/^\d+([.,]\d+)?e[+-]?\d+$/i.test(cell)) {
    return label ? `${alone}, as chosen for the file` : alone;
  }
  if (reason === 'other_decimal_sign') {
    return `${alone}, with ${SIGN_NAMES[sign]} as the decimal sign chosen for the file and no thousands separators`;
  }
  return `${alone}, like 12${sign}5 or 1-7/16`;
}

/** The row as it was read, with units, for the preview. */
export function sampleOf(row: RowReader, context: RowContext): Record<string, string> {
  const filled = [...context.matched.positions.keys()].filter((heading) => row.raw(heading) !== '');
  return Object.fromEntries(
    filled.map((heading) => {
      const quantity = row.quantities.get(heading);
      const label = quantity ? UNITS[quantity.unit].label : '';
      return [heading, quantity ? `${quantity.text} ${label}`.trim() : row.raw(heading)];
    }),
  );
}
