import type { JobData, JobLock } from '../contract/campaign.ts';

/** What a field of a job is called, in the order a change is told. */
const FIELD_NAMES: Readonly<Record<Exclude<keyof JobData, 'campaignId' | 'jointId'>, string>> = {
  number: 'number',
  boltSet: 'bolt set',
  scope: 'scope',
  dropped: 'dropped from the scope',
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
  after: 'after jobs',
  gapMinutes: 'work between',
  breakMinutes: 'time to break',
  makeMinutes: 'time to make up',
  locked: 'fixed',
  remarks: 'remarks',
};

/** One field of a job that a version changed. */
export interface FieldChange {
  readonly field: string;
  readonly from: string;
  readonly to: string;
}

/**
 * What a version of a job changed, in words.
 *
 * @param before data of the version before; null for the first version
 * @param after data of the version
 * @param say how a moment is written at the site
 * @returns one entry per changed field, in a fixed order; of a first version the fields that say something
 * @example jobChanges(null, job, (at) => at)[0].field // 'number'
 * @source rule of this program
 */
export function jobChanges(
  before: JobData | null,
  after: JobData,
  say: (moment: string) => string,
): FieldChange[] {
  const fields = Object.entries(FIELD_NAMES) as [keyof typeof FIELD_NAMES, string][];
  return fields.flatMap(([key, field]) => {
    const from = before === null ? '' : inWords(before, key, say);
    const to = inWords(after, key, say);
    return from === to ? [] : [{ field, from, to }];
  });
}

function inWords(data: JobData, key: keyof typeof FIELD_NAMES, say: (moment: string) => string): string {
  switch (key) {
    case 'boltSet':
      return data.boltSet === 0 ? '' : `further set ${data.boltSet}`;
    case 'dropped':
    case 'temporary':
      return data[key] ? 'yes' : 'no';
    case 'earliest':
    case 'latest': {
      const moment = data[key];
      return moment === null ? '' : say(moment);
    }
    case 'crews':
    case 'after':
      return data[key].join(', ');
    case 'gapMinutes':
      return data.gapMinutes === 0 ? '' : `${data.gapMinutes} min`;
    case 'breakMinutes':
    case 'makeMinutes': {
      const minutes = data[key];
      return minutes === null ? '' : `${minutes} min`;
    }
    case 'locked':
      return data.locked.map((lock) => lockWords(lock, say)).join('; ');
    default:
      return data[key];
  }
}

const lockWords = ({ part, set, crew, startsAt }: JobLock, say: (moment: string) => string) =>
  `${part} with ${set} by ${crew} from ${say(startsAt)}`;
