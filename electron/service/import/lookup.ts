import type { JobData } from '../../../core/contract/campaign.ts';
import type { JointData } from '../../../core/contract/joint.ts';
import type { CertificateData, ToolClass, ToolData } from '../../../core/contract/tool.ts';
import type { Campaign } from '../repositories/campaign.ts';

export interface OnRegister<T> {
  readonly id: string;
  readonly version: number;
  readonly data: T;
}

/** What an import must know of the register. The register decides how names and tags are compared. */
export interface RegisterLookup {
  /** Today at the site, YYYY-MM-DD. */
  readonly today: string;
  unitId(name: string): string | null;
  joint(tag: string): OnRegister<JointData> | null;
  tool(number: string): OnRegister<ToolData> | null;
  /** Tool of the class with a serial number; none for a blank one. */
  toolWithSerial(toolClass: ToolClass, serial: string): OnRegister<ToolData> | null;
  certificate(toolId: string, number: string): CertificateData | null;
  /** Null where no campaign was chosen. */
  readonly jobs: JobLookup | null;
}

/** The campaign a list of jobs is for. */
export interface JobLookup {
  readonly campaign: Campaign;
  readonly existing: readonly OnRegister<JobData>[];
  readonly timeZone: string;
}
