import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { deviationDecision, jointStep } from '../../core/contract/life.ts';
import { BAD, GOOD } from '../laws/joint-life.ts';
import { ask, createEmpty, key, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { nextAt, type Stepping, standing, stepOf } from './life.ts';
import {
  breakoutOf,
  certify,
  enterPlant,
  jointA,
  saveJoint,
  type TestPlant,
  tighteningOf,
} from './records.ts';

let started: TestService;
let plant: TestPlant;
let second: string;
let engineer: string;

const person = async (name: string) =>
  (await ask(started, 'person.save', { key: key(), id: null, version: null, data: { name, role: '' } })).id;

beforeAll(async () => {
  started = startService(temporaryFolder(), '2026-03-17T12:00:00Z');
  await createEmpty(started);
  plant = await enterPlant(started);
  await certify(started, plant);
  second = await person('B. Person');
  engineer = await person('E. Engineer');
});
afterAll(() => started.service.close());

/** What was asked and done, as far as the property speaks of it; told here and not by the service. */
type Told = 'opened' | 'proven' | 'reason' | 'other';

interface Asked {
  readonly kind: 'step' | 'tightening' | 'breakout' | 'decision';
  readonly step: (typeof jointStep.options)[number];
  readonly bad: boolean;
  readonly really: boolean;
  readonly tools: 'certified' | 'no gauge' | 'none';
  readonly bolts: number;
  readonly decision: (typeof deviationDecision.options)[number];
}

const asked: fc.Arbitrary<Asked> = fc.record({
  kind: fc.oneof(
    { weight: 5, arbitrary: fc.constant('step' as const) },
    { weight: 3, arbitrary: fc.constant('tightening' as const) },
    { weight: 1, arbitrary: fc.constant('breakout' as const) },
    { weight: 2, arbitrary: fc.constant('decision' as const) },
  ),
  step: fc.oneof(fc.constantFrom(...jointStep.options), fc.constant('test' as const)),
  bad: fc.boolean(),
  really: fc.boolean(),
  tools: fc.constantFrom('certified', 'no gauge', 'none'),
  bolts: fc.constantFrom(12, 12, 11),
  decision: fc.constantFrom(...deviationDecision.options),
});

const usual = (step: Asked['step'], kind: Asked['kind'] = 'step'): Asked => ({
  kind,
  step,
  bad: false,
  really: false,
  tools: 'certified',
  bolts: 12,
  decision: 'accept as done',
});
const USUAL: readonly Asked[] = [
  ...(['assess', 'schedule', 'isolate', 'release', 'break', 'inspect', 'make up'] as const).map((step) =>
    usual(step),
  ),
  usual('test', 'tightening'),
  usual('test'),
];

async function send(joint: Stepping, one: Asked): Promise<Told | null> {
  const { service } = started;
  const { seen, deviation } = await standing(started, joint.jointId);
  const own = { ...plant, jointId: joint.jointId };
  switch (one.kind) {
    case 'step': {
      const evidence = one.bad ? (BAD[one.step] ?? GOOD[one.step]) : GOOD[one.step];
      const reallyDone = one.really ? { reason: 'found so' } : null;
      const data = stepOf(joint, one.step, { evidence, reallyDone });
      const answer = await service.handle('joint.step', { key: key(), seen, data });
      if (!answer.ok) return null;
      if (one.step === 'clear hold') return 'reason';
      return one.step === 'break' ? 'opened' : 'other';
    }
    case 'tightening': {
      const tools =
        one.tools === 'certified'
          ? plant.tools
          : one.tools === 'no gauge'
            ? { ...plant.tools, gaugeId: null }
            : { ...plant.tools, driveId: null, cassetteId: null, pumpId: null, gaugeId: null, hoseIds: [] };
      const data = tighteningOf(own, { happenedAt: nextAt(), tools, boltsTightened: one.bolts });
      await ask(started, 'event.recordTightening', { key: key(), data });
      return one.tools === 'certified' && one.bolts === 12 ? 'proven' : 'other';
    }
    case 'breakout':
      await ask(started, 'event.recordBreakout', {
        key: key(),
        data: breakoutOf(own, { happenedAt: nextAt() }),
      });
      return 'other';
    case 'decision': {
      if (deviation === null) return null;
      const data = {
        jointId: joint.jointId,
        deviationId: deviation.id,
        decision: one.decision,
        reason: 'looked at',
        personId: engineer,
        happenedAt: nextAt(),
      };
      const answer = await service.handle('deviation.decide', { key: key(), seen, data });
      return answer.ok && one.decision === 'accept as done' ? 'reason' : 'other';
    }
  }
}

const MADE_UP = 7;
const doubtful = fc
  .constantFrom('no gauge' as const, 'none' as const)
  .map((tools): Asked => ({ ...usual('test', 'tightening'), tools }));
const onTheWay = fc.oneof(
  asked,
  doubtful,
  fc.constant(usual('test')),
  fc.constant(usual('test', 'decision')),
);

let joints = 1;

test('no sequence of requests reaches "tested" without a tightening in calibration or a reason for going on without', async () => {
  let tested = 0;
  const way = fc
    .record({
      // Mostly to the joint made up: from there the draws decide.
      reached: fc.oneof(fc.constant(MADE_UP), fc.integer({ min: 0, max: USUAL.length })),
      rest: fc.array(onTheWay, { minLength: 2, maxLength: 8 }),
    })
    .map(({ reached, rest }) => [...USUAL.slice(0, reached), ...rest]);
  await fc.assert(
    fc.asyncProperty(way, async (requests) => {
      joints += 1;
      const tag = `J-${String(joints).padStart(4, '0')}`;
      const { id } = await saveJoint(started, jointA(plant.unitId, tag));
      const joint = { jointId: id, tag, crew: { first: plant.personId, second } };
      let sinceOpened: Told[] = [];
      for (const one of requests) {
        const told = await send(joint, one);
        const { state, lastBreakAt, deviation } = await standing(started, id);
        // A break that waits for its decision has not opened the joint yet.
        if (told === 'opened' && deviation === null && lastBreakAt !== null && state === 'broken')
          sinceOpened = [];
        if (told !== null) sinceOpened.push(told);
        if (state !== 'tested') continue;
        tested += 1;
        expect(sinceOpened.some((what) => what === 'proven' || what === 'reason')).toBe(true);
      }
    }),
    { numRuns: 60 },
  );
  // The draws have to get there, or they prove nothing.
  expect(tested).toBeGreaterThan(10);
});
