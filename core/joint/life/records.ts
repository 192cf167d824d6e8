import type { JointState } from '../../contract/life.ts';
import { setProven } from './proven.ts';
import {
  type BreakoutEvent,
  entered,
  momentOf,
  type PassEvent,
  type SetTightened,
  type Standing,
  stateAt,
  type TighteningEvent,
  type WorkEvent,
} from './standing.ts';
import { broken } from './taken.ts';

/** States in which bolts are tightened in order. */
const TIGHTENING_FROM: readonly JointState[] = [
  'made up',
  'tightening',
  'tightened',
  'witnessed',
  'test failed',
];

/** States that tightening out of order leaves as they are: the joint was closed, and in the plant's hands. */
const KEPT_BY_TIGHTENING: readonly JointState[] = [
  'scheduled',
  'isolated',
  'released to break',
  'reinstated',
  'in service',
  'leak watch',
];

/** What a record of work is called in a sentence. */
export const WORK_NAMES: Readonly<Record<WorkEvent['kind'], string>> = {
  tightening: 'tightening',
  breakout: 'breakout',
  pass: 'pass',
};

export interface WorkRecorded {
  readonly standing: Standing;
  /** Why it was out of order; none where it was in order. */
  readonly reasons: readonly string[];
  /** It lies before the present state: whatever it was, the joint is now what later records made it. */
  readonly past: boolean;
}

/**
 * What a record of work does to a joint. In order it moves the state; out of order the reasons come back, and the state is
 * left where it was. Work that began before the present state is held against the state it was done in.
 *
 * @param standing standing before
 * @param event tightening, breakout or pass
 * @returns standing after it, with reasons where it was out of order
 * @example workRecorded(UNASSESSED, { kind: 'pass', happenedAt: '2026-03-16T07:00:00Z' }).reasons // []
 * @source rule of this program
 */
export function workRecorded(standing: Standing, event: WorkEvent): WorkRecorded {
  if (standing.state === 'unassessed') return noReasons(standing);
  if (standing.since !== null && momentOf(event.happenedAt) < momentOf(standing.since)) {
    return recordedLate(standing, event);
  }
  const reasons = outOfPlace(standing, event);
  return reasons.length > 0 ? { standing, reasons, past: false } : inOrder(standing, event);
}

const noReasons = (standing: Standing): WorkRecorded => ({ standing, reasons: [], past: false });

function recordedLate(standing: Standing, event: WorkEvent): WorkRecorded {
  const then = stateAt(standing, event.happenedAt);
  if (then === null) return noReasons(standing);
  const reasons = outOfPlace({ ...standing, state: then }, event).map(
    (reason) => `${reason}, at the moment it was done`,
  );
  if (reasons.length > 0) return { standing, reasons, past: true };
  // The tightening it belongs to is still going on, so it counts; else it was counted when its end was recorded.
  const goesOn = standing.state === 'made up' || standing.state === 'tightening';
  return goesOn ? inOrder(standing, event) : noReasons(standing);
}

function outOfPlace(standing: Standing, event: WorkEvent): string[] {
  const { state, permitUntil } = standing;
  if (event.kind === 'breakout') {
    if (state === 'broken') return [];
    if (state !== 'released to break') return [`${WORK_NAMES.breakout} recorded while ${state}`];
    const over = permitUntil !== null && momentOf(event.happenedAt) > momentOf(permitUntil);
    return over ? [`the permit ended at ${permitUntil}`] : [];
  }
  return TIGHTENING_FROM.includes(state) ? [] : [`${WORK_NAMES[event.kind]} recorded while ${state}`];
}

function inOrder(standing: Standing, event: WorkEvent): WorkRecorded {
  switch (event.kind) {
    case 'breakout':
      return noReasons(event.opened ? broken(standing, event.happenedAt) : standing);
    case 'pass':
      return noReasons(passDone(standing, event, 'tightening'));
    case 'tightening':
      return tighteningDone(standing, event);
  }
}

/** Complete and proven it counts; complete with tools that are not in calibration it waits for a decision. */
function tighteningDone(standing: Standing, event: TighteningEvent): WorkRecorded {
  const begun = begunAgain(standing, event.boltSet);
  const going = entered(begun, 'tightening', event.happenedAt);
  if (!event.complete) return noReasons(going);
  const set = setOf(event);
  if (!setProven(set)) {
    const why = event.why.length === 0 ? '' : `: ${event.why.join('; ')}`;
    return { standing: going, reasons: [`tools ${event.calibration}${why}`], past: false };
  }
  return noReasons(withSet(begun, set, event));
}

/**
 * What work that was out of order makes of a joint if it is accepted as done.
 *
 * @param standing standing before
 * @param event tightening, breakout or pass
 * @returns standing as the work made it; a held joint stays held in that state
 * @example workForced(UNASSESSED, { kind: 'breakout', opened: true, happenedAt: '2026-03-16T07:00:00Z' }).state //
 * 'broken'
 * @source rule of this program
 */
export function workForced(standing: Standing, event: WorkEvent): Standing {
  if (standing.state !== 'held') return forced(standing, event);
  const { heldFrom, heldBecause, since } = standing;
  const done = forced({ ...standing, state: heldFrom ?? 'held' }, event);
  return { ...done, state: 'held', since, heldFrom: done.state, heldBecause };
}

function forced(standing: Standing, event: WorkEvent): Standing {
  const { state } = standing;
  if (event.kind === 'breakout') return forcedBreakout(standing, event);
  const kept = KEPT_BY_TIGHTENING.includes(state);
  if (event.kind === 'pass') return passDone(standing, event, kept ? state : 'tightening');
  const begun = begunAgain(standing, event.boltSet);
  if (!event.complete) return kept ? begun : entered(begun, 'tightening', event.happenedAt);
  const done = withSet(begun, setOf(event), event);
  return kept ? { ...done, state, since: standing.since, trail: standing.trail } : done;
}

function forcedBreakout(standing: Standing, { opened, happenedAt }: BreakoutEvent): Standing {
  return opened ? broken(standing, happenedAt) : standing;
}

function passDone(standing: Standing, event: PassEvent, state: JointState): Standing {
  const begun = begunAgain(standing, event.pass.boltSet);
  const passPeople = [...new Set([...standing.passPeople, ...event.people])];
  return { ...entered(begun, state, event.happenedAt), pass: event.pass, passPeople };
}

/** A set that is tightened again is not tightened until it is done; what was seen of the joint before no longer counts. */
function begunAgain(standing: Standing, boltSet: number): Standing {
  return {
    ...standing,
    tightened: standing.tightened.filter((set) => set.boltSet !== boltSet),
    override: null,
    witnessed: null,
    loadChecked: false,
    dwellPassAt: null,
    startUpPassAt: null,
  };
}

function setOf(event: TighteningEvent): SetTightened {
  const { id, happenedAt, boltSet, people, calibration, why, setAside, ordinal } = event;
  return { boltSet, eventId: id, at: happenedAt, people, calibration, why, setAside, ordinal };
}

/** The joint is tightened once each of its sets is. */
function withSet(standing: Standing, set: SetTightened, { boltSets, happenedAt }: TighteningEvent): Standing {
  const people = [...new Set([...set.people, ...standing.passPeople])];
  const tightened = [...standing.tightened, { ...set, people }];
  const done = new Set(tightened.map(({ boltSet }) => boltSet));
  const whole = Array.from({ length: boltSets }, (_, index) => index).every((index) => done.has(index));
  return {
    ...entered(standing, whole ? 'tightened' : 'tightening', happenedAt),
    tightened,
    pass: null,
    passPeople: [],
  };
}
