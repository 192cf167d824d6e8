import { describe, expect, test } from 'vitest';
import { type ClassRuleInput, classRuleData, type JointStep } from '../../core/contract/life.ts';
import { rolesFor, stepAllowed, stepsFrom } from '../../core/joint/life/allowed.ts';
import { CLASS_RULES } from '../../core/joint/life/class-rules.ts';
import { duesOfJoint } from '../../core/joint/life/dues.ts';
import { standingAfter, standingNext } from '../../core/joint/life/fold.ts';
import type { StepFacts } from '../../core/joint/life/guard.ts';
import { shareDue } from '../../core/joint/life/share-due.ts';
import type { JointStanding } from '../../core/joint/life/standing.ts';
import {
  CREW,
  eventsTo,
  FACTS,
  GOOD,
  joint,
  LATER,
  record,
  SECOND,
  step,
  tightening,
  withRule,
} from './joint-life.ts';

const good = (name: JointStep, changes: object) => ({ ...(GOOD[name] as object), ...changes });
const check = (personId: string, changes: object = {}) => ({ personId, how: 'tag read', ...changes });
const gasket = (changes: object) => ({ gasket: { condition: 'new', matchesJoint: 'yes', ...changes } });
const punch = (state: string, reference = '') => ({ punchItems: [{ text: 'paint', state, reference }] });
const notApplicable = (field: string) => ({ notApplicable: [{ field, reason: 'none here' }] });

const ask = (standing: JointStanding, name: JointStep, evidence: unknown, facts: StepFacts, at?: string) =>
  stepAllowed(standing, step(name, evidence, at === undefined ? {} : { happenedAt: at }), facts).refused;

describe('what a step has to state', () => {
  test.each<[string, JointStep, object, string | null]>([
    ['unassessed', 'assess', { class: null }, 'no class is given'],
    ['unassessed', 'assess', { basis: '' }, 'the basis of the class is not stated'],
    ['assessed', 'declare in service', { basis: ' ' }, 'what says that it is in service is not stated'],
    ['scheduled', 'isolate', { isolationRef: '' }, 'no isolation reference is given'],
    ['scheduled', 'isolate', { proven: 'no' }, 'the isolation is stated as not proven'],
    ['scheduled', 'isolate', { proven: 'not known' }, null],
    [
      'isolated',
      'release',
      { identityChecks: [] },
      'nobody is stated to have checked which joint this is, and how',
    ],
    [
      'isolated',
      'release',
      { identityChecks: [check(CREW)] },
      'one person checked which joint this is; a second one is needed',
    ],
    [
      'isolated',
      'release',
      { identityChecks: [check(CREW), check(SECOND, { how: 'not known' })] },
      'one person checked which joint this is; a second one is needed',
    ],
    [
      'isolated',
      'release',
      { identityChecks: [check(CREW, { tagSeen: 'J-0816' }), check(SECOND)] },
      'tag seen is J-0816; this joint is J-0001',
    ],
    ['isolated', 'release', { isolationRef: 'I-2' }, 'isolation I-2 is named; I-1 stands'],
    ['isolated', 'release', { isolationRef: 'I-1' }, null],
    ['isolated', 'release', { permitRef: '' }, 'no permit reference is given'],
    [
      'isolated',
      'release',
      { permitUntil: '2026-03-01T00:00:00Z' },
      'the permit ended at 2026-03-01T00:00:00Z',
    ],
    [
      'isolated',
      'release',
      { zeroEnergyProven: 'not known' },
      'zero energy at this joint is not stated as proven',
    ],
    ['isolated', 'release', { provenBy: null }, 'who proved zero energy is not stated'],
    ['isolated', 'release', { supportsLocked: 'no' }, 'supports are stated as not locked'],
    ['released to break', 'break', { zeroEnergyProven: 'no' }, 'zero energy is stated as not proven'],
    ['broken', 'inspect', { result: 'not known' }, 'whether it is fit for assembly is not stated'],
    ['broken', 'hold', { reason: '' }, 'no reason is given'],
    ['held', 'clear hold', { reason: '' }, 'no reason is given'],
    ['inspected', 'make up', gasket({ condition: 'used' }), 'the gasket is used'],
    ['inspected', 'make up', gasket({ condition: 'not known' }), 'whether the gasket is new is not stated'],
    ['inspected', 'make up', { ...gasket({ condition: 'not known' }), ...notApplicable('gasket new') }, null],
    [
      'inspected',
      'make up',
      gasket({ matchesJoint: 'no' }),
      'the gasket is not the one the joint’s data name',
    ],
    [
      'inspected',
      'make up',
      gasket({ matchesJoint: 'not known' }),
      'whether the gasket was held against the joint’s data is not stated',
    ],
    ['inspected', 'make up', { fullEngagement: 'no' }, 'nuts are stated as not fully engaged'],
    ['tightened', 'witness', { witnessId: null }, 'who witnessed is not stated'],
    ['tightened', 'witness', { witnessId: CREW }, 'the witness did the work; somebody else has to see it'],
    ['tightened', 'witness', { result: 'not known' }, 'what the witness found is not stated'],
    ['tightened', 'test', { result: 'not known' }, 'whether the test passed is not stated'],
    ['test failed', 'test', { action: '' }, 'the test before failed, and what was done since is not stated'],
    ['tested', 'reinstate', { tagsRemoved: 'no' }, 'tags removed: no'],
    ['tested', 'reinstate', { blindsRemoved: 'not known' }, 'blinds removed: not known'],
    ['tested', 'reinstate', { supportsUnlocked: 'no' }, 'supports unlocked: no'],
    ['tested', 'reinstate', { guardsBack: 'no' }, 'guards back: no, and nothing is carried over'],
    ['tested', 'reinstate', { guardsBack: 'no', ...punch('carried over', 'W-7') }, null],
    [
      'tested',
      'reinstate',
      { insulationBack: 'not known', ...punch('carried over', 'W-7') },
      'insulation back: not known, and nothing is carried over',
    ],
    ['tested', 'reinstate', { punchItems: null }, 'punch items were not gone through'],
    ['tested', 'reinstate', punch('open'), 'open punch items: paint'],
    ['tested', 'reinstate', punch('carried over'), 'carried over without a reference: paint'],
    ['leak watch', 'close leak watch', { done: '' }, 'what was done is not stated'],
    ['leak watch', 'close leak watch', { checkedHow: '' }, 'how it was checked is not stated'],
  ])('%s, %s with %j: %s', (state, name, changes, reason) => {
    const refused = ask(joint(state), name, good(name, changes), FACTS);
    expect(refused).toEqual(reason === null ? null : [reason]);
  });

  test('a permit that ended since the release keeps the joint closed', () => {
    const standing = joint('released to break');
    expect(ask(standing, 'break', GOOD.break, FACTS, '2029-01-01T00:00:00Z')).toEqual([
      'the permit ended at 2028-01-01T00:00:00Z',
    ]);
  });

  test('a step can not be dated before the state it starts from', () => {
    const standing = joint('broken');
    const refused = ask(standing, 'inspect', GOOD.inspect, FACTS, '2026-01-01T00:00:00Z');
    expect(refused).toEqual([
      `the joint has been broken since ${standing.since}; the step is dated before that`,
    ]);
  });

  test('service begins once the isolation is lifted', () => {
    const kept = standingNext(
      joint('tested'),
      step('reinstate', good('reinstate', { isolationLifted: 'no' })),
    );
    expect(ask(kept, 'enter service', {}, FACTS)).toEqual(['isolation I-1 has not been lifted']);
    const lifted = standingNext(kept, step('lift isolation'));
    expect(ask(lifted, 'enter service', {}, FACTS)).toBeNull();
  });

  test('a leak is never refused, whatever else is open', () => {
    const standing = standingNext(joint('broken'), record('tightening'));
    expect(standing.deviation).not.toBeNull();
    expect(ask(standing, 'report leak', {}, { ...FACTS, roles: [] })).toBeNull();
  });
});

describe('the pass after the dwell', () => {
  const at = (hours: number) => new Date(Date.parse(LATER) + hours * 3_600_000).toISOString();
  const tight = () => standingNext(joint('tightening'), tightening({ happenedAt: at(0) }));
  const pass = (hours: number, facts = FACTS) =>
    ask(tight(), 'relaxation pass', { kind: 'after the dwell' }, facts, at(hours));

  test('waits for 4 h, or for as long as the class says', () => {
    expect(pass(3.5)).toEqual(['the dwell is over in 30 min']);
    expect(pass(4)).toBeNull();
    const longer = withRule({ retightening: { ...CLASS_RULES.mild.retightening, dwell: 6 } });
    expect(pass(4, longer)).toEqual(['the dwell is over in 2 h 0 min']);
    expect(pass(6, longer)).toBeNull();
  });

  test('is asked for by the class before the test', () => {
    const asks = withRule({ retightening: { ...CLASS_RULES.mild.retightening, afterDwell: true } });
    expect(ask(tight(), 'test', GOOD.test, asks, at(5))).toEqual([
      'class mild asks for a pass after the dwell; none is recorded',
    ]);
    const rested = standingNext(
      tight(),
      step('relaxation pass', { kind: 'after the dwell' }, { happenedAt: at(4) }),
    );
    expect(ask(rested, 'test', GOOD.test, asks, at(5))).toBeNull();
    expect(duesOfJoint(tight(), asks.rule, at(1))).toContainEqual({
      text: 'the gasket is settling; pass after the dwell from',
      dueAt: at(4),
    });
    expect(duesOfJoint(tight(), asks.rule, at(5))).toContainEqual({
      text: 'pass after the dwell due since',
      dueAt: at(4),
    });
  });

  test('belongs before the test, the one during start-up after it', () => {
    const startUp = { kind: 'during start-up' };
    expect(ask(joint('tightened'), 'relaxation pass', startUp, FACTS, LATER)).toEqual([
      'the joint is tightened: a pass during start-up does not belong there',
    ]);
    expect(ask(joint('tested'), 'relaxation pass', GOOD['relaxation pass'], FACTS, LATER)).toEqual([
      'the joint is tested: a pass after the dwell does not belong there',
    ]);
    expect(ask(joint('tightened'), 'relaxation pass', {}, FACTS, LATER)).toEqual([
      'not stated: after the dwell, or during start-up',
    ]);
  });

  test('during start-up: every condition of retightening, none of them unknown', () => {
    const refused = ask(joint('in service'), 'relaxation pass', { kind: 'during start-up' }, FACTS, LATER);
    expect(refused).toEqual(['not eligible: bolt-metal temperature not measured']);
  });
});

describe('what a class asks before a joint is back', () => {
  const needed = { needed: true, methods: [], words: '' };

  test('a leak test', () => {
    const facts = withRule({ leakTest: needed });
    expect(ask(joint('tightened'), 'reinstate', GOOD.reinstate, facts)).toEqual([
      'class mild asks for a leak test; none has passed',
    ]);
    expect(ask(joint('tested'), 'reinstate', GOOD.reinstate, facts)).toBeNull();
  });

  test('of the test: what it was, with what gauge, by a method that counts', () => {
    const facts = withRule({ leakTest: { ...needed, methods: ['soap solution'] } });
    const standing = joint('tightened');
    expect(ask(standing, 'test', { result: 'passed' }, facts)).toEqual([
      'not stated: medium, pressure, hold, method',
    ]);
    expect(ask(standing, 'test', GOOD.test, facts)).toEqual([
      'class mild accepts soap solution; this test was by sight',
    ]);
    expect(ask(standing, 'test', good('test', { method: 'soap solution' }), facts)).toBeNull();
    expect(ask(standing, 'test', GOOD.test, { ...FACTS, gauge: 'not in date' })).toEqual([
      'the gauge was not in date',
    ]);
    expect(
      ask(standing, 'test', GOOD.test, { ...withRule({ leakTest: needed }), gauge: 'not known' }),
    ).toEqual(['whether the gauge was in date is not known']);
    expect(ask(standing, 'test', GOOD.test, { ...FACTS, gauge: 'not known' })).toBeNull();
  });

  test('a witness where one is due by the count, and not where it isn’t', () => {
    const facts = withRule({ witnessPercent: 10 });
    const tight = (ordinal: number | null) => standingNext(joint('tightening'), tightening({ ordinal }));
    expect(ask(tight(11), 'test', GOOD.test, facts)).toEqual([
      'no witness is recorded; number 11 of class mild, of which 10 % are witnessed: due',
    ]);
    expect(ask(tight(12), 'test', GOOD.test, facts)).toBeNull();
    expect(ask(tight(null), 'test', GOOD.test, facts)?.[0]).toMatch(/not counted in class mild/);
    const seen = standingNext(tight(11), step('witness'));
    expect(ask(seen, 'test', GOOD.test, facts)).toBeNull();
    expect(duesOfJoint(tight(12), facts.rule, LATER)).toContainEqual({
      text: 'witness: number 12 of class mild, of which 10 % are witnessed: not due',
      dueAt: null,
    });
  });

  test('a load measurement where one is due', () => {
    const facts = withRule({ loadCheckPercent: 100 });
    const said = 'no load measurement is recorded; number 1 of class mild, of which 100 % are measured: due';
    expect(ask(joint('tightened'), 'witness', GOOD.witness, facts)).toEqual([said]);
    const loadMeasurement = {
      method: 'ultrasonic',
      readings: [{ bolt: 1, load: { text: '100', unit: 'kN' } }],
    };
    const measured = good('witness', { loadMeasurement });
    expect(ask(joint('tightened'), 'witness', measured, facts)).toBeNull();
    const seen = standingNext(joint('tightened'), step('witness', measured));
    expect(ask(seen, 'reinstate', GOOD.reinstate, facts)).toBeNull();
    expect(ask(joint('tested'), 'reinstate', GOOD.reinstate, facts)).toEqual([said]);
  });

  test('a complete record, and "nobody has looked" is not complete', () => {
    const facts = withRule({ completeRecord: true });
    const refused = (missing: string[] | null) =>
      ask(joint('tested'), 'reinstate', GOOD.reinstate, { ...facts, missing });
    expect(refused([])).toBeNull();
    expect(refused(['snug torque', 'witness'])).toEqual(['the record lacks 2: snug torque, witness']);
    expect(refused(null)).toEqual(['whether the record is complete is not known']);
  });

  test('fewer roles', () => {
    const facts = withRule({ signs: [{ step: 'reinstate', roles: ['engineer'] }] });
    const standing = joint('tested');
    expect(ask(standing, 'reinstate', GOOD.reinstate, { ...facts, roles: ['technician'] })).toEqual([
      'reinstate is for engineer',
    ]);
    expect(ask(standing, 'reinstate', GOOD.reinstate, { ...facts, roles: ['engineer'] })).toBeNull();
    // Without sign-in a name is a claim, and no role is held against it.
    expect(ask(standing, 'reinstate', GOOD.reinstate, facts)).toBeNull();
    expect(rolesFor('reinstate', facts.rule)).toEqual(['engineer']);
  });
});

describe('the share that is witnessed', () => {
  test.each([0, 1, 5, 10, 25, 33, 50, 99, 100])('%i %% of any first n, rounded up', (percent) => {
    let due = 0;
    for (let n = 1; n <= 400; n += 1) {
      due += shareDue(n, percent) ? 1 : 0;
      // Held against whole hundreds of counts, so that no rounding is shared with the code.
      expect(due * 100).toBeGreaterThanOrEqual(n * percent);
      expect((due - 1) * 100).toBeLessThan(n * percent === 0 ? 1 : n * percent);
    }
  });

  test('at 10 % the 1st, 11th and 21st', () => {
    const due = Array.from({ length: 25 }, (_, at) => at + 1).filter((n) => shareDue(n, 10));
    expect(due).toEqual([1, 11, 21]);
  });
});

describe('what is told of a joint', () => {
  test('each step that leads on, with what is missing for it', () => {
    const steps = stepsFrom(joint('scheduled'), FACTS, LATER);
    const named = steps.map((one) => one.step);
    expect(named).toEqual(['assess', 'unschedule', 'isolate', 'inspect', 'hold', 'report leak']);
    const inspect = steps.find((one) => one.step === 'inspect');
    expect(inspect).toMatchObject({ open: false, leadsTo: null });
    expect(inspect?.guards[0]).toMatchObject({ standing: 'not met', says: 'what the state asks' });
    const release = stepsFrom(joint('isolated'), FACTS, LATER).find((one) => one.step === 'release');
    expect(release).toMatchObject({
      open: true,
      leadsTo: 'released to break',
      roles: ['planner', 'engineer'],
    });
    expect(release?.guards.map(({ standing }) => standing)).toEqual([
      'met',
      'asked',
      'asked',
      'asked',
      'asked',
      'asked',
      'asked',
    ]);
  });

  test('what was left half-done, what stands, and what is open', () => {
    const texts = (standing: JointStanding) =>
      duesOfJoint(standing, FACTS.rule, LATER).map(({ text }) => text);
    expect(texts(joint('tightening'))).toEqual([
      'pass 2 of 5, last bolt 7, stopped: shift change',
      'isolation I-1 stands',
      'permit P-1 until',
    ]);
    expect(texts(joint('leak watch'))).toContain('1 leak in this make-up and the one before');
    expect(texts(standingAfter([]))).toEqual(['no class is given: no order of steps is followed']);
    const asks = {
      ...CLASS_RULES.mild,
      retightening: { ...CLASS_RULES.mild.retightening, duringStartUp: true },
    };
    const back = standingAfter([...eventsTo('reinstated'), step('enter service')]);
    expect(duesOfJoint(back, asks, LATER).map(({ text }) => text)).toEqual([
      'class mild asks for a pass during start-up; none is recorded',
    ]);
    expect(duesOfJoint(joint('in service'), asks, LATER)).toEqual([]);
  });
});

describe('class rules', () => {
  test('those that come with the program say that they are assumptions', () => {
    for (const rule of Object.values(CLASS_RULES)) {
      expect(classRuleData.parse(rule)).toEqual(rule);
      expect(rule.source).toMatch(/assumption/);
    }
  });

  test.each<[string, object, string]>([
    ['a share above 100 %', { witnessPercent: 101 }, 'allowed 0 to 100'],
    [
      'a dwell below 4 h',
      { retightening: { ...CLASS_RULES.mild.retightening, dwell: 3 } },
      'allowed 4 to 168',
    ],
    [
      'a step named twice',
      { signs: ['test', 'test'].map((name) => ({ step: name, roles: ['engineer'] })) },
      'each step once',
    ],
  ])('%s is refused', (_, changes, message) => {
    const result = classRuleData.safeParse({ ...CLASS_RULES.mild, ...changes } as ClassRuleInput);
    expect(JSON.stringify(result.error?.issues)).toContain(message);
  });
});
