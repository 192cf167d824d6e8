import { ROLES } from '../../access/roles.ts';
import type { JointState, JointStep, StepData } from '../../contract/life.ts';
import type { Role } from '../../contract/roles.ts';
import type { Standing } from './standing.ts';

/** Where a step leads: a state, the state itself, a state that is remembered, or one that hangs on the result. */
type Target =
  | JointState
  | 'same'
  | 'where it was scheduled'
  | 'where it was released'
  | 'where it was held'
  | 'by inspection'
  | 'by witness'
  | 'by test';

interface StepRule {
  readonly roles: readonly Role[];
  /** Work that can have been done although the step is refused. */
  readonly work: boolean;
  readonly from: Readonly<Partial<Record<JointState, Target>>>;
}

const EVERYONE: readonly Role[] = ROLES;
const ENGINEER: readonly Role[] = ['engineer'];
const PLAN: readonly Role[] = ['planner', 'engineer'];
const WORK: readonly Role[] = ['engineer', 'technician'];
const PLAN_AND_WORK: readonly Role[] = ['planner', 'engineer', 'technician'];

const STATES_WITH_CLASS: readonly JointState[] = [
  'assessed',
  'scheduled',
  'isolated',
  'released to break',
  'broken',
  'inspected',
  'held',
  'made up',
  'tightening',
  'tightened',
  'witnessed',
  'tested',
  'test failed',
  'reinstated',
  'in service',
  'leak watch',
];

const inEach = (states: readonly JointState[], target: Target) =>
  Object.fromEntries(states.map((state) => [state, target])) as Partial<Record<JointState, Target>>;

const ASSEMBLED: readonly JointState[] = ['tightened', 'witnessed', 'tested', 'test failed', 'reinstated'];

/** The transition table of docs/joint-states.md. A state that a step does not name refuses it. */
export const STEPS: Readonly<Record<JointStep, StepRule>> = {
  assess: {
    roles: ENGINEER,
    work: false,
    from: { unassessed: 'assessed', ...inEach(STATES_WITH_CLASS, 'same') },
  },
  'declare in service': { roles: PLAN, work: false, from: { assessed: 'in service' } },
  schedule: {
    roles: PLAN,
    work: false,
    from: inEach(['assessed', 'in service', 'leak watch'], 'scheduled'),
  },
  unschedule: {
    roles: PLAN,
    work: false,
    from: { scheduled: 'where it was scheduled', 'released to break': 'where it was released' },
  },
  isolate: {
    roles: PLAN_AND_WORK,
    work: true,
    from: {
      scheduled: 'isolated',
      ...inEach(['isolated', 'broken', 'inspected', 'made up', 'tightening', ...ASSEMBLED], 'same'),
    },
  },
  'lift isolation': {
    roles: PLAN_AND_WORK,
    work: true,
    from: { isolated: 'scheduled', ...inEach(ASSEMBLED, 'same') },
  },
  release: {
    roles: PLAN,
    work: false,
    from: inEach(['isolated', 'made up', 'tightening', ...ASSEMBLED], 'released to break'),
  },
  break: { roles: WORK, work: true, from: { 'released to break': 'broken', broken: 'same' } },
  inspect: {
    roles: WORK,
    work: true,
    from: inEach(['scheduled', 'isolated', 'broken', 'inspected'], 'by inspection'),
  },
  hold: {
    roles: EVERYONE,
    work: false,
    from: inEach(
      STATES_WITH_CLASS.filter((state) => state !== 'held'),
      'held',
    ),
  },
  'clear hold': { roles: ENGINEER, work: false, from: { held: 'where it was held' } },
  'make up': { roles: WORK, work: true, from: { inspected: 'made up', 'made up': 'same' } },
  witness: { roles: WORK, work: false, from: inEach(['tightened', 'witnessed'], 'by witness') },
  'relaxation pass': {
    roles: WORK,
    work: true,
    from: inEach(['tightened', 'witnessed', 'tested', 'reinstated', 'in service'], 'same'),
  },
  test: {
    roles: WORK,
    work: true,
    from: inEach(['tightened', 'witnessed', 'tested', 'test failed'], 'by test'),
  },
  reinstate: {
    roles: PLAN_AND_WORK,
    work: true,
    from: inEach(['tightened', 'witnessed', 'tested'], 'reinstated'),
  },
  'enter service': { roles: PLAN, work: true, from: { reinstated: 'in service' } },
  'report leak': {
    roles: EVERYONE,
    work: true,
    from: {
      ...inEach(['unassessed', 'scheduled', 'held', 'test failed', 'leak watch'], 'same'),
      ...inEach(['assessed', 'reinstated', 'in service'], 'leak watch'),
      ...inEach(['isolated', 'released to break', 'broken', 'inspected', 'made up', 'tightening'], 'held'),
      ...inEach(['tightened', 'witnessed', 'tested'], 'test failed'),
    },
  },
  'close leak watch': { roles: ENGINEER, work: false, from: { 'leak watch': 'in service' } },
};

/** What steps that lead on by their result are read from. */
type Result = 'good' | 'bad' | 'not known';

/**
 * The result that a step states, where where it leads hangs on it.
 *
 * @param data step with its evidence
 * @returns good, bad or not known; a step without a result is good
 * @example resultOf({ step: 'test', evidence: { result: 'failed' } }) // 'bad'
 * @source rule of this program
 */
export function resultOf(data: StepData): Result {
  switch (data.step) {
    case 'inspect':
      return read(data.evidence.result, 'fit for assembly', 'not fit for assembly');
    case 'witness':
      return read(data.evidence.result, 'as it should be', 'not as it should be');
    case 'test':
      return read(data.evidence.result, 'passed', 'failed');
    default:
      return 'good';
  }
}

function read(stated: string, good: string, bad: string): Result {
  if (stated === good) return 'good';
  return stated === bad ? 'bad' : 'not known';
}

const GOOD: Readonly<Record<string, JointState>> = {
  'by inspection': 'inspected',
  'by witness': 'witnessed',
  'by test': 'tested',
};
const BAD: Readonly<Record<string, JointState>> = {
  'by inspection': 'held',
  'by witness': 'held',
  'by test': 'test failed',
};

/**
 * State a step leads to.
 *
 * @param standing standing of the joint
 * @param step name of the step
 * @param result what it states, where it leads by its result; a result that is not known leaves the state
 * @returns state; null where the step is not legal in this state
 * @example leadsTo(UNASSESSED, 'assess', 'good') // 'assessed'
 * @source rule of this program
 */
export function leadsTo(standing: Standing, step: JointStep, result: Result): JointState | null {
  const target = STEPS[step].from[standing.state];
  switch (target) {
    case undefined:
      return null;
    case 'same':
      return standing.state;
    case 'where it was scheduled':
      return standing.scheduledFrom;
    case 'where it was released':
      return standing.releasedFrom;
    case 'where it was held':
      return standing.heldFrom;
    case 'by inspection':
    case 'by witness':
    case 'by test': {
      const byResult = result === 'good' ? GOOD[target] : result === 'bad' ? BAD[target] : undefined;
      return byResult ?? standing.state;
    }
    default:
      return target;
  }
}

/**
 * State that work done out of order makes of a joint, whatever it was in before.
 *
 * @param standing standing of the joint; for a held one the state it is held in is meant
 * @param data the step with its evidence
 * @returns state; the same for a step that is no work
 * @example forcedTo(UNASSESSED, { step: 'break' }) // 'broken'
 * @source rule of this program
 */
export function forcedTo({ state, heldFrom }: Standing, data: StepData): JointState {
  const real = state === 'held' ? (heldFrom ?? state) : state;
  switch (data.step) {
    case 'isolate':
      return real === 'scheduled' ? 'isolated' : real;
    case 'lift isolation':
      return real === 'isolated' ? 'scheduled' : real;
    case 'break':
      return 'broken';
    case 'inspect':
      return { good: 'inspected', bad: 'held', 'not known': real }[resultOf(data)] as JointState;
    case 'make up':
      return 'made up';
    case 'test':
      return { good: 'tested', bad: 'test failed', 'not known': real }[resultOf(data)] as JointState;
    case 'reinstate':
      return 'reinstated';
    case 'enter service':
      return 'in service';
    default:
      return real;
  }
}
