import type { StepData } from '../../contract/life.ts';
import type { StepGuards } from './guard.ts';
import { momentOf } from './standing.ts';

const plain = (text: string) => text.toLowerCase().replace(/\s+/g, ' ').trim();

const reasonGiven = {
  says: 'a reason',
  fails: ({ evidence }: { readonly evidence: { readonly reason: string } }) =>
    evidence.reason === '' ? 'no reason is given' : null,
};

type Release = Extract<StepData, { step: 'release' }>;

/** From the class to the open joint. */
export const OPENING_GUARDS: Pick<
  StepGuards,
  | 'assess'
  | 'declare in service'
  | 'schedule'
  | 'unschedule'
  | 'isolate'
  | 'lift isolation'
  | 'release'
  | 'break'
  | 'inspect'
  | 'hold'
  | 'clear hold'
> = {
  assess: {
    joint: [],
    form: [
      {
        says: 'a class of the site',
        fails: ({ evidence, classRuleId }) =>
          evidence.class === null && classRuleId === null ? 'no class is given' : null,
      },
      {
        says: 'the basis of the class',
        fails: ({ evidence }) => (evidence.basis === '' ? 'the basis of the class is not stated' : null),
      },
    ],
  },
  'declare in service': {
    joint: [],
    form: [
      {
        says: 'what says that it is in service',
        fails: ({ evidence }) =>
          evidence.basis === '' ? 'what says that it is in service is not stated' : null,
      },
    ],
  },
  schedule: { joint: [], form: [] },
  unschedule: { joint: [], form: [] },
  isolate: {
    joint: [],
    form: [
      {
        says: 'the reference of the isolation',
        fails: ({ evidence }) => (evidence.isolationRef === '' ? 'no isolation reference is given' : null),
      },
      {
        says: 'nothing stated against its proof',
        fails: ({ evidence }) => (evidence.proven === 'no' ? 'the isolation is stated as not proven' : null),
      },
    ],
  },
  'lift isolation': { joint: [], form: [] },
  release: {
    joint: [
      {
        says: 'an isolation with a reference',
        fails: ({ isolationRef }) => (isolationRef === null ? 'no isolation with a reference stands' : null),
      },
    ],
    form: [
      { says: 'two identity checks at the joint, by two persons', fails: identityChecks },
      {
        says: 'the tag that was seen is this joint’s',
        fails: ({ evidence }, _, { tag }) => {
          const other = evidence.identityChecks.find(
            ({ tagSeen }) => tagSeen !== '' && plain(tagSeen) !== plain(tag),
          );
          return other === undefined ? null : `tag seen is ${other.tagSeen}; this joint is ${tag}`;
        },
      },
      {
        says: 'the isolation that stands',
        fails: ({ evidence }, { isolationRef }) =>
          evidence.isolationRef === '' || isolationRef === null || evidence.isolationRef === isolationRef
            ? null
            : `isolation ${evidence.isolationRef} is named; ${isolationRef} stands`,
      },
      {
        says: 'a permit, in date',
        fails: ({ evidence, happenedAt }) => {
          if (evidence.permitRef === '') return 'no permit reference is given';
          const { permitUntil } = evidence;
          return permitUntil !== null && momentOf(permitUntil) <= momentOf(happenedAt)
            ? `the permit ended at ${permitUntil}`
            : null;
        },
      },
      {
        says: 'zero energy proven at this joint, and by whom',
        fails: ({ evidence }) => {
          if (evidence.zeroEnergyProven !== 'yes') return 'zero energy at this joint is not stated as proven';
          return evidence.provenBy === null ? 'who proved zero energy is not stated' : null;
        },
      },
      {
        says: 'supports not stated as unlocked',
        fails: ({ evidence }) =>
          evidence.supportsLocked === 'no' ? 'supports are stated as not locked' : null,
      },
    ],
  },
  break: {
    joint: [
      {
        says: 'the permit in date',
        fails: ({ permitUntil }, _, at) =>
          permitUntil !== null && momentOf(permitUntil) < momentOf(at)
            ? `the permit ended at ${permitUntil}`
            : null,
      },
    ],
    form: [
      {
        says: 'nothing stated against zero energy',
        fails: ({ evidence }) =>
          evidence.zeroEnergyProven === 'no' ? 'zero energy is stated as not proven' : null,
      },
    ],
  },
  inspect: {
    joint: [],
    form: [
      {
        says: 'a result',
        fails: ({ evidence }) =>
          evidence.result === 'not known' ? 'whether it is fit for assembly is not stated' : null,
      },
    ],
  },
  hold: { joint: [], form: [reasonGiven] },
  'clear hold': { joint: [], form: [reasonGiven] },
};

function identityChecks({ evidence }: Release): string | null {
  const told = evidence.identityChecks.filter(({ how }) => how !== 'not known');
  const people = new Set(told.map(({ personId }) => personId));
  if (people.size >= 2) return null;
  return people.size === 1
    ? 'one person checked which joint this is; a second one is needed'
    : 'nobody is stated to have checked which joint this is, and how';
}
