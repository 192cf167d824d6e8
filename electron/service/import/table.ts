import { CsvError, parse } from 'csv-parse/sync';
import type { ImportOptions } from '../../../core/contract/import.ts';
import { nameKey } from '../fold.ts';

export interface TableRow {
  /** Line of the file the row begins on, counted from 1. */
  readonly line: number;
  readonly cells: readonly string[];
}

export interface Table {
  /** As written in the file. */
  readonly headings: readonly string[];
  readonly rows: readonly TableRow[];
}

export type TableResult = { ok: true; table: Table } | { ok: false; fault: string };

type Delimiter = ImportOptions['delimiter'];

const DELIMITER_NAMES: Record<Delimiter, string> = { ',': 'comma', ';': 'semicolon', '\t': 'tab' };

/** Splits CSV text (RFC 4180 quoting) into headings and rows; lines with nothing in any cell are skipped. */
export function readTable(text: string, delimiter: Delimiter): TableResult {
  let records: TableRow[];
  try {
    records = splitRecords(text, delimiter);
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return { ok: false, fault: quotingFault(error) };
  }
  const [heading, ...rows] = records;
  if (!heading)
    return { ok: false, fault: 'The file holds no text: it needs a heading line and at least one row' };
  const fault = headingFault(heading, delimiter);
  if (fault !== null) return { ok: false, fault };
  if (rows.length === 0) return { ok: false, fault: 'The file has a heading line but no rows' };
  return { ok: true, table: { headings: heading.cells.map((cell) => cell.trim()), rows } };
}

interface ParsedRecord {
  record: string[];
  info: { lines: number };
}

function splitRecords(text: string, delimiter: Delimiter): TableRow[] {
  const parsed = parse(text, {
    delimiter,
    info: true,
    relax_column_count: true,
    skip_empty_lines: true,
    record_delimiter: ['\r\n', '\n', '\r'],
  }) as unknown as ParsedRecord[];
  return parsed
    .map(({ record, info }) => ({ line: info.lines - breaksWithin(record), cells: record }))
    .filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
}

/** The parser counts lines at the end of a record; a quoted cell may have carried line breaks. */
function breaksWithin(cells: readonly string[]): number {
  return cells.reduce((sum, cell) => sum + (cell.match(/\r\n|\n|\r/g)?.length ?? 0), 0);
}

function quotingFault(error: CsvError): string {
  const lines = error['lines'];
  const where = typeof lines === 'number' ? `Line ${lines}` : 'The file';
  if (error.code === 'CSV_QUOTE_NOT_CLOSED') {
    return `${where}: a quotation mark was opened and never closed; a quoted cell ends with a second mark`;
  }
  return `${where}: a quotation mark stands where none is allowed; a cell that holds one is quoted as a whole and the mark inside is doubled`;
}

function headingFault(heading: TableRow, delimiter: Delimiter): string | null {
  const headings = heading.cells.map(nameKey);
  const firstLine = heading.cells.join(delimiter);
  if (headings.length === 1) {
    const other = (Object.keys(DELIMITER_NAMES) as Delimiter[]).find((sign) => firstLine.includes(sign));
    if (other) {
      return `Cells were to be separated by ${DELIMITER_NAMES[delimiter]}, but the heading line holds none and has ${DELIMITER_NAMES[other]} signs: choose the separator of this file`;
    }
  }
  const blank = headings.indexOf('');
  if (blank >= 0) return `Line ${heading.line}: column ${blank + 1} has no heading`;
  const repeated = headings.find((name, index) => headings.indexOf(name) !== index);
  if (repeated === undefined) return null;
  const columns = headings.flatMap((name, index) => (name === repeated ? [index + 1] : []));
  return `Line ${heading.line}: the heading "${repeated}" stands over columns ${columns.join(' and ')}; each heading may stand once`;
}
