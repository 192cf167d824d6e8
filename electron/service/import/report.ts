import type { ImportFault, ImportReport } from '../../../core/contract/import.ts';
import type { RecordState } from './result.ts';

/** Faults and sample rows sent to the window; the counts are of all. */
const FAULTS_SHOWN = 200;
const ROWS_SHOWN = 10;

export type Report = Omit<ImportReport, 'fingerprint'>;

/** What is known of the file before any row was read. */
export interface FileFacts {
  readonly columns: readonly string[];
  readonly unknownColumns: readonly string[];
  readonly missingColumns: readonly string[];
  readonly rows: number;
}

/** A row after reading: its faults, or what it would do. */
export interface ReadRow {
  readonly faults: readonly ImportFault[];
  readonly sample: Record<string, string>;
}

const NOTHING: FileFacts = { columns: [], unknownColumns: [], missingColumns: [], rows: 0 };

/** The file as a whole can't be imported. */
export function fileFaultReport(fileFault: string, facts: FileFacts = NOTHING): Report {
  return reportOf(facts, [], [], fileFault);
}

export function reportOf(
  facts: FileFacts,
  rows: readonly ReadRow[],
  states: readonly RecordState[],
  fileFault: string | null,
): Report {
  const faults = rows.flatMap((row) => row.faults);
  const good = rows.filter((row) => row.faults.length === 0);
  const count = (state: RecordState) => states.filter((each) => each === state).length;
  return {
    columns: [...facts.columns],
    unknownColumns: [...facts.unknownColumns],
    missingColumns: [...facts.missingColumns],
    rows: facts.rows,
    good: good.length,
    added: count('added'),
    changed: count('changed'),
    unchanged: count('unchanged'),
    faults: faults.slice(0, FAULTS_SHOWN),
    faultCount: faults.length,
    faultyRows: rows.length - good.length,
    sample: good.slice(0, ROWS_SHOWN).map(({ sample }) => sample),
    fileFault,
  };
}
