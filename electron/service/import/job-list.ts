import { isDeepStrictEqual } from 'node:util';
import type { JobData } from '../../../core/contract/campaign.ts';
import { nameKey } from '../fold.ts';
import { orderFaults } from '../operations/job-checks.ts';
import { jobFromRow, tell } from './job-row.ts';
import type { JobLookup, RegisterLookup } from './lookup.ts';
import type { JobRecord } from './result.ts';
import type { RowReader } from './row.ts';

interface ReadJob {
  readonly row: RowReader;
  readonly data: JobData;
}

/**
 * Jobs of a list against those of the campaign. What waits for what is looked at over both: a row that waits for a row
 * which is left out has a fault of its own, and so on until nothing more falls out.
 */
export function jobsFromRows(
  rows: readonly RowReader[],
  lookup: Pick<RegisterLookup, 'joint'>,
  jobs: JobLookup,
): JobRecord[] {
  const existing = new Map(jobs.existing.map((job) => [nameKey(job.data.number), job]));
  let read = rows.flatMap((row): ReadJob[] => {
    const before = existing.get(nameKey(row.raw('number')))?.data ?? null;
    const data = jobFromRow(row, lookup, jobs, before);
    return data === null ? [] : [{ row, data }];
  });
  for (let faulty = true; faulty; ) {
    const named = new Set(read.map(({ data }) => nameKey(data.number)));
    const others = jobs.existing.flatMap(({ data }) => (named.has(nameKey(data.number)) ? [] : [data]));
    const faults = orderFaults([...others, ...read.map(({ data }) => data)]);
    const sound = read.filter(({ row, data }) => {
      const fault = faults.get(nameKey(data.number));
      if (fault !== undefined) tell(row, fault);
      return fault === undefined;
    });
    faulty = sound.length < read.length;
    read = sound;
  }
  return read.map(({ row, data }) => {
    const before = existing.get(nameKey(data.number)) ?? null;
    return {
      line: row.line,
      state: before === null ? 'added' : isDeepStrictEqual(before.data, data) ? 'unchanged' : 'changed',
      existing: before && { id: before.id, version: before.version },
      data,
    };
  });
}
