import type { StepData } from '../../contract/life.ts';
import { retighteningReasons } from '../retightening.ts';
import { dwellOf } from './dwell.ts';
import type { JointGuard, StepFacts, StepGuards } from './guard.ts';
import { shareOf } from './share-due.ts';
import type { JointStanding } from './standing.ts';

type Of<S extends StepData['step']> = Extract<StepData, { step: S }>;

const dwellOver: JointGuard = {
  says: 'at least 4 h since the last full pass, longer where the class says so',
  fails: (standing, { rule }, at) => {
    // The pass during start-up waits for its temperature, not for a time.
    if (standing.state !== 'tightened' && standing.state !== 'witnessed') return null;
    const { state, remaining, reason } = dwellOf(standing, rule, at);
    if (state === 'due') return null;
    return state === 'not known' ? reason : `the dwell is over in ${hours(remaining ?? 0)}`;
  },
};

const hours = (seconds: number) => {
  const minutes = Math.ceil(seconds / 60);
  return minutes < 60 ? `${minutes} min` : `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
};

const dwellPass: JointGuard = {
  says: 'the pass after the dwell, where the class asks for it',
  fails: ({ dwellPassAt, class: given }, { rule }) =>
    rule?.retightening.afterDwell && dwellPassAt === null
      ? `class ${given?.name ?? ''} asks for a pass after the dwell; none is recorded`
      : null,
};

const witness: JointGuard = {
  says: 'a witness, where one is due',
  fails: (standing, { rule }) => {
    if (standing.witnessed !== null) return null;
    const { due, explained } = shareOf('witnessed', rule?.witnessPercent ?? 0, standing);
    return due ? `no witness is recorded; ${explained}` : null;
  },
};

const loadCheck: JointGuard = {
  says: 'a load measurement, where one is due',
  fails: (standing, { rule }) => {
    if (standing.loadChecked) return null;
    const { due, explained } = shareOf('measured', rule?.loadCheckPercent ?? 0, standing);
    return due ? `no load measurement is recorded; ${explained}` : null;
  },
};

/** From the gasket to service, and what leaks afterwards. */
export const CLOSING_GUARDS: Pick<
  StepGuards,
  | 'make up'
  | 'witness'
  | 'relaxation pass'
  | 'test'
  | 'reinstate'
  | 'enter service'
  | 'report leak'
  | 'close leak watch'
> = {
  'make up': {
    joint: [],
    form: [
      {
        says: 'a new gasket',
        fails: ({ evidence }) => {
          if (evidence.gasket.condition === 'new' || putAside(evidence, 'gasket new')) return null;
          return evidence.gasket.condition === 'used'
            ? 'the gasket is used'
            : 'whether the gasket is new is not stated';
        },
      },
      {
        says: 'the gasket held against the joint’s data',
        fails: ({ evidence }) => {
          const { matchesJoint } = evidence.gasket;
          if (matchesJoint === 'yes' || putAside(evidence, 'gasket identity')) return null;
          return matchesJoint === 'no'
            ? 'the gasket is not the one the joint’s data name'
            : 'whether the gasket was held against the joint’s data is not stated';
        },
      },
      {
        says: 'engagement of the nuts not stated as short',
        fails: ({ evidence }) =>
          evidence.fullEngagement === 'no' ? 'nuts are stated as not fully engaged' : null,
      },
    ],
  },
  witness: {
    joint: [],
    form: [
      { says: 'a witness who did none of the work', fails: otherPerson },
      {
        says: 'a result',
        fails: ({ evidence }) =>
          evidence.result === 'not known' ? 'what the witness found is not stated' : null,
      },
      {
        says: 'a load measurement, where one is due',
        fails: ({ evidence }, standing, facts) =>
          evidence.loadMeasurement === null ? loadCheck.fails(standing, facts, '') : null,
      },
    ],
  },
  'relaxation pass': {
    joint: [dwellOver],
    form: [
      {
        says: 'during start-up: the conditions of retightening',
        fails: ({ evidence }, _, facts) => {
          if (evidence.kind !== 'during start-up') return null;
          const { retightening } = facts;
          const { reasons } = retighteningReasons({
            kind: 'start-up, while warming',
            boltMetalTemperature: evidence.boltTemperature?.si ?? null,
            sinceFullPass: null,
            ...retightening,
            siteProcedure: evidence.procedure || retightening.siteProcedure,
            lastTorque: evidence.torque?.si ?? retightening.lastTorque,
          });
          return reasons.length === 0 ? null : reasons.join('; ');
        },
      },
    ],
  },
  test: {
    joint: [dwellPass, witness],
    form: [
      {
        says: 'a result',
        fails: ({ evidence }) =>
          evidence.result === 'not known' ? 'whether the test passed is not stated' : null,
      },
      { says: 'a gauge in date', fails: (_, __, facts) => gaugeReason(facts) },
      { says: 'medium, pressure, hold and a method the class accepts', fails: asTheClassAsks },
      {
        says: 'for a repeated test, what was done before it',
        fails: ({ evidence }, { state }) =>
          state === 'test failed' && evidence.action === ''
            ? 'the test before failed, and what was done since is not stated'
            : null,
      },
    ],
  },
  reinstate: {
    joint: [
      {
        says: 'a leak test, where the class asks for one',
        fails: ({ state, class: given }, { rule }) =>
          rule?.leakTest.needed && state !== 'tested'
            ? `class ${given?.name ?? ''} asks for a leak test; none has passed`
            : null,
      },
      dwellPass,
      witness,
      loadCheck,
      {
        says: 'a complete record, where the class asks for one',
        fails: (_, { rule, missing }) => {
          if (!rule?.completeRecord || missing?.length === 0) return null;
          return missing === null
            ? 'whether the record is complete is not known'
            : `the record lacks ${missing.length}: ${missing.join(', ')}`;
        },
      },
    ],
    form: [
      { says: 'tags off, blinds out, supports free', fails: handedBack },
      { says: 'guards and insulation back, or carried over', fails: guardsBack },
      { says: 'punch items gone through, none left open', fails: punchItems },
    ],
  },
  'enter service': {
    joint: [
      {
        says: 'the isolation lifted',
        fails: ({ isolationRef }) =>
          isolationRef === null ? null : `isolation ${isolationRef} has not been lifted`,
      },
    ],
    form: [],
  },
  'report leak': { joint: [], form: [] },
  'close leak watch': {
    joint: [],
    form: [
      {
        says: 'what was done',
        fails: ({ evidence }) => (evidence.done === '' ? 'what was done is not stated' : null),
      },
      {
        says: 'how it was checked',
        fails: ({ evidence }) => (evidence.checkedHow === '' ? 'how it was checked is not stated' : null),
      },
    ],
  },
};

interface PutAside {
  readonly notApplicable: readonly { readonly field: string }[];
}

const putAside = ({ notApplicable }: PutAside, name: string) =>
  notApplicable.some(({ field }) => field === name);

function otherPerson({ evidence }: Of<'witness'>, { tightened }: JointStanding): string | null {
  const { witnessId } = evidence;
  if (witnessId === null) return 'who witnessed is not stated';
  return tightened.some(({ people }) => people.includes(witnessId))
    ? 'the witness did the work; somebody else has to see it'
    : null;
}

function gaugeReason({ gauge, rule }: StepFacts): string | null {
  if (gauge === 'in date') return null;
  if (gauge === 'not in date') return 'the gauge was not in date';
  return rule?.leakTest.needed ? 'whether the gauge was in date is not known' : null;
}

function asTheClassAsks({ evidence }: Of<'test'>, _: JointStanding, { rule }: StepFacts): string | null {
  if (!rule?.leakTest.needed) return null;
  const { medium, pressure, hold, method } = evidence;
  const blank = [
    ...(medium === '' ? ['medium'] : []),
    ...(pressure === null ? ['pressure'] : []),
    ...(hold === null ? ['hold'] : []),
    ...(method === 'not known' ? ['method'] : []),
  ];
  if (blank.length > 0) return `not stated: ${blank.join(', ')}`;
  const { methods } = rule.leakTest;
  if (methods.length === 0 || methods.some((one) => one === method)) return null;
  return `class ${rule.name} accepts ${methods.join(', ')}; this test was by ${method}`;
}

function handedBack({ evidence }: Of<'reinstate'>): string | null {
  const { tagsRemoved, blindsRemoved, supportsUnlocked } = evidence;
  const open = [
    ...(tagsRemoved === 'yes' || putAside(evidence, 'tags removed') ? [] : [['tags removed', tagsRemoved]]),
    ...(blindsRemoved === 'yes' ? [] : [['blinds removed', blindsRemoved]]),
    ...(supportsUnlocked === 'yes' ? [] : [['supports unlocked', supportsUnlocked]]),
  ];
  return open.length === 0 ? null : open.map(([what, said]) => `${what}: ${said}`).join('; ');
}

function guardsBack({ evidence }: Of<'reinstate'>): string | null {
  if (putAside(evidence, 'guards and insulation')) return null;
  const carried = evidence.punchItems?.some(({ state }) => state === 'carried over') ?? false;
  const fine = (said: string) => said === 'yes' || (said === 'no' && carried);
  const open = [
    ...(fine(evidence.guardsBack) ? [] : [`guards back: ${evidence.guardsBack}`]),
    ...(fine(evidence.insulationBack) ? [] : [`insulation back: ${evidence.insulationBack}`]),
  ];
  return open.length === 0 ? null : `${open.join('; ')}, and nothing is carried over`;
}

function punchItems({ evidence }: Of<'reinstate'>): string | null {
  const { punchItems: items } = evidence;
  if (items === null) return 'punch items were not gone through';
  const open = items.filter(({ state }) => state === 'open');
  if (open.length > 0) return `open punch items: ${open.map(({ text }) => text).join('; ')}`;
  const unkept = items.filter(({ state, reference }) => state === 'carried over' && reference === '');
  return unkept.length === 0
    ? null
    : `carried over without a reference: ${unkept.map(({ text }) => text).join('; ')}`;
}
