import { describe, expect, test } from 'vitest';
import { type JointStep, jointState, jointStep } from '../../core/contract/life.ts';
import { stepAllowed, stepsFrom } from '../../core/joint/life/allowed.ts';
import { standingAfter, standingNext } from '../../core/joint/life/fold.ts';
import type { JointStanding, StepEvent } from '../../core/joint/life/standing.ts';
import { containmentOf } from '../../core/joint/life/states.ts';
import { STEPS } from '../../core/joint/life/steps.ts';
import { ACCEPTED, CONTAINMENT, RECORD_CASES, STEP_CASES, STEP_ROLES } from './joint-life.matrix.ts';
import {
  BAD,
  decision,
  ENGINEER,
  eventsTo,
  FACTS,
  GOOD,
  joint,
  LATER,
  passFor,
  record,
  step,
  tightening,
} from './joint-life.ts';

const asStep = (name: string) => jointStep.parse(name);

function taken(state: string, name: JointStep, evidence?: unknown): StepEvent {
  const said = evidence ?? (name === 'relaxation pass' ? passFor(state) : GOOD[name]);
  return step(name, said, name === 'relaxation pass' ? { happenedAt: LATER } : {});
}

/** What the way to a state has put away: its isolation was lifted when it was reinstated. */
function ready(state: string, name: JointStep): JointStanding {
  const standing = joint(state);
  const isolate = state === 'reinstated' && name === 'release';
  return isolate ? standingNext(standing, step('isolate')) : standing;
}

test('the matrix speaks of every state and every step once', () => {
  const cells = STEP_CASES.map(({ state, step: name }) => `${state}|${name}`);
  expect(new Set(cells).size).toBe(cells.length);
  expect(cells).toHaveLength(jointState.options.length * jointStep.options.length);
  expect(new Set(RECORD_CASES.map(({ state }) => state)).size).toBe(jointState.options.length);
});

describe('each step in each state', () => {
  test.each(STEP_CASES)('$state, $step: $cell', ({ state, step: name, cell }) => {
    const asked = asStep(name);
    const standing = ready(state, asked);
    expect(standing.state).toBe(state);
    const good = stepAllowed(standing, taken(state, asked), FACTS);
    if (cell === null) {
      expect(good.next).toBeNull();
      expect(good.refused?.join()).toContain(`the joint is ${state}`);
      return;
    }
    const [whenGood, whenBad] = typeof cell === 'string' ? [cell, null] : cell;
    expect(good.refused).toBeNull();
    expect(good.next?.state).toBe(whenGood === 'same' ? state : whenGood);
    expect(good.next?.deviation).toBeNull();
    if (whenBad === null) return;
    const bad = stepAllowed(standing, taken(state, asked, BAD[asked]), FACTS);
    expect(bad.next?.state).toBe(whenBad);
  });

  test.each(STEP_CASES.filter(({ cell }) => cell === null))(
    '$state, $step: not on the list of steps that lead on',
    ({ state, step: name }) => {
      const open = stepsFrom(joint(state), FACTS, LATER).filter((one) => one.open);
      expect(open.map((one) => one.step)).not.toContain(name);
    },
  );
});

describe('work that was refused and really done', () => {
  const work = STEP_CASES.filter(({ step: name, cell }) => cell === null && STEPS[asStep(name)].work);
  const refused = work.filter(({ state }) => state !== 'unassessed');

  test.each(work.filter(({ state }) => state === 'unassessed'))(
    'unassessed, $step: kept, and nothing moves',
    ({ step: name }) => {
      const event = { ...taken('unassessed', asStep(name)), outOfOrder: ['refused'] };
      expect(standingNext(joint('unassessed'), event)).toEqual(joint('unassessed'));
    },
  );

  test('is work of every kind the page names', () => {
    expect([...new Set(refused.map(({ step: name }) => name))].toSorted()).toEqual(
      Object.keys(ACCEPTED)
        .filter((name) => name !== 'breakout')
        .toSorted(),
    );
  });

  test.each(refused)(
    '$state, $step: kept, the state stays, and accepting makes it so',
    ({ state, step: name }) => {
      const before = joint(state);
      const event = taken(state, asStep(name));
      const kept = standingNext(before, { ...event, outOfOrder: ['refused'] });
      expect(kept.state).toBe(state);
      expect(kept.deviation?.works).toMatchObject([{ eventId: event.id, what: name }]);
      const accepted = standingNext(kept, decision(kept));
      const made = ACCEPTED[name] ?? '';
      if (state === 'held') {
        expect(accepted.state).toBe('held');
        expect(accepted.heldFrom).toBe(made === 'same' ? before.heldFrom : made);
      } else {
        const scheduled = name === 'isolate' && state === 'scheduled';
        expect(accepted.state).toBe(made === 'same' && !scheduled ? state : made);
      }
      expect(accepted.deviation).toBeNull();
      expect(accepted.override?.reason).toBe('looked at by the engineer');
      const again = standingNext(kept, decision(kept, { decision: 'to be done again' }));
      expect(again).toEqual(before);
    },
  );
});

describe('each record in each state', () => {
  test.each(RECORD_CASES)('$state, $step: $cell', ({ state, step: kind, cell }) => {
    const before = joint(state);
    const after = standingNext(before, record(kind));
    const deviates = cell === 'deviation' || Array.isArray(cell);
    const to = Array.isArray(cell) ? cell[0] : cell === 'deviation' ? 'same' : cell;
    expect(after.state).toBe(to === 'same' ? state : to);
    expect(after.deviation === null).toBe(!deviates);
    if (!deviates) return;
    expect(after.deviation?.works[0]?.reasons.length).toBeGreaterThan(0);
    const held = standingNext(
      after,
      decision(after, { decision: 'hold', reason: 'engineering looks at it' }),
    );
    expect(held).toMatchObject({ state: 'held', heldBecause: 'engineering looks at it', deviation: null });
  });

  test.each(RECORD_CASES.filter(({ step: kind, cell }) => kind === 'breakout' && cell === 'deviation'))(
    '$state: a breakout that is accepted leaves an open joint',
    ({ state }) => {
      const kept = standingNext(joint(state), record('breakout'));
      const accepted = standingNext(kept, decision(kept));
      expect(containmentOf(accepted.state, accepted.heldFrom)).toBe('open');
    },
  );

  test('a breakout in which no bolt turned opens nothing', () => {
    const none = { ...record('breakout'), opened: false };
    expect(standingNext(joint('released to break'), none as never).state).toBe('released to break');
  });

  test('a breakout after the permit’s end deviates', () => {
    const late = { ...record('breakout'), happenedAt: '2029-01-01T00:00:00Z' };
    const after = standingNext(joint('released to break'), late as never);
    expect(after.state).toBe('released to break');
    expect(after.deviation?.works[0]?.reasons[0]).toMatch(/permit ended/);
  });
});

test.each(Object.entries(CONTAINMENT))('containment of a joint that is %s: %s', (state, containment) => {
  expect(containmentOf(jointState.parse(state), null)).toBe(containment);
  expect(containmentOf('held', jointState.parse(state))).toBe(containment);
});

test.each(Object.entries(STEP_ROLES))('%s may be taken by %j and nobody else', (name, roles) => {
  expect([...STEPS[asStep(name)].roles].toSorted()).toEqual([...roles].toSorted());
});

describe('a joint with two bolt sets', () => {
  const of = (boltSet: number) => tightening({ boltSet, boltSets: 2 });

  test('is tightened once both are', () => {
    const madeUp = joint('made up');
    const one = standingNext(madeUp, of(0));
    expect(one.state).toBe('tightening');
    expect(standingNext(one, of(1)).state).toBe('tightened');
  });

  test('waits again when one of them is begun again', () => {
    const madeUp = joint('made up');
    const both = [of(0), of(1)].reduce(standingNext, madeUp);
    const again = standingNext(both, record('pass'));
    expect(again).toMatchObject({ state: 'tightening', pass: { boltSet: 0, number: 2, of: 5, lastBolt: 7 } });
    expect(standingNext(again, of(0)).state).toBe('tightened');
  });
});

describe('work recorded late', () => {
  const early = '2026-03-16T00:00:00Z';

  test('from before the present cycle moves nothing', () => {
    const before = joint('in service');
    expect(standingNext(before, tightening({ happenedAt: early }))).toEqual(before);
  });

  test('in order at its own moment moves nothing that came after', () => {
    const events = eventsTo('tested');
    const pass = events.find(({ kind }) => kind === 'pass');
    const before = standingAfter(events);
    const late = { ...record('pass'), happenedAt: pass?.happenedAt ?? '' } as never;
    expect(standingNext(before, late)).toEqual(before);
  });

  test('counts while the tightening it belongs to goes on', () => {
    const events = eventsTo('tightening');
    const madeUp = events.at(-2)?.happenedAt ?? '';
    const before = standingAfter(events);
    expect(standingNext(before, tightening({ happenedAt: madeUp })).state).toBe('tightened');
  });

  test('out of order at its own moment deviates, and accepting it changes nothing else', () => {
    const events = eventsTo('tested');
    const inspected = events.find((event) => event.kind === 'step' && event.data.step === 'inspect');
    const before = standingAfter(events);
    const kept = standingNext(before, tightening({ happenedAt: inspected?.happenedAt ?? '' }));
    expect(kept.deviation?.works[0]?.reasons[0]).toBe(
      'tightening recorded while inspected, at the moment it was done',
    );
    expect(standingNext(kept, decision(kept)).state).toBe('tested');
  });
});

describe('one deviation at a time', () => {
  function opened(): JointStanding {
    const inService = joint('in service');
    return ['breakout', 'pass', 'tightening'].map(record).reduce(standingNext, inService);
  }

  test('what follows joins it, and one decision covers all of it', () => {
    const standing = opened();
    expect(standing.state).toBe('in service');
    expect(standing.deviation?.works.map(({ what }) => what)).toEqual(['breakout', 'pass', 'tightening']);
    expect(standing.deviation?.ifAccepted.state).toBe('tightened');
    expect(standingNext(standing, decision(standing)).state).toBe('tightened');
  });

  test('no step goes on meanwhile, but a class is given and a leak reported', () => {
    const standing = opened();
    const answer = (name: JointStep) => stepAllowed(standing, taken('in service', name), FACTS);
    expect(answer('schedule').refused).toEqual([
      'a deviation waits for its decision; the state goes no further until then',
    ]);
    expect(answer('assess').next?.deviation?.id).toBe(standing.deviation?.id);
    expect(answer('report leak').next).toMatchObject({
      state: 'leak watch',
      deviation: { ifAccepted: { state: 'test failed' } },
    });
    expect(
      stepsFrom(standing, FACTS, LATER)
        .filter(({ open }) => open)
        .map((one) => one.step),
    ).toEqual(['assess', 'report leak']);
  });

  test('a decision about another one changes nothing', () => {
    const standing = opened();
    expect(standingNext(standing, decision(standing, { deviationId: 'other' }))).toBe(standing);
  });

  test('tools out of calibration that are accepted stand with the reason, and the joint can be tested', () => {
    const kept = standingNext(joint('made up'), record('tightening out of calibration'));
    expect(kept.deviation?.works[0]?.reasons).toEqual(['tools not in calibration: certificate has lapsed']);
    const accepted = standingNext(kept, decision(kept));
    expect(accepted.tightened[0]?.setAside).toEqual({ reason: 'looked at by the engineer', by: ENGINEER });
    expect(stepAllowed(accepted, step('test'), FACTS).next?.state).toBe('tested');
    const again = standingNext(kept, decision(kept, { decision: 'to be done again' }));
    expect(stepAllowed(again, step('test'), FACTS).refused).toEqual([
      'the joint is tightening: test does not lead on from there',
    ]);
  });

  test('a refusal set aside with the setting needs no deviation', () => {
    const madeUp = joint('made up');
    const event = tightening({
      calibration: 'not in calibration',
      setAside: { reason: 'checked this morning', by: ENGINEER },
    });
    expect(standingNext(madeUp, event)).toMatchObject({ state: 'tightened', deviation: null });
  });
});

describe('remembered states', () => {
  test('hold and clear come back to where it was', () => {
    for (const state of ['assessed', 'isolated', 'tightening', 'tested', 'leak watch']) {
      const held = standingNext(joint(state), step('hold'));
      expect(held).toMatchObject({ state: 'held', heldFrom: state });
      expect(standingNext(held, step('clear hold')).state).toBe(state);
    }
  });

  test('a release that is taken back leaves the permit', () => {
    const released = standingNext(joint('tightened'), step('release'));
    // The isolation of the path still stands.
    expect(released).toMatchObject({ state: 'released to break', permitRef: 'P-1', isolationRef: 'I-1' });
    expect(standingNext(released, step('unschedule'))).toMatchObject({ state: 'tightened', permitRef: null });
  });

  test('a first assembly is inspected without a break, until it goes into service', () => {
    const assess = step('assess', { ...(GOOD.assess as object), firstAssembly: 'yes' });
    const scheduled = [assess, step('schedule')].reduce(standingNext, standingAfter([]));
    expect(stepAllowed(scheduled, step('inspect'), FACTS).next?.state).toBe('inspected');
    const inService = [assess, step('declare in service'), step('schedule')].reduce(
      standingNext,
      standingAfter([]),
    );
    expect(stepAllowed(inService, step('inspect'), FACTS).refused?.[0]).toMatch(/no first assembly/);
    const stated = standingNext(joint('in service'), assess);
    expect(standingNext(stated, step('schedule')).firstAssembly).toBe(false);
  });

  test('a leak reported while it is scheduled or held is not forgotten', () => {
    const scheduled = [step('report leak'), step('unschedule')].reduce(standingNext, joint('scheduled'));
    expect(scheduled.state).toBe('leak watch');
    const held = [step('hold'), step('report leak'), step('clear hold')].reduce(
      standingNext,
      joint('in service'),
    );
    expect(held.state).toBe('leak watch');
  });

  test('nothing of an assembly counts once its joint is open again', () => {
    const open = [step('release'), step('break')].reduce(standingNext, joint('tested'));
    expect(open).toMatchObject({ state: 'broken', tightened: [], witnessed: null, override: null });
  });
});

describe('repeated leakers', () => {
  test('two leaks in one make-up hold it for engineering, in the state the leak led to', () => {
    const once = standingNext(joint('tightened'), step('test', BAD.test));
    const twice = standingNext(once, step('test', BAD.test));
    expect(twice).toMatchObject({ state: 'held', heldFrom: 'test failed' });
    expect(twice.heldBecause).toMatch(/^repeated leaker: 2 leaks in 2 make-ups/);
  });

  const remade = ['release', 'break', 'inspect', 'make up'].map(asStep);

  test('one leak in each of two make-ups does, with one between them without a leak it does not', () => {
    const failed = (standing: JointStanding) => standingNext(standing, step('test', BAD.test));
    const again = (standing: JointStanding) =>
      standingNext(remade.map((name) => step(name)).reduce(standingNext, standing), tightening());
    const first = failed(joint('tightened'));
    expect(failed(again(first)).state).toBe('held');
    expect(failed(again(again(first))).state).toBe('test failed');
  });

  test('the same leak reported again does not count', () => {
    const watched = [step('report leak'), step('report leak')].reduce(standingNext, joint('leak watch'));
    expect(watched.leaks).toHaveLength(1);
    const failed = standingNext(joint('test failed'), step('report leak'));
    expect(failed.leaks).toHaveLength(1);
  });
});
