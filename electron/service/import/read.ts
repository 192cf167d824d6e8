import { isDeepStrictEqual } from 'node:util';
import type { ImportFault, ImportOptions } from '../../../core/contract/import.ts';
import type { ParsedInput } from '../../../core/contract/requests.ts';
import { nameKey } from '../fold.ts';
import { certificateFromRows } from './certificate-file.ts';
import { type MatchedColumns, matchColumns } from './column.ts';
import { ALTERNATIVES_OF_KIND, COLUMNS_OF_KIND } from './columns.ts';
import { decodeFile } from './decode.ts';
import { reportDuplicates, serialNumbers } from './duplicates.ts';
import { jobsFromRows } from './job-list.ts';
import { jointFromRow } from './joint-row.ts';
import type { OnRegister, RegisterLookup } from './lookup.ts';
import { type FileFacts, fileFaultReport, type ReadRow, reportOf } from './report.ts';
import type { ImportResult, JointRecord, RecordState, ToolRecord } from './result.ts';
import { type RowContext, type RowReader, raggedFault, rowContext, rowReader, sampleOf } from './row.ts';
import { readTable, type Table } from './table.ts';
import { toolFromRow } from './tool-row.ts';

/** Stands for a plant unit that is created when the import is confirmed; never stored. */
const UNIT_TO_BE_CREATED = '00000000-0000-0000-0000-000000000000';

type ImportRequest = ParsedInput<'import.preview'>;

interface Sheet {
  readonly facts: FileFacts;
  readonly context: RowContext;
  /** Rows in file order: a reader, or the fault of a row with the wrong number of cells. */
  readonly rows: readonly (RowReader | ImportFault)[];
  readonly whole: readonly RowReader[];
}

/**
 * Reads an import file against the register: what each row would do, and every fault with its line, column, value and
 * what is allowed. Writes nothing and decides nothing: the same result is shown as preview and used on confirmation.
 */
export function readImport(input: ImportRequest, lookup: RegisterLookup): ImportResult {
  const decoded = decodeFile(Buffer.from(input.content, 'base64'), input.options.encoding);
  if (!decoded.ok) return nothing(input, fileFaultReport(decoded.fault));
  const read = readTable(decoded.text, input.options.delimiter);
  if (!read.ok) return nothing(input, fileFaultReport(read.fault));
  const { table } = read;
  const matched = matchColumns(table.headings, COLUMNS_OF_KIND[input.kind], ALTERNATIVES_OF_KIND[input.kind]);
  const sheet = sheetOf(table, matched, input.options);
  const { missing } = matched;
  if (missing.length > 0) {
    return nothing(input, fileFaultReport(missingText(missing), sheet.facts));
  }
  if (input.kind === 'jobs') return readJobs(sheet, lookup);
  if (input.kind === 'joints') return readJoints(sheet, lookup);
  return input.kind === 'tools' ? readTools(sheet, lookup) : readCertificate(sheet, lookup);
}

function nothing({ kind }: ImportRequest, report: ImportResult['report']): ImportResult {
  if (kind === 'certificate') return { kind, report, newUnits: [], state: 'unchanged', record: null };
  return { kind, report, newUnits: [], records: [] };
}

function missingText(missing: readonly string[]): string {
  const names = missing.map((heading) => `"${heading}"`).join(', ');
  return `The heading line lacks ${names}: every row needs ${missing.length === 1 ? 'it' : 'them'}`;
}

function sheetOf(table: Table, matched: MatchedColumns, options: ImportOptions): Sheet {
  const context = rowContext(matched, options);
  const rows = table.rows.map((row) => raggedFault(row, table.headings.length) ?? rowReader(row, context));
  return {
    context,
    rows,
    whole: rows.filter((row): row is RowReader => 'faults' in row),
    facts: {
      columns: table.headings,
      unknownColumns: matched.unknown,
      missingColumns: matched.missing,
      rows: rows.length,
    },
  };
}

function readRows({ rows, context }: Sheet): ReadRow[] {
  return rows.map((row) =>
    'faults' in row
      ? { faults: byColumn(row.faults, context), sample: sampleOf(row, context) }
      : { faults: [row], sample: {} },
  );
}

/** In the order of the file's columns; checks across cells come last otherwise. */
function byColumn(faults: readonly ImportFault[], { matched }: RowContext): ImportFault[] {
  const place = ({ column }: ImportFault) => matched.positions.get(column) ?? Number.POSITIVE_INFINITY;
  return [...faults].sort((a, b) => (place(a) < place(b) ? -1 : 1));
}

function stateOf<T>(existing: OnRegister<T> | null, data: T): RecordState {
  if (existing === null) return 'added';
  return isDeepStrictEqual(existing.data, data) ? 'unchanged' : 'changed';
}

const reference = (existing: OnRegister<unknown> | null) =>
  existing && { id: existing.id, version: existing.version };

function readJoints(sheet: Sheet, lookup: RegisterLookup): ImportResult {
  const records: JointRecord[] = [];
  const newUnits = new Map<string, string>();
  reportDuplicates(sheet.whole, 'tag');
  for (const row of sheet.whole) {
    const existing = lookup.joint(row.raw('tag'));
    const unitName = row.raw('unit');
    const unitId = unitName === '' ? '' : (lookup.unitId(unitName) ?? UNIT_TO_BE_CREATED);
    const joint = jointFromRow(row, unitId, existing?.data ?? null);
    if (joint === null) continue;
    if (unitId === UNIT_TO_BE_CREATED && !newUnits.has(nameKey(unitName))) {
      newUnits.set(nameKey(unitName), unitName);
    }
    const { unitId: _, ...data } = joint;
    records.push({
      line: row.line,
      state: stateOf(existing, joint),
      existing: reference(existing),
      unitName: newUnits.get(nameKey(unitName)) ?? unitName,
      data,
    });
  }
  const states = records.map(({ state }) => state);
  const report = reportOf(sheet.facts, readRows(sheet), states, null);
  return { kind: 'joints', report, newUnits: [...newUnits.values()], records };
}

function readTools(sheet: Sheet, lookup: RegisterLookup): ImportResult {
  const records: ToolRecord[] = [];
  const serials = serialNumbers(lookup);
  reportDuplicates(sheet.whole, 'number');
  for (const row of sheet.whole) {
    const existing = lookup.tool(row.raw('number'));
    const data = toolFromRow(row, existing?.data ?? null);
    if (data === null) continue;
    const twin = serials.twinOf(row, data, existing?.id ?? null);
    if (twin !== null) {
      row.fault('serial', `another serial number than ${twin} has, which is of the same class; or blank`);
      continue;
    }
    records.push({ line: row.line, state: stateOf(existing, data), existing: reference(existing), data });
  }
  const states = records.map(({ state }) => state);
  const report = reportOf(sheet.facts, readRows(sheet), states, null);
  return { kind: 'tools', report, newUnits: [], records };
}

function readJobs(sheet: Sheet, lookup: RegisterLookup): ImportResult {
  const { jobs } = lookup;
  if (jobs === null) {
    const fault = 'Jobs are of a campaign: choose the one this list is for';
    return { kind: 'jobs', report: fileFaultReport(fault, sheet.facts), newUnits: [], records: [] };
  }
  reportDuplicates(sheet.whole, 'number');
  const records = jobsFromRows(sheet.whole, lookup, jobs);
  const states = records.map(({ state }) => state);
  return {
    kind: 'jobs',
    report: reportOf(sheet.facts, readRows(sheet), states, null),
    newUnits: [],
    records,
  };
}

/** A certificate with a point left out would be another certificate, so one fault holds all of it back. */
function readCertificate(sheet: Sheet, lookup: RegisterLookup): ImportResult {
  const allWhole = sheet.whole.length === sheet.rows.length;
  const record = certificateFromRows(sheet.whole, lookup);
  const onRegister = record && lookup.certificate(record.toolId, record.number);
  if (onRegister && !isDeepStrictEqual(onRegister, record)) {
    sheet.whole[0]?.fault(
      'certificate number',
      'a number this tool has no certificate under yet: the one on the register says something else, and certificates are never changed',
    );
  }
  const rows = readRows(sheet);
  const faultCount = rows.reduce((sum, { faults }) => sum + faults.length, 0);
  if (record === null || !allWhole || faultCount > 0) {
    const fault = `A certificate is taken whole or not at all; it has ${faultCount} ${faultCount === 1 ? 'fault' : 'faults'}`;
    const report = reportOf(sheet.facts, rows, [], fault);
    return { kind: 'certificate', report, newUnits: [], state: 'unchanged', record: null };
  }
  const state = onRegister ? 'unchanged' : 'added';
  return {
    kind: 'certificate',
    report: reportOf(sheet.facts, rows, [state], null),
    newUnits: [],
    state,
    record,
  };
}
