/*
 * Entered by hand from docs/joint-states.md, not from the code: what each step and each record does in each state.
 * NO: refused. SAME: taken, the state stays.
 */

const NO = null;
const SAME = 'same';

const HELD = 'held';
const RELEASED = 'released to break';
const FAILED = 'test failed';
const WATCH = 'leak watch';

/** A step that leads where its result says: good, bad. */
type ByResult = readonly [good: string, bad: string];
export type Cell = string | ByResult | null;

type Row = readonly [state: string, ...cells: Cell[]];

const PLANNING_STEPS = [
  'assess',
  'declare in service',
  'schedule',
  'unschedule',
  'isolate',
  'lift isolation',
  'release',
];

/** "back": to the state the fixtures came from, in service where it was scheduled and isolated where it was released. */
const PLANNING: readonly Row[] = [
  ['unassessed', 'assessed', NO, NO, NO, NO, NO, NO],
  ['assessed', SAME, 'in service', 'scheduled', NO, NO, NO, NO],
  ['scheduled', SAME, NO, NO, 'in service', 'isolated', NO, NO],
  ['isolated', SAME, NO, NO, NO, SAME, 'scheduled', RELEASED],
  ['released to break', SAME, NO, NO, 'isolated', NO, NO, NO],
  ['broken', SAME, NO, NO, NO, SAME, NO, NO],
  ['inspected', SAME, NO, NO, NO, SAME, NO, NO],
  ['held', SAME, NO, NO, NO, NO, NO, NO],
  ['made up', SAME, NO, NO, NO, SAME, NO, RELEASED],
  ['tightening', SAME, NO, NO, NO, SAME, NO, RELEASED],
  ['tightened', SAME, NO, NO, NO, SAME, SAME, RELEASED],
  ['witnessed', SAME, NO, NO, NO, SAME, SAME, RELEASED],
  ['tested', SAME, NO, NO, NO, SAME, SAME, RELEASED],
  ['test failed', SAME, NO, NO, NO, SAME, SAME, RELEASED],
  ['reinstated', SAME, NO, NO, NO, SAME, SAME, RELEASED],
  ['in service', SAME, NO, 'scheduled', NO, NO, NO, NO],
  ['leak watch', SAME, NO, 'scheduled', NO, NO, NO, NO],
];

const ASSEMBLY_STEPS = ['break', 'inspect', 'hold', 'clear hold', 'make up', 'witness', 'relaxation pass'];

/** Inspected from scheduled or isolated only in a first assembly, which has a test of its own. Held in broken. */
const ASSEMBLY: readonly Row[] = [
  ['unassessed', NO, NO, NO, NO, NO, NO, NO],
  ['assessed', NO, NO, HELD, NO, NO, NO, NO],
  ['scheduled', NO, NO, HELD, NO, NO, NO, NO],
  ['isolated', NO, NO, HELD, NO, NO, NO, NO],
  ['released to break', 'broken', NO, HELD, NO, NO, NO, NO],
  ['broken', SAME, ['inspected', HELD], HELD, NO, NO, NO, NO],
  ['inspected', NO, [SAME, HELD], HELD, NO, 'made up', NO, NO],
  ['held', NO, NO, NO, 'broken', NO, NO, NO],
  ['made up', NO, NO, HELD, NO, SAME, NO, NO],
  ['tightening', NO, NO, HELD, NO, NO, NO, NO],
  ['tightened', NO, NO, HELD, NO, NO, ['witnessed', HELD], SAME],
  ['witnessed', NO, NO, HELD, NO, NO, [SAME, HELD], SAME],
  ['tested', NO, NO, HELD, NO, NO, NO, SAME],
  ['test failed', NO, NO, HELD, NO, NO, NO, NO],
  ['reinstated', NO, NO, HELD, NO, NO, NO, SAME],
  ['in service', NO, NO, HELD, NO, NO, NO, SAME],
  ['leak watch', NO, NO, HELD, NO, NO, NO, NO],
];

const RETURN_STEPS = ['test', 'reinstate', 'enter service', 'report leak', 'close leak watch'];

const RETURN: readonly Row[] = [
  ['unassessed', NO, NO, NO, SAME, NO],
  ['assessed', NO, NO, NO, WATCH, NO],
  ['scheduled', NO, NO, NO, SAME, NO],
  ['isolated', NO, NO, NO, HELD, NO],
  ['released to break', NO, NO, NO, HELD, NO],
  ['broken', NO, NO, NO, HELD, NO],
  ['inspected', NO, NO, NO, HELD, NO],
  ['held', NO, NO, NO, SAME, NO],
  ['made up', NO, NO, NO, HELD, NO],
  ['tightening', NO, NO, NO, HELD, NO],
  ['tightened', ['tested', FAILED], 'reinstated', NO, FAILED, NO],
  ['witnessed', ['tested', FAILED], 'reinstated', NO, FAILED, NO],
  ['tested', [SAME, FAILED], 'reinstated', NO, FAILED, NO],
  // The second failure within a make-up makes a repeated leaker.
  ['test failed', ['tested', HELD], NO, NO, SAME, NO],
  ['reinstated', NO, NO, 'in service', WATCH, NO],
  ['in service', NO, NO, NO, WATCH, NO],
  ['leak watch', NO, NO, NO, SAME, 'in service'],
];

export interface StepCase {
  readonly state: string;
  readonly step: string;
  readonly cell: Cell;
}

const casesOf = (steps: readonly string[], rows: readonly Row[]): StepCase[] =>
  rows.flatMap(([state, ...cells]) => {
    if (cells.length !== steps.length)
      throw new Error(`${state}: ${cells.length} cells, ${steps.length} steps`);
    return cells.map((cell, at) => ({ state, step: steps[at] ?? '', cell }));
  });

export const STEP_CASES: readonly StepCase[] = [
  ...casesOf(PLANNING_STEPS, PLANNING),
  ...casesOf(ASSEMBLY_STEPS, ASSEMBLY),
  ...casesOf(RETURN_STEPS, RETURN),
];

const DEVIATES = 'deviation';
const KEPT = SAME;

const RECORD_KINDS = [
  'pass',
  'tightening',
  'tightening out of calibration',
  'unfinished tightening',
  'breakout',
];

/** What a record makes of the state; "deviation": kept, flagged, and the state stays. */
const RECORDS: readonly Row[] = [
  ['unassessed', KEPT, KEPT, KEPT, KEPT, KEPT],
  ['assessed', DEVIATES, DEVIATES, DEVIATES, DEVIATES, DEVIATES],
  ['scheduled', DEVIATES, DEVIATES, DEVIATES, DEVIATES, DEVIATES],
  ['isolated', DEVIATES, DEVIATES, DEVIATES, DEVIATES, DEVIATES],
  ['released to break', DEVIATES, DEVIATES, DEVIATES, DEVIATES, 'broken'],
  ['broken', DEVIATES, DEVIATES, DEVIATES, DEVIATES, SAME],
  ['inspected', DEVIATES, DEVIATES, DEVIATES, DEVIATES, DEVIATES],
  ['held', DEVIATES, DEVIATES, DEVIATES, DEVIATES, DEVIATES],
  ['made up', 'tightening', 'tightened', ['tightening', DEVIATES], 'tightening', DEVIATES],
  ['tightening', SAME, 'tightened', [SAME, DEVIATES], SAME, DEVIATES],
  ['tightened', 'tightening', SAME, ['tightening', DEVIATES], 'tightening', DEVIATES],
  ['witnessed', 'tightening', 'tightened', ['tightening', DEVIATES], 'tightening', DEVIATES],
  ['tested', DEVIATES, DEVIATES, DEVIATES, DEVIATES, DEVIATES],
  ['test failed', 'tightening', 'tightened', ['tightening', DEVIATES], 'tightening', DEVIATES],
  ['reinstated', DEVIATES, DEVIATES, DEVIATES, DEVIATES, DEVIATES],
  ['in service', DEVIATES, DEVIATES, DEVIATES, DEVIATES, DEVIATES],
  ['leak watch', DEVIATES, DEVIATES, DEVIATES, DEVIATES, DEVIATES],
];

/** A pair: the state it goes to, and that it opens a deviation all the same. */
export const RECORD_CASES: readonly StepCase[] = casesOf(RECORD_KINDS, RECORDS);

/** Work that was really done: what the joint is once it is accepted, whatever it was before. A held joint stays held. */
export const ACCEPTED: Readonly<Record<string, string>> = {
  break: 'broken',
  inspect: 'inspected',
  'make up': 'made up',
  test: 'tested',
  reinstate: 'reinstated',
  'enter service': 'in service',
  isolate: SAME,
  'lift isolation': SAME,
  'relaxation pass': SAME,
  breakout: 'broken',
};

/** Containment by state, from the table of states. */
export const CONTAINMENT: Readonly<Record<string, string>> = {
  unassessed: 'not followed',
  assessed: 'closed',
  scheduled: 'closed',
  isolated: 'closed',
  'released to break': 'closed',
  broken: 'open',
  inspected: 'open',
  'made up': 'open',
  tightening: 'open',
  tightened: 'closed',
  witnessed: 'closed',
  tested: 'closed',
  'test failed': 'closed',
  reinstated: 'closed',
  'in service': 'closed',
  'leak watch': 'closed',
};

/** Roles that may take each step. */
export const STEP_ROLES: Readonly<Record<string, readonly string[]>> = {
  assess: ['engineer'],
  'declare in service': ['planner', 'engineer'],
  schedule: ['planner', 'engineer'],
  unschedule: ['planner', 'engineer'],
  isolate: ['planner', 'engineer', 'technician'],
  'lift isolation': ['planner', 'engineer', 'technician'],
  release: ['planner', 'engineer'],
  break: ['engineer', 'technician'],
  inspect: ['engineer', 'technician'],
  hold: ['planner', 'keeper', 'engineer', 'technician', 'administrator'],
  'clear hold': ['engineer'],
  'make up': ['engineer', 'technician'],
  witness: ['engineer', 'technician'],
  'relaxation pass': ['engineer', 'technician'],
  test: ['engineer', 'technician'],
  reinstate: ['planner', 'engineer', 'technician'],
  'enter service': ['planner', 'engineer'],
  'report leak': ['planner', 'keeper', 'engineer', 'technician', 'administrator'],
  'close leak watch': ['engineer'],
};
