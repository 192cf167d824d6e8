import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { deviationDecision, type JointStep, jointStep } from '../../core/contract/life.ts';
import { stepAllowed } from '../../core/joint/life/allowed.ts';
import { standingAfter, standingNext } from '../../core/joint/life/fold.ts';
import type { JointStanding, LifeEvent } from '../../core/joint/life/standing.ts';
import { STEPS } from '../../core/joint/life/steps.ts';
import {
  BAD,
  decision,
  FACTS,
  GOOD,
  LATER,
  passFor,
  record,
  records,
  step,
  tightening,
} from './joint-life.ts';

/** Something a window may ask, or somebody record, whatever the joint's state. */
const asked = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.record({
      kind: fc.constant('step' as const),
      step: fc.constantFrom(...jointStep.options),
      bad: fc.boolean(),
      really: fc.boolean(),
    }),
  },
  {
    weight: 4,
    arbitrary: fc.record({
      kind: fc.constant('record' as const),
      record: fc.constantFrom(...Object.keys(records)),
      boltSets: fc.constantFrom(1, 2),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('decision' as const),
      decision: fc.constantFrom(...deviationDecision.options),
    }),
  },
);
type Asked = typeof asked extends fc.Arbitrary<infer T> ? T : never;

const usualStep = (name: JointStep): Asked => ({ kind: 'step', step: name, bad: false, really: false });
const usualRecord = (kind: string): Asked => ({ kind: 'record', record: kind, boltSets: 1 });

/** A likely way, so that the draws get far into the life of a joint. */
const USUAL: readonly Asked[] = [
  ...(['assess', 'schedule', 'isolate', 'release', 'break', 'inspect', 'make up'] as const).map(usualStep),
  usualRecord('pass'),
  usualRecord('tightening'),
  ...(['witness', 'test', 'reinstate', 'enter service'] as const).map(usualStep),
];
const onTheWay = fc.oneof(
  asked,
  fc.constantFrom(...USUAL),
  fc.constant(usualRecord('tightening out of calibration')),
);
const draws = fc
  .record({ reached: fc.integer({ min: 0, max: USUAL.length }), rest: fc.array(onTheWay, { maxLength: 30 }) })
  .map(({ reached, rest }) => [...USUAL.slice(0, reached), ...rest]);

function eventOf(standing: JointStanding, one: Asked): LifeEvent {
  switch (one.kind) {
    case 'step': {
      const evidence = one.bad ? (BAD[one.step] ?? GOOD[one.step]) : GOOD[one.step];
      const said = one.step === 'relaxation pass' ? passFor(standing.state) : evidence;
      return step(one.step, said);
    }
    case 'record': {
      const made = record(one.record);
      return made.kind === 'tightening' ? tightening({ ...made, boltSets: one.boltSets }) : made;
    }
    case 'decision':
      return decision(standing, { decision: one.decision });
  }
}

/** As the register does it: a refused step is recorded only where it was really done, and then with the reasons. */
function recorded(standing: JointStanding, one: Asked): LifeEvent | null {
  const event = eventOf(standing, one);
  if (event.kind !== 'step' || one.kind !== 'step') return event;
  const { refused } = stepAllowed(standing, event, FACTS);
  if (refused === null) return event;
  return one.really && STEPS[one.step].work ? { ...event, outOfOrder: refused } : null;
}

/** Told from the events alone, without the code's own idea of a proven tightening. */
function mayBeTested(history: readonly LifeEvent[], states: readonly string[]): boolean {
  const opened = states.lastIndexOf('broken');
  return history.slice(Math.max(opened, 0)).some((event) => {
    if (event.kind === 'tightening') return event.complete && event.calibration === 'in calibration';
    if (event.kind === 'decision') return event.decision === 'accept as done' && event.reason !== '';
    return event.kind === 'step' && event.data.step === 'clear hold' && event.data.evidence.reason !== '';
  });
}

function play(draws: readonly Asked[], record_: typeof recorded) {
  const history: LifeEvent[] = [];
  const states: string[] = [];
  let standing = standingAfter([]);
  for (const one of draws) {
    const event = record_(standing, one);
    if (event === null) continue;
    history.push(event);
    // As it is kept between two requests.
    standing = standingNext(JSON.parse(JSON.stringify(standing)) as JointStanding, event);
    states.push(standing.state);
    if (standing.state === 'tested') expect(mayBeTested(history, states)).toBe(true);
  }
  return { history, states, standing };
}

describe('whatever is asked and recorded, in whatever order', () => {
  test('no joint is tested without a tightening in calibration, or a reason for going on without one', () => {
    let tested = 0;
    fc.assert(
      fc.property(draws, (asked_) => {
        tested += play(asked_, recorded).states.filter((state) => state === 'tested').length;
      }),
      { numRuns: 1000 },
    );
    // The draws have to get there, or they prove nothing.
    expect(tested).toBeGreaterThan(50);
  });

  test('nor in a log that no window could have written', () => {
    fc.assert(
      fc.property(draws, (asked_) => {
        play(asked_, (standing, one) => eventOf(standing, one));
      }),
      { numRuns: 1000 },
    );
  });

  test('the state is what the list of events makes of it, all at once or one by one', () => {
    fc.assert(
      fc.property(draws, (asked_) => {
        const { history, standing } = play(asked_, recorded);
        expect(standing).toEqual(standingAfter(history));
      }),
      { numRuns: 300 },
    );
  });

  test('with a deviation open the state stays until it is decided', () => {
    fc.assert(
      fc.property(draws, (asked_) => {
        let standing = standingAfter([]);
        for (const one of asked_) {
          const event = recorded(standing, one);
          if (event === null) continue;
          const after = standingNext(standing, event);
          if (standing.deviation !== null && event.kind !== 'decision') {
            const leak = event.kind === 'step' && event.data.step === 'report leak';
            if (!leak) expect(after.state).toBe(standing.state);
            expect(after.deviation?.id).toBe(standing.deviation.id);
          }
          standing = after;
        }
      }),
      { numRuns: 300 },
    );
  });

  test('the dwell keeps a pass from being recorded in order before its time', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 8 * 60 }), (minutes) => {
        const at = (after: number) => new Date(Date.parse(LATER) + after * 60_000).toISOString();
        const standing = ['assess', 'schedule', 'isolate', 'release', 'break', 'inspect', 'make up']
          .map((name) => step(jointStep.parse(name)))
          .reduce(standingNext, standingAfter([]));
        const tight = standingNext(standing, tightening({ happenedAt: at(0) }));
        const pass = step('relaxation pass', GOOD['relaxation pass'], { happenedAt: at(minutes) });
        expect(stepAllowed(tight, pass, FACTS).refused === null).toBe(minutes >= 240);
      }),
      { numRuns: 200 },
    );
  });
});
