import type { ImportKind } from '../../../core/contract/import.ts';
import { CERTIFICATE_COLUMNS } from './certificate-columns.ts';
import type { Column } from './column.ts';
import { JOB_COLUMNS } from './job-columns.ts';
import { JOINT_COLUMNS } from './joint-columns.ts';
import { TOOL_COLUMNS } from './tool-columns.ts';

/** Headings a file of each kind may have. */
export const COLUMNS_OF_KIND: Readonly<Record<ImportKind, readonly Column[]>> = {
  joints: JOINT_COLUMNS,
  tools: TOOL_COLUMNS,
  certificate: CERTIFICATE_COLUMNS,
  jobs: JOB_COLUMNS,
};

/** Beyond the needed columns: of each group one is enough. */
export const ALTERNATIVES_OF_KIND: Readonly<Record<ImportKind, readonly (readonly string[])[]>> = {
  joints: [['flange standard', 'flange description']],
  tools: [],
  jobs: [],
  certificate: [
    ['pressure', 'indicated', 'set torque'],
    ['torque', 'reference', 'reference torque'],
  ],
};
