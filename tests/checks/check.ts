/** What a check found. One that looked at nothing has proved nothing, and counts as failed. */
export interface CheckResult {
  readonly looked: number;
  readonly faults: readonly string[];
}

/** Looks at the project in `root`; a check's own test hands it a copy with a planted fault. */
export type Check = (root: string) => Promise<CheckResult>;

export function passed(result: CheckResult): boolean {
  return result.looked > 0 && result.faults.length === 0;
}
