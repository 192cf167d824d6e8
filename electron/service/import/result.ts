import type { JobData } from '../../../core/contract/campaign.ts';
import type { ImportReport } from '../../../core/contract/import.ts';
import type { JointData } from '../../../core/contract/joint.ts';
import type { CertificateData, ToolData } from '../../../core/contract/tool.ts';

/** What confirming would do with one record; an unchanged one is not written again. */
export type RecordState = 'added' | 'changed' | 'unchanged';

interface ImportedRecord<T> {
  /** Line in the file. */
  readonly line: number;
  readonly state: RecordState;
  /** The record it changes: its id and the version the change starts from. */
  readonly existing: { readonly id: string; readonly version: number } | null;
  readonly data: T;
}

/** `unitId` is left to the writer, who has created the new units by then. */
export type JointRecord = ImportedRecord<Omit<JointData, 'unitId'>> & { readonly unitName: string };
export type ToolRecord = ImportedRecord<ToolData>;
export type JobRecord = ImportedRecord<JobData>;

/** The report without the fingerprint, and the good records in file order. */
export type ImportResult = {
  readonly report: Omit<ImportReport, 'fingerprint'>;
  /** Plant units the good rows name that are not on the register, in file order. */
  readonly newUnits: readonly string[];
} & (
  | { readonly kind: 'joints'; readonly records: readonly JointRecord[] }
  | { readonly kind: 'tools'; readonly records: readonly ToolRecord[] }
  | { readonly kind: 'jobs'; readonly records: readonly JobRecord[] }
  /** A certificate is taken whole or not at all: null when it has a fault. */
  | { readonly kind: 'certificate'; readonly state: RecordState; readonly record: CertificateData | null }
);
