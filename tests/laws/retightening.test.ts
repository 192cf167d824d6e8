import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  COMMON_WINDOW,
  liveTighteningReasons,
  type RetighteningFacts,
  retighteningReasons,
} from '../../core/joint/retightening.ts';
import { LEAST_DWELL } from '../../core/sequence/dwell.ts';

const START_UP: RetighteningFacts = {
  kind: 'start-up, while warming',
  boltMetalTemperature: 160,
  gasketType: 'spiral wound with graphite filler',
  excludedGaskets: ['PTFE', 'fibre sheet'],
  sinceFullPass: 86_400,
  lastTorque: 384,
  siteProcedure: 'SP-12',
  window: null,
};
const AMBIENT: RetighteningFacts = {
  ...START_UP,
  kind: 'ambient, after a dwell',
  boltMetalTemperature: 18,
  sinceFullPass: LEAST_DWELL,
};

const reasons = (facts: RetighteningFacts) => retighteningReasons(facts).reasons;

describe('start-up retightening', () => {
  test('no reason is no permit: the answer defers to the site', () => {
    const { reasons: none, deferral, window } = retighteningReasons(START_UP);
    expect(none).toEqual([]);
    expect(deferral).toContain('site procedure');
    expect(window).toEqual({ from: 120, to: 230, source: 'common practice' });
  });

  test('the window’s ends are 250 and 450 °F within a degree and a half of each other', () => {
    expect(Math.abs(COMMON_WINDOW.from - (250 - 32) / 1.8)).toBeLessThan(1.5);
    expect(Math.abs(COMMON_WINDOW.to - (450 - 32) / 1.8)).toBeLessThan(2.5);
  });

  test.each([
    ['temperature not measured', { boltMetalTemperature: null }, 'bolt-metal temperature not measured'],
    ['temperature no number', { boltMetalTemperature: Number.NaN }, 'bolt-metal temperature not measured'],
    ['too cold', { boltMetalTemperature: 119 }, 'window begins at 120 °C'],
    ['too hot', { boltMetalTemperature: 231 }, 'window ends at 230 °C'],
    ['gasket unknown', { gasketType: null }, 'gasket not known'],
    ['site silent on gaskets', { excludedGaskets: null }, 'has not said which gaskets'],
    ['gasket excluded', { gasketType: 'Expanded PTFE sheet' }, 'is excluded by the site'],
    ['gasket excluded, other spelling', { gasketType: 'Fibre-sheet 2 mm' }, 'is excluded by the site'],
    ['last torque unknown', { lastTorque: null }, 'torque of the last full pass not known'],
    ['no procedure', { siteProcedure: ' ' }, 'no site procedure'],
    ['window the wrong way round', { window: { from: 200, to: 100, source: 'site' } }, 'leaves no room'],
  ])('%s', (_name, change, reason) => {
    const found = reasons({ ...START_UP, ...change });
    expect(found.some((text) => text.startsWith('not eligible: ') && text.includes(reason))).toBe(true);
  });
});

describe('retightening at ambient temperature', () => {
  test('waits at least four hours', () => {
    expect(reasons(AMBIENT)).toEqual([]);
    expect(reasons({ ...AMBIENT, sinceFullPass: LEAST_DWELL - 60 })).toEqual([
      'not eligible: 4.0 h since the last full pass, at least 4 h needed',
    ]);
    expect(reasons({ ...AMBIENT, sinceFullPass: null })).toEqual([
      'not eligible: time of the last full pass not known',
    ]);
  });

  test('is not for a joint that is warm', () => {
    expect(reasons({ ...AMBIENT, boltMetalTemperature: 150 })[0]).toContain('is not at ambient temperature');
  });
});

test('whatever is asked, every reason says "not eligible", and nothing says "permitted"', () => {
  const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null });
  const facts: fc.Arbitrary<RetighteningFacts> = fc.record({
    kind: fc.constantFrom('ambient, after a dwell', 'start-up, while warming'),
    boltMetalTemperature: maybe(fc.double()),
    gasketType: maybe(fc.string()),
    excludedGaskets: maybe(fc.array(fc.string())),
    sinceFullPass: maybe(fc.double()),
    lastTorque: maybe(fc.double()),
    siteProcedure: maybe(fc.string()),
    window: fc.constant(null),
  });
  fc.assert(
    fc.property(facts, (asked) => {
      const answer = retighteningReasons(asked);
      expect(answer.reasons.every((reason) => reason.startsWith('not eligible: '))).toBe(true);
      expect(answer.deferral).not.toContain('permitted');
      // Unknown temperature, torque or procedure is a reason of its own in every case.
      const unknown =
        asked.boltMetalTemperature === null || asked.lastTorque === null || asked.siteProcedure === null;
      expect(unknown && answer.reasons.length === 0).toBe(false);
    }),
  );
});

describe('tightening in service', () => {
  const sound = {
    boltCount: 12,
    boltLoadRecorded: true,
    standardFlange: true,
    bellowsOrClamp: false,
    boltsSound: true,
    pressureReduced: true,
    siteProcedure: 'SP-31',
  };

  test('has no reason against it only when every condition is known and met', () => {
    expect(liveTighteningReasons(sound).reasons).toEqual([]);
    for (const key of Object.keys(sound)) {
      const { reasons: found } = liveTighteningReasons({ ...sound, [key]: null });
      expect(found.length, key).toBe(1);
    }
  });

  test('few bolts and a missing load record are named', () => {
    const { reasons: found } = liveTighteningReasons({ ...sound, boltCount: 4, boltLoadRecorded: false });
    expect(found).toEqual([
      'not eligible: 4 bolts, common practice asks for at least 8',
      'not eligible: no record of the bolt load',
    ]);
  });
});
