import { randomUUID } from 'node:crypto';
import type { ClassRuleData, JointStep, StepInput } from '../../core/contract/life.ts';
import { stepData } from '../../core/contract/life.ts';
import { CLASS_RULES } from '../../core/joint/life/class-rules.ts';
import { standingAfter } from '../../core/joint/life/fold.ts';
import type { StepFacts } from '../../core/joint/life/guard.ts';
import type {
  DecisionEvent,
  JointStanding,
  LifeEvent,
  StepEvent,
  TighteningEvent,
} from '../../core/joint/life/standing.ts';

const person = (n: number) => `00000000-0000-4000-8000-00000000000${n}`;
export const CREW = person(1);
export const SECOND = person(2);
export const ENGINEER = person(3);
const JOINT = person(9);

let minute = 0;

/** Moments that never run backwards, a minute apart. */
export const nextMoment = () => {
  minute += 1;
  return new Date(Date.parse('2026-03-16T06:00:00Z') + minute * 60_000).toISOString();
};

/** Later than any dwell. */
export const LATER = '2027-03-16T06:00:00Z';

const q = <U extends string>(text: string, unit: U) => ({ text, unit });

/** Evidence that meets every guard of a step. */
export const GOOD: Readonly<Record<JointStep, unknown>> = {
  assess: { class: 'mild', basis: 'invented procedure' },
  'declare in service': { basis: 'walked down' },
  schedule: {},
  unschedule: {},
  isolate: { isolationRef: 'I-1', proven: 'yes' },
  'lift isolation': {},
  release: {
    identityChecks: [
      { personId: CREW, how: 'tag scanned', tagSeen: 'j-0001' },
      { personId: SECOND, how: 'drawing and landmark' },
    ],
    permitRef: 'P-1',
    permitUntil: '2028-01-01T00:00:00Z',
    zeroEnergyProven: 'yes',
    provenBy: CREW,
  },
  break: { zeroEnergyProven: 'yes' },
  inspect: { result: 'fit for assembly' },
  hold: { reason: 'waits for a part' },
  'clear hold': { reason: 'part came' },
  'make up': { gasket: { condition: 'new', matchesJoint: 'yes' } },
  witness: { witnessId: SECOND, result: 'as it should be' },
  'relaxation pass': { kind: 'after the dwell' },
  test: {
    medium: 'water',
    pressure: q('10', 'bar'),
    hold: q('10', 'min'),
    method: 'sight',
    result: 'passed',
    action: 'looked at again',
  },
  reinstate: {
    tagsRemoved: 'yes',
    guardsBack: 'yes',
    insulationBack: 'yes',
    supportsUnlocked: 'yes',
    blindsRemoved: 'yes',
    isolationLifted: 'yes',
    punchItems: [],
  },
  'enter service': {},
  'report leak': { clock: 3, phase: 'in service' },
  'close leak watch': { done: 'gasket replaced', checkedHow: 'soap solution' },
};

export const BAD: Readonly<Partial<Record<JointStep, unknown>>> = {
  inspect: { result: 'not fit for assembly' },
  witness: { witnessId: SECOND, result: 'not as it should be' },
  test: { ...(GOOD.test as object), result: 'failed' },
};

const START_UP = {
  kind: 'during start-up',
  boltTemperature: q('150', 'degC'),
  procedure: 'invented',
  torque: q('400', 'N.m'),
};

/** The pass that belongs to a state: the one during start-up once the joint was tested. */
export const passFor = (state: string) =>
  ['tested', 'reinstated', 'in service'].includes(state) ? START_UP : GOOD['relaxation pass'];

export function step(
  name: JointStep,
  evidence: unknown = GOOD[name],
  changes: Partial<StepInput> & { readonly outOfOrder?: readonly string[] } = {},
): StepEvent {
  const { outOfOrder = [], ...given } = changes;
  const happenedAt = given.happenedAt ?? nextMoment();
  const data = stepData.parse({ step: name, jointId: JOINT, by: CREW, evidence, ...given, happenedAt });
  const level = data.step === 'assess' ? data.evidence.class : null;
  const given_ = level === null ? null : { name: level, level, ruleId: null };
  return { kind: 'step', id: randomUUID(), happenedAt, data, class: given_, outOfOrder };
}

export function tightening(changes: Partial<TighteningEvent> = {}): TighteningEvent {
  return {
    kind: 'tightening',
    id: randomUUID(),
    happenedAt: changes.happenedAt ?? nextMoment(),
    boltSet: 0,
    boltSets: 1,
    complete: true,
    lacks: [],
    people: [CREW],
    calibration: 'in calibration',
    why: [],
    setAside: null,
    ordinal: 1,
    ...changes,
  };
}

export const records: Readonly<Record<string, () => LifeEvent>> = {
  pass: () => ({
    kind: 'pass',
    id: randomUUID(),
    happenedAt: nextMoment(),
    pass: { boltSet: 0, number: 2, of: 5, lastBolt: 7, stopped: 'shift change' },
    people: [CREW],
  }),
  tightening: () => tightening(),
  'tightening out of calibration': () =>
    tightening({ calibration: 'not in calibration', why: ['certificate has lapsed'] }),
  'unfinished tightening': () => tightening({ complete: false, lacks: ['6 of 12 studs'] }),
  breakout: () => ({
    kind: 'breakout',
    id: randomUUID(),
    happenedAt: nextMoment(),
    opened: true,
    people: [CREW],
  }),
};

export const record = (kind: string): LifeEvent => {
  const make = records[kind];
  if (make === undefined) throw new Error(`no record ${kind}`);
  return make();
};

export function decision(standing: JointStanding, changes: Partial<DecisionEvent> = {}): DecisionEvent {
  return {
    kind: 'decision',
    id: randomUUID(),
    happenedAt: nextMoment(),
    deviationId: standing.deviation?.id ?? '',
    decision: 'accept as done',
    reason: 'looked at by the engineer',
    by: ENGINEER,
    ...changes,
  };
}

const PATH: readonly (() => LifeEvent)[] = [
  () => step('assess'),
  () => step('declare in service'),
  () => step('schedule'),
  () => step('isolate'),
  () => step('release'),
  () => step('break'),
  () => step('inspect'),
  () => step('make up'),
  () => record('pass'),
  () => tightening(),
  () => step('witness'),
  () => step('test'),
  () => step('reinstate'),
];

const STATES_ON_THE_WAY = [
  'assessed',
  'in service',
  'scheduled',
  'isolated',
  'released to break',
  'broken',
  'inspected',
  'made up',
  'tightening',
  'tightened',
  'witnessed',
  'tested',
  'reinstated',
];

/** Events that bring a joint into a state by legal steps. */
export function eventsTo(state: string): LifeEvent[] {
  if (state === 'unassessed') return [];
  if (state === 'held') return [...eventsTo('broken'), step('hold')];
  if (state === 'test failed') return [...eventsTo('tightened'), step('test', BAD.test)];
  if (state === 'leak watch') return [...eventsTo('in service'), step('report leak')];
  const at = STATES_ON_THE_WAY.indexOf(state);
  if (at < 0) throw new Error(`no way to ${state}`);
  return PATH.slice(0, at + 1).map((make) => make());
}

export const joint = (state: string): JointStanding => standingAfter(eventsTo(state));

/** Facts against which every guard of a class that asks little is met. */
export const FACTS: StepFacts = {
  tag: 'J-0001',
  rule: CLASS_RULES.mild,
  roles: null,
  missing: [],
  gauge: 'in date',
  retightening: {
    gasketType: 'spiral wound',
    excludedGaskets: [],
    lastTorque: 400,
    siteProcedure: 'invented',
    window: null,
  },
};

export const withRule = (changes: Partial<ClassRuleData>): StepFacts => ({
  ...FACTS,
  rule: { ...CLASS_RULES.mild, ...changes },
});
