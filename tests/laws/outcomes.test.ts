import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { frictionPair, nutFactorOfPair } from '../../core/bolting/friction.ts';
import { otherToolSetting, tensionedLoad } from '../../core/bolting/other-tools.ts';
import {
  HALF_DIAMETER,
  loadByNutAdvance,
  loadFactor,
  loadFromStretch,
  loadInService,
  nutAngle,
  stretch,
  studSections,
} from '../../core/bolting/stiffness.ts';
import { nutProofLoad, stripAreas, stripMargin } from '../../core/bolting/strip.ts';
import { metricThread } from '../../core/bolting/thread.ts';
import type { Outcome } from '../../core/findings/outcome.ts';
import { codeBoltArea, codeMinimum, codeSeatingLoad, effectiveWidth } from '../../core/joint/code-minimum.ts';
import { assemblyTorque } from '../../core/joint/component-limits.ts';
import { hotLoad } from '../../core/joint/expansion.ts';
import { gasketArea, ringArea, seriesStress, seriesTarget } from '../../core/joint/gasket-area.ts';
import { gasketStressAt, gasketTargetStress } from '../../core/joint/gasket-target.ts';
import { endForce } from '../../core/joint/hydrostatic.ts';
import {
  frustumStiffness,
  likeMembersStiffness,
  rodStiffness,
  seriesStiffness,
} from '../../core/joint/member-stiffness.ts';
import { assemblyLoadFor, embedding, embeddingLoss, residualLoad } from '../../core/joint/relaxation.ts';
import { budget, loadBudget, meanUncertainty } from '../../core/uncertainty/budget.ts';
import { simulateLoad } from '../../core/uncertainty/monte-carlo.ts';
import { limitProbability, loadInterval } from '../../core/uncertainty/probabilities.ts';
import { propagate } from '../../core/uncertainty/propagate.ts';
import { fromExpanded, fromLimits } from '../../core/uncertainty/type-b.ts';

type Given = number | null;
type Relation = (a: Given, b: Given, c: Given, d: Given) => Outcome<unknown>;

const M24 = metricThread(24, 3);
const SECTIONS = (area: Given, length: Given) => [{ area: area ?? Number.NaN, length: length ?? Number.NaN }];
const AREAS = { external: 1e-3, internal: 1.2e-3, basis: 'test' };

const RELATIONS: Readonly<Record<string, Relation>> = {
  ringArea: (a, b) => ringArea(a, b),
  gasketArea: (a, b, c, d) => gasketArea(a, [{ length: b ?? 0, width: c ?? 0 }], d),
  seriesStress: (a, b, c) => seriesStress([{ name: 'shell', area: a, target: null }], b, c),
  seriesTarget: (a, b, c) => seriesTarget([{ name: 'shell', area: a, target: b }], c),
  gasketTargetStress: (a, b, c, d) => gasketTargetStress({ boltCount: a, boltRootArea: b, gasketArea: c }, d),
  gasketStressAt: (a, b, c, d) =>
    gasketStressAt({ boltCount: 12, boltRootArea: a, gasketArea: b }, c, d, 0.2),
  endForce: (a, b, c) => endForce(a, b, c),
  effectiveWidth: (a) => effectiveWidth(a),
  codeMinimumFlat: (a, b, c, d) =>
    codeMinimum({ kind: 'flat ring or spiral wound', outside: a, inside: b }, c, d, 69e6, 12),
  codeMinimumRing: (a, b, c, d) =>
    codeMinimum({ kind: 'ring joint', pitchDiameter: a, ringWidth: b }, c, 5.5, d, 12),
  codeBoltArea: (a, b) => codeBoltArea({ Wm1: 1e5, Wm2: 2e5 }, a, b),
  codeSeatingLoad: (a, b, c) => codeSeatingLoad(a, b, c),
  assemblyTorque: (a, b, c, d) => assemblyTorque(a, b, c, d),
  residualLoad: (a, b) => residualLoad(a, [{ name: 'creep', retained: b, source: 'test' }]),
  assemblyLoadFor: (a, b) => assemblyLoadFor(a, [{ name: 'creep', retained: b, source: 'test' }]),
  embedding: (a, b) => embedding('Rz 10 to 40 µm', a ?? 0, b ?? 0),
  embeddingLoss: (a, b, c) => embeddingLoss(a, b, c),
  hotLoad: (a, b, c, d) =>
    hotLoad(
      a,
      { name: 'stud', length: 0.1, expansion: 12e-6, rise: b },
      [{ name: 'flange', length: 0.1, expansion: c, rise: b }],
      { boltCold: 5e8, boltHot: 4e8, joint: d },
    ),
  rodStiffness: (a, b, c) => rodStiffness(a, b, c),
  seriesStiffness: (a, b) => seriesStiffness([a, b]),
  frustumStiffness: (a, b, c, d) =>
    frustumStiffness({ modulus: a, hole: b, face: c, thickness: d, halfAngle: 0.5 }),
  likeMembersStiffness: (a, b, c, d) =>
    likeMembersStiffness({ modulus: a, hole: b, face: c, thickness: d, halfAngle: 0.5 }),
  studSections: (a, b, c) => studSections(M24, a, { length: b ?? 0, area: c ?? 0 }, HALF_DIAMETER),
  stretch: (a, b, c, d) => stretch(a, SECTIONS(b, c), d),
  loadFromStretch: (a, b, c, d) => loadFromStretch(a, SECTIONS(b, c), d),
  loadFactor: (a, b) => loadFactor(a, b),
  loadInService: (a, b, c) => loadInService(a, b, c),
  nutAngle: (a, b) => nutAngle(a, b),
  loadByNutAdvance: (a, b, c) => loadByNutAdvance(a, b, c),
  frictionEqual: (a, b) => frictionPair(a, { kind: 'thread and bearing equal' }, M24, b),
  frictionThread: (a, b, c) => frictionPair(a, { kind: 'thread fixed', value: c }, M24, b),
  frictionBearing: (a, b, c) => frictionPair(a, { kind: 'bearing fixed', value: c }, M24, b),
  nutFactorOfPair: (a, b, c) => nutFactorOfPair(a, b, M24, c),
  stripAreas: (a) => stripAreas(M24, a),
  stripMargin: (a, b, c, d) => stripMargin(a, AREAS, b, c, d),
  nutProofLoad: (a) => nutProofLoad(a, M24),
  handWrench: (a, b, c, d) =>
    otherToolSetting('hand torque wrench', { by: 'torque', least: 40, most: a, graduation: b }, c, d),
  stepTool: (a, b, c) =>
    otherToolSetting('pneumatic torque tool', { by: 'step', steps: [{ label: '1', torque: a ?? 0 }] }, b, c),
  tensionedLoad: (a) => tensionedLoad(a, M24),
  budget: (a, b, c) =>
    budget([
      { name: 'x', u: a, sensitivity: b ?? Number.NaN, scope: 'common', basis: 'test', degreesOfFreedom: c },
    ]),
  loadBudget: (a) =>
    loadBudget([
      { name: 'K', of: 'nut factor', relative: a, scope: 'per bolt', basis: 'test', degreesOfFreedom: null },
    ]),
  meanUncertainty: (a, b, c) => meanUncertainty({ common: a ?? 0, perBolt: b ?? 0 }, c),
  fromLimits: (a) => fromLimits(a, 'triangular'),
  fromExpanded: (a, b) => fromExpanded(a, b),
  limitProbability: (a, b, c, d) =>
    limitProbability(
      { load: a, common: b, perBolt: c, boltCount: 12, shape: 'lognormal' },
      d,
      'at most',
      'single bolt',
    ),
  limitProbabilityMean: (a, b, c, d) =>
    limitProbability(
      { load: a, common: 0, perBolt: b, boltCount: c, shape: 'normal' },
      d,
      'at least',
      'joint mean',
    ),
  loadInterval: (a, b, c) =>
    loadInterval({ load: a, common: b, perBolt: c, boltCount: 12, shape: 'normal' }, 'single bolt', 0.95),
};

const SIMULATIONS: Readonly<Record<string, Relation>> = {
  simulateLoad: (a, b, c) =>
    simulateLoad({
      nominal: a,
      contributors: [
        {
          name: 'K',
          of: 'nut factor',
          relative: b,
          scope: 'per bolt',
          basis: 'test',
          degreesOfFreedom: null,
          shape: 'normal',
        },
      ],
      draws: 1000,
      seed: c ?? 1,
      bolts: 1,
    }),
  propagate: (a, b) =>
    propagate([{ name: 'x', mean: a, u: b, shape: 'lognormal' }], ([x = 0]) => Math.log(x), 1000, 1),
};

const given = fc.oneof(
  fc.constantFrom<Given[]>(null, 0, -1, -0, Number.NaN, Infinity, -Infinity, Number.MAX_VALUE, 5e-324, 1, 12),
  fc.double({ min: 1e-9, max: 1e9, noNaN: true }),
  fc.double(),
);

function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (value instanceof Float64Array) return [...value];
  return value !== null && typeof value === 'object' ? Object.values(value).flatMap(numbersIn) : [];
}

function sound(outcome: Outcome<unknown>): void {
  if (outcome.value === null) {
    expect(outcome.missing.length).toBeGreaterThan(0);
    for (const { symbol, name, remedy } of outcome.missing) {
      expect([symbol, name, remedy].every((text) => text.length > 0)).toBe(true);
    }
    return;
  }
  expect(outcome.missing).toEqual([]);
  expect(numbersIn(outcome.value).every(Number.isFinite)).toBe(true);
}

describe('whatever is given, a relation answers a finite result or says what is missing', () => {
  test.each(Object.entries(RELATIONS))('%s', (_name, relation) => {
    fc.assert(
      fc.property(given, given, given, given, (a, b, c, d) => sound(relation(a, b, c, d))),
      { numRuns: 500 },
    );
  });
  test.each(Object.entries(SIMULATIONS))('%s', (_name, relation) => {
    fc.assert(
      fc.property(given, given, given, given, (a, b, c, d) => sound(relation(a, b, c, d))),
      { numRuns: 100 },
    );
  });
});

test('a step whose torque no tool can have is not one to set', () => {
  const steps = [{ label: '1', torque: 1e305 }];
  expect(otherToolSetting('pneumatic torque tool', { by: 'step', steps }, 0.001, null).value).toBeNull();
});

describe('nothing given, the gaps are named', () => {
  test.each(Object.entries(RELATIONS))('%s', (_name, relation) => {
    const { value, missing } = relation(null, null, null, null);
    // Relations of counts alone take nothing as none.
    if (value !== null) expect(missing).toEqual([]);
    else expect(missing.every(({ reason }) => reason === 'missing' || reason === 'out of range')).toBe(true);
  });
});
