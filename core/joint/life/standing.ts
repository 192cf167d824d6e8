import type { Criticality } from '../../contract/assembly.ts';
import type { DeviationDecision, JointState, StepData } from '../../contract/life.ts';

/** Whether the tools of a tightening were in calibration when it was done. "Not known" is never taken for "in". */
export type Calibration = 'in calibration' | 'not in calibration' | 'not known';

export interface SetAside {
  readonly reason: string;
  readonly by: string;
}

export interface ClassGiven {
  readonly name: string;
  readonly level: Criticality;
  /** The site's rule; null for the one that comes with the program. */
  readonly ruleId: string | null;
}

/** A complete tightening of one bolt set. */
export interface SetTightened {
  readonly boltSet: number;
  readonly eventId: string;
  readonly at: string;
  readonly people: readonly string[];
  readonly calibration: Calibration;
  /** What stands against the tools. */
  readonly why: readonly string[];
  /** Set aside when the setting was issued. */
  readonly setAside: SetAside | null;
  /** Which tightening of its class this was, for the share that is witnessed. */
  readonly ordinal: number | null;
}

/** What the crew left half-done. */
export interface PassStanding {
  readonly boltSet: number;
  readonly number: number;
  readonly of: number;
  readonly lastBolt: number | null;
  readonly stopped: string | null;
}

/** A record that was done out of order, and why it was. */
export interface DeviatingWork {
  readonly eventId: string;
  readonly what: string;
  readonly happenedAt: string;
  readonly reasons: readonly string[];
  readonly people: readonly string[];
}

export interface OpenDeviation {
  /** Record that opened it. */
  readonly id: string;
  readonly openedAt: string;
  readonly works: readonly DeviatingWork[];
  /** What the joint is if the work is accepted. */
  readonly ifAccepted: Standing;
}

/** A joint as its events make it, without what is open against it. */
export interface Standing {
  readonly state: JointState;
  /** Moment this state began; null for a joint nobody has assessed. */
  readonly since: string | null;
  readonly class: ClassGiven | null;
  /** Nothing to break: stated when it was assessed, and true until it goes into service. */
  readonly firstAssembly: boolean;
  readonly heldFrom: JointState | null;
  readonly heldBecause: string | null;
  readonly scheduledFrom: JointState | null;
  readonly releasedFrom: JointState | null;
  readonly isolationRef: string | null;
  readonly permitRef: string | null;
  readonly permitUntil: string | null;
  readonly lastBreakAt: string | null;
  /** Make-ups the register has seen. */
  readonly makeUp: number;
  readonly pass: PassStanding | null;
  /** Bolt sets of the joint that are tightened in this make-up. */
  readonly tightened: readonly SetTightened[];
  /** Who recorded passes of the tightening that is not finished. */
  readonly passPeople: readonly string[];
  /** Of this make-up: an engineer's reason for work that was out of order. */
  readonly override: SetAside | null;
  readonly witnessed: { readonly eventId: string; readonly by: string } | null;
  readonly loadChecked: boolean;
  readonly dwellPassAt: string | null;
  readonly startUpPassAt: string | null;
  /** Leaks of this make-up and the one before. */
  readonly leaks: readonly Leak[];
  /** States since the joint last went out of service, each with the moment it began. */
  readonly trail: readonly { readonly state: JointState; readonly at: string }[];
}

export interface Leak {
  readonly eventId: string;
  readonly at: string;
  readonly makeUp: number;
}

export interface JointStanding extends Standing {
  readonly deviation: OpenDeviation | null;
}

/** What every event of a joint's life tells. */
interface Told {
  readonly id: string;
  readonly happenedAt: string;
}

export type TighteningEvent = Told & {
  readonly kind: 'tightening';
  readonly boltSet: number;
  /** Bolt sets of the joint, its own bolting counted. */
  readonly boltSets: number;
  /** All studs of the set, and the last round without turning where there is one. */
  readonly complete: boolean;
  /** What it lacks, where it is not complete. */
  readonly lacks: readonly string[];
  readonly people: readonly string[];
  readonly calibration: Calibration;
  readonly why: readonly string[];
  readonly setAside: SetAside | null;
  readonly ordinal: number | null;
};

export type BreakoutEvent = Told & {
  readonly kind: 'breakout';
  /** At least one bolt turned or was cut. */
  readonly opened: boolean;
  readonly people: readonly string[];
};

export type PassEvent = Told & {
  readonly kind: 'pass';
  readonly pass: PassStanding;
  readonly people: readonly string[];
};

export type StepEvent = Told & {
  readonly kind: 'step';
  readonly data: StepData;
  /** Class given by an assessment. */
  readonly class: ClassGiven | null;
  /** Why it was out of order when it was recorded; none for a step that was in order. */
  readonly outOfOrder: readonly string[];
};

export type DecisionEvent = Told & {
  readonly kind: 'decision';
  readonly deviationId: string;
  readonly decision: DeviationDecision;
  readonly reason: string;
  readonly by: string;
};

export type WorkEvent = TighteningEvent | BreakoutEvent | PassEvent;
export type LifeEvent = WorkEvent | StepEvent | DecisionEvent;

/** A joint nobody has assessed. */
export const UNASSESSED: JointStanding = {
  state: 'unassessed',
  since: null,
  class: null,
  firstAssembly: false,
  heldFrom: null,
  heldBecause: null,
  scheduledFrom: null,
  releasedFrom: null,
  isolationRef: null,
  permitRef: null,
  permitUntil: null,
  lastBreakAt: null,
  makeUp: 0,
  pass: null,
  tightened: [],
  passPeople: [],
  override: null,
  witnessed: null,
  loadChecked: false,
  dwellPassAt: null,
  startUpPassAt: null,
  leaks: [],
  trail: [],
  deviation: null,
};

/**
 * A moment as a number, so that two with different offsets compare.
 *
 * Equation: time since 1970-01-01T00:00:00Z.
 * @param moment with its offset
 * @returns ms since 1970
 * @example momentOf('1970-01-01T01:00:00+01:00') // 0
 * @source rule of this program
 */
export const momentOf = (moment: string): number => Date.parse(moment);

/**
 * The standing once a state begins; it keeps the moment and remembers the way here. A state that goes on keeps the moment
 * it began.
 *
 * @param standing standing before
 * @param state state that begins
 * @param at moment with its offset
 * @returns standing in the new state
 * @example entered(UNASSESSED, 'assessed', '2026-03-16T07:00:00Z').since // '2026-03-16T07:00:00Z'
 * @source rule of this program
 */
export function entered<S extends Standing>(standing: S, state: JointState, at: string): S {
  if (standing.state === state) return standing;
  const { since } = standing;
  // Told late: a state can't begin before the one it follows.
  const begins = { state, at: since !== null && momentOf(since) > momentOf(at) ? since : at };
  // A cycle ends in service: what came before is no longer needed to place a late record.
  const trail = state === 'in service' ? [begins] : [...standing.trail, begins];
  return { ...standing, state, since: begins.at, trail };
}

/**
 * State a joint was in at a moment, as its present cycle tells it.
 *
 * @param standing standing now
 * @param at moment with its offset
 * @returns state; null before the present cycle
 * @example stateAt(entered(UNASSESSED, 'assessed', '2026-03-16T07:00:00Z'), '2026-03-16T08:00:00Z') // 'assessed'
 * @source rule of this program
 */
export function stateAt(standing: Standing, at: string): JointState | null {
  return standing.trail.findLast((begun) => momentOf(begun.at) <= momentOf(at))?.state ?? null;
}
