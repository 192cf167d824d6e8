import type { JobData } from '../../../core/contract/campaign.ts';
import type { JointData } from '../../../core/contract/joint.ts';
import { jointOfSet } from '../../../core/joint/bolt-set.ts';
import { ringOf } from '../../../core/planning/prerequisites.ts';
import { nameKey } from '../fold.ts';
import type { Campaign } from '../repositories/campaign.ts';

/** One thing wrong with a job: the field of its data, what stands there and what is allowed. */
export interface JobFault {
  readonly field: keyof JobData;
  readonly value: string;
  readonly allowed: string;
}

/** What can be said of a job from its campaign and joint alone. */
export function jobFaults(data: JobData, campaign: Campaign, joint: JointData): JobFault[] {
  return [
    ...boltSetFaults(data, joint),
    ...windowFaults(data, campaign),
    ...nameFaults(data, campaign),
    ...lockFaults(data),
  ];
}

function boltSetFaults({ boltSet }: JobData, joint: JointData): JobFault[] {
  if (jointOfSet(joint, boltSet) !== null) return [];
  const last = joint.boltSets.length;
  return [{ field: 'boltSet', value: String(boltSet), allowed: `0 to ${last}, as ${joint.tag} has` }];
}

function windowFaults({ earliest, latest }: JobData, { data }: Campaign): JobFault[] {
  const faults: JobFault[] = [];
  const at = (moment: string) => Date.parse(moment);
  if (earliest !== null && latest !== null && at(latest) <= at(earliest)) {
    faults.push({ field: 'latest', value: latest, allowed: `later than the earliest start, ${earliest}` });
  }
  if (earliest !== null && at(earliest) >= at(data.endsAt)) {
    faults.push({ field: 'earliest', value: earliest, allowed: `before the campaign ends, ${data.endsAt}` });
  }
  if (latest !== null && at(latest) <= at(data.startsAt)) {
    faults.push({ field: 'latest', value: latest, allowed: `after the campaign starts, ${data.startsAt}` });
  }
  return faults;
}

function nameFaults({ crews, locked }: JobData, { data }: Campaign): JobFault[] {
  const missing = (
    field: 'crews' | 'locked',
    named: readonly string[],
    known: readonly { readonly name: string }[],
  ): JobFault[] => {
    const keys = new Set(known.map(({ name }) => nameKey(name)));
    const unknown = named.find((name) => !keys.has(nameKey(name)));
    if (unknown === undefined) return [];
    const names = known.map(({ name }) => name).join(', ');
    return [
      { field, value: unknown, allowed: names === '' ? 'the campaign has none yet' : `one of: ${names}` },
    ];
  };
  return [
    ...missing('crews', crews, data.crews),
    ...missing(
      'locked',
      locked.map(({ crew }) => crew),
      data.crews,
    ),
    ...missing(
      'locked',
      locked.map(({ set }) => set),
      data.sets,
    ),
  ];
}

function lockFaults({ scope, locked }: JobData): JobFault[] {
  const faults: JobFault[] = [];
  const parts = locked.map(({ part }) => part);
  const other = parts.find((part) => scope !== 'break and make' && part !== scope);
  if (other !== undefined)
    faults.push({ field: 'locked', value: other, allowed: `"${scope}" alone, as the scope says` });
  if (new Set(parts).size < parts.length)
    faults.push({ field: 'locked', value: parts.join(', '), allowed: 'each part of the job once' });
  return faults;
}

/** Faults of what jobs wait for, by the key of the job's number; dropped jobs hold nobody up. */
export function orderFaults(jobs: readonly JobData[]): Map<string, JobFault> {
  const numbers = new Map(jobs.map(({ number }) => [nameKey(number), number]));
  const waiting = new Map(
    jobs
      .filter(({ dropped }) => !dropped)
      .map(({ number, after }) => [nameKey(number), after.map(nameKey)] as const),
  );
  const faults = new Map<string, JobFault>();
  for (const { number, after } of jobs) {
    const unknown = after.find((name) => !numbers.has(nameKey(name)));
    if (unknown !== undefined) {
      faults.set(nameKey(number), {
        field: 'after',
        value: unknown,
        allowed: 'numbers of jobs of this campaign',
      });
    }
  }
  // Every ring is told at each job of it, so that leaving these rows out leaves none behind.
  for (let ring = ringOf(waiting); ring !== null; ring = ringOf(waiting)) {
    const named = ring.map((key) => numbers.get(key) ?? key);
    for (const key of ring) {
      waiting.delete(key);
      if (!faults.has(key)) {
        faults.set(key, {
          field: 'after',
          value: named.slice(1).join(', '),
          allowed: `an order without a ring: ${named.join(' waits for ')}`,
        });
      }
    }
  }
  return faults;
}
