import { type JobData, jobData, jobScope } from '../../../core/contract/campaign.ts';
import { identityOf } from '../../../core/joint/identity.ts';
import { nameKey } from '../fold.ts';
import { type JobFault, jobFaults } from '../operations/job-checks.ts';
import { momentAtSite } from '../time.ts';
import { yesOrNo } from './joint-identity.ts';
import type { JobLookup, RegisterLookup } from './lookup.ts';
import type { RowReader } from './row.ts';
import { headingAt, validated } from './validate.ts';

const HEADINGS: Readonly<Record<string, string>> = {
  number: 'number',
  jointId: 'joint',
  scope: 'scope',
  boltSet: 'bolt set',
  temporary: 'temporary',
  workOrder: 'work order',
  system: 'system',
  testPack: 'test pack',
  earliest: 'not before',
  latest: 'finished by',
  isolationRef: 'isolation',
  permitRef: 'permit',
  access: 'access',
  crews: 'crews',
  after: 'after',
  gapMinutes: 'work between min',
  breakMinutes: 'break min',
  makeMinutes: 'make min',
  dropped: 'dropped',
  remarks: 'remarks',
  locked: '(whole row)',
};

/** One job from its row; columns the file does not have keep what the register holds. */
export function jobFromRow(
  row: RowReader,
  lookup: Pick<RegisterLookup, 'joint'>,
  { campaign, timeZone }: JobLookup,
  existing: JobData | null,
): JobData | null {
  const tag = row.raw('joint');
  const joint = tag === '' ? null : lookup.joint(tag);
  if (joint === null) row.fault('joint', tag === '' ? 'needed' : 'the tag of a joint on the register');
  const known = joint === null ? null : identityOf(joint.data);
  const moment = (heading: string, edge: 'start' | 'end', otherwise: string | null) => {
    if (!row.has(heading)) return otherwise;
    const cell = row.raw(heading);
    if (cell === '') return null;
    const found = momentAtSite(cell, timeZone, edge);
    if (found === null)
      row.fault(heading, 'a date as YYYY-MM-DD, or with a time at the site as YYYY-MM-DD HH:MM');
    return found;
  };
  const candidate = {
    campaignId: campaign.id,
    number: row.raw('number'),
    // A row without its joint is faulty already; the rest of it is still looked at.
    jointId: joint?.id ?? campaign.id,
    scope: row.choice('scope', jobScope.options, existing?.scope),
    boltSet: row.number('bolt set', existing?.boltSet) ?? 0,
    temporary: yesOrNo(row, 'temporary', existing?.temporary ?? false) ?? false,
    workOrder: row.text('work order', existing?.workOrder),
    system: row.text('system', existing?.system) || (known?.system ?? ''),
    testPack: row.text('test pack', existing?.testPack) || (known?.testPack ?? ''),
    earliest: moment('not before', 'start', existing?.earliest ?? null),
    latest: moment('finished by', 'end', existing?.latest ?? null),
    isolationRef: row.text('isolation', existing?.isolationRef),
    permitRef: row.text('permit', existing?.permitRef),
    access: row.text('access', existing?.access),
    crews: row.has('crews') ? names(row.raw('crews')) : (existing?.crews ?? []),
    after: row.has('after') ? names(row.raw('after')) : (existing?.after ?? []),
    gapMinutes: row.number('work between min', existing?.gapMinutes) ?? 0,
    breakMinutes: row.number('break min', existing?.breakMinutes),
    makeMinutes: row.number('make min', existing?.makeMinutes),
    locked: existing?.locked ?? [],
    dropped: yesOrNo(row, 'dropped', existing?.dropped ?? false) ?? false,
    remarks: row.text('remarks', existing?.remarks),
  };
  const record = validated(
    jobData,
    candidate,
    (path) => ({ row, heading: headingAt(path, HEADINGS) }),
    'needed',
  );
  if (record !== null && joint !== null) {
    for (const fault of jobFaults(record, campaign, joint.data)) tell(row, fault);
  }
  return row.faults.length === 0 ? record : null;
}

/** Tells a fault at the column it came from, once. */
export function tell(row: RowReader, { field, allowed }: JobFault): void {
  const heading = HEADINGS[field] ?? field;
  if (!row.faults.some(({ column }) => column === heading)) row.fault(heading, allowed);
}

const names = (cell: string): string[] => {
  const all = cell
    .split(';')
    .map((name) => name.trim())
    .filter((name) => name !== '');
  return all.filter((name, index) => all.findIndex((other) => nameKey(other) === nameKey(name)) === index);
};
