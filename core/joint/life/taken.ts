import type { JointState, JointStep, StepData } from '../../contract/life.ts';
import { countedLeaks, leaked } from './leaks.ts';
import { provenTight } from './proven.ts';
import { entered, type Standing, type StepEvent } from './standing.ts';
import { forcedTo, leadsTo, resultOf } from './steps.ts';

type Taken<S extends JointStep> = Extract<StepData, { step: S }>;

/**
 * The standing after a step that is legal in the joint's state.
 *
 * @param standing standing before
 * @param event the step
 * @returns standing after it; unchanged where the step is not legal
 * @example stepTaken(UNASSESSED, { data: { step: 'hold' } }).state // 'unassessed'
 * @source rule of this program
 */
export function stepTaken(standing: Standing, event: StepEvent): Standing {
  const state = leadsTo(standing, event.data.step, resultOf(event.data));
  return state === null ? standing : after(standing, event, state);
}

/**
 * The standing if work that was out of order is accepted as done. A held joint stays held, in what the work made it.
 *
 * @param standing standing before
 * @param event the step that was really done
 * @returns standing as the work made it
 * @example stepForced(UNASSESSED, { id: 'a', happenedAt: '2026-03-16T07:00:00Z', data: { step: 'isolate', evidence: {
 * isolationRef: 'I-1' } } }).isolationRef // 'I-1'
 * @source rule of this program
 */
export function stepForced(standing: Standing, event: StepEvent): Standing {
  const state = forcedTo(standing, event.data);
  if (standing.state !== 'held') return after(standing, event, state);
  const { heldBecause } = standing;
  const done = after({ ...standing, state: standing.heldFrom ?? 'held' }, event, state);
  if (done.state === 'held') return { ...standing, ...done, since: standing.since };
  return { ...done, state: 'held', since: standing.since, heldFrom: done.state, heldBecause };
}

function after(standing: Standing, event: StepEvent, state: JointState): Standing {
  const { data, happenedAt } = event;
  const moved = () => entered(standing, state, happenedAt);
  switch (data.step) {
    case 'assess':
      return assessed(moved(), standing, data, event);
    case 'schedule':
      return { ...moved(), scheduledFrom: standing.state };
    case 'unschedule':
      return standing.state === 'scheduled'
        ? { ...moved(), scheduledFrom: null }
        : { ...moved(), ...NO_PERMIT, releasedFrom: null };
    case 'isolate':
      return { ...moved(), isolationRef: data.evidence.isolationRef || null };
    case 'lift isolation':
      return { ...moved(), ...NO_PERMIT, isolationRef: null };
    case 'release':
      return {
        ...moved(),
        releasedFrom: standing.state,
        permitRef: data.evidence.permitRef || null,
        permitUntil: data.evidence.permitUntil,
      };
    case 'break':
      return broken(standing, happenedAt);
    case 'inspect':
      return state === 'held' ? held(standing, 'not fit for assembly', happenedAt) : moved();
    case 'hold':
      return held(standing, data.evidence.reason, happenedAt);
    case 'clear hold':
      return cleared(moved(), data);
    case 'make up':
      return madeUp(standing, event);
    case 'witness':
      return state === 'held'
        ? held(standing, 'the witness found it not as it should be', happenedAt)
        : witnessed(moved(), data, event);
    case 'relaxation pass':
      return data.evidence.kind === 'during start-up'
        ? { ...moved(), startUpPassAt: happenedAt }
        : { ...moved(), dwellPassAt: happenedAt };
    case 'test':
      return resultOf(data) === 'bad' ? leaked(standing, 'test failed', event) : moved();
    case 'reinstate':
      return data.evidence.isolationLifted === 'yes'
        ? { ...moved(), ...NO_PERMIT, isolationRef: null }
        : moved();
    case 'declare in service':
    case 'enter service':
      return { ...moved(), ...NO_PERMIT, firstAssembly: false, scheduledFrom: null, releasedFrom: null };
    case 'report leak':
      return leakReported(standing, event, state);
    case 'close leak watch':
      return moved();
  }
}

const NO_PERMIT = { permitRef: null, permitUntil: null };

function assessed(
  moved: Standing,
  before: Standing,
  { evidence }: Taken<'assess'>,
  event: StepEvent,
): Standing {
  const said = evidence.firstAssembly === 'yes';
  const untouched = before.state === 'unassessed' || before.state === 'assessed';
  const firstAssembly = said && before.lastBreakAt === null && (untouched || before.firstAssembly);
  return { ...moved, class: event.class ?? before.class, firstAssembly };
}

function held(standing: Standing, reason: string, at: string): Standing {
  return { ...entered(standing, 'held', at), heldFrom: standing.state, heldBecause: reason };
}

/** Where the tightening was not proven, whoever clears the hold answers for it. */
function cleared(moved: Standing, { by, evidence }: Taken<'clear hold'>): Standing {
  const free = { ...moved, heldFrom: null, heldBecause: null };
  if (!CLAIMED_TIGHT.includes(free.state) || provenTight(free)) return free;
  return { ...free, override: { reason: evidence.reason, by } };
}

const CLAIMED_TIGHT: readonly JointState[] = [
  'tightened',
  'witnessed',
  'tested',
  'test failed',
  'reinstated',
];

/** Nothing of an assembly counts once its joint is open. */
const NOTHING_ASSEMBLED = {
  pass: null,
  tightened: [],
  passPeople: [],
  override: null,
  witnessed: null,
  loadChecked: false,
  dwellPassAt: null,
  startUpPassAt: null,
} as const;

/**
 * The standing once a joint has been opened.
 *
 * @param standing standing before
 * @param at moment with its offset
 * @returns standing of an open joint; one that was open keeps the moment it was broken
 * @example broken(UNASSESSED, '2026-03-16T07:00:00Z').state // 'broken'
 * @source rule of this program
 */
export function broken(standing: Standing, at: string): Standing {
  if (standing.state === 'broken') return standing;
  return {
    ...entered(standing, 'broken', at),
    ...NOTHING_ASSEMBLED,
    lastBreakAt: at,
    firstAssembly: false,
    releasedFrom: null,
  };
}

function madeUp(standing: Standing, { happenedAt }: StepEvent): Standing {
  if (standing.state === 'made up') return standing;
  const makeUp = standing.makeUp + 1;
  return {
    ...entered(standing, 'made up', happenedAt),
    ...NOTHING_ASSEMBLED,
    makeUp,
    leaks: countedLeaks(standing.leaks, makeUp),
  };
}

function witnessed(moved: Standing, { by, evidence }: Taken<'witness'>, { id }: StepEvent): Standing {
  const loadChecked = moved.loadChecked || evidence.loadMeasurement !== null;
  return { ...moved, loadChecked, witnessed: { eventId: id, by: evidence.witnessId ?? by } };
}

/** What a leak makes of a joint that was taken out of its state for a while: it goes there when it comes back. */
const LEAKS_TO: Readonly<Partial<Record<JointState, JointState>>> = {
  assessed: 'leak watch',
  reinstated: 'leak watch',
  'in service': 'leak watch',
  tightened: 'test failed',
  witnessed: 'test failed',
  tested: 'test failed',
};

function leakReported(standing: Standing, event: StepEvent, state: JointState): Standing {
  const { state: now } = standing;
  if (now === 'scheduled' || now === 'held') {
    const remembered = now === 'held' ? standing.heldFrom : standing.scheduledFrom;
    const to = remembered === null ? undefined : LEAKS_TO[remembered];
    if (to === undefined) return standing;
    const kept = now === 'held' ? { heldFrom: to } : { scheduledFrom: to };
    return leaked({ ...standing, ...kept }, now, event);
  }
  if (now === 'unassessed' || now === state) return standing;
  if (state === 'held') return held(standing, 'leak at a joint without pressure', event.happenedAt);
  return leaked(standing, state, event);
}
