import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { settingCard as cardSchema, method } from '../../core/contract/setting.ts';

import { settingCard } from '../../core/setting/card.ts';
import type { CardInput } from '../../core/setting/input.ts';
import { freeze } from '../../core/units/round.ts';
import { typed } from '../truth/entered.ts';
import { asTyped, orNull, quantity, ratio } from './any-quantity.ts';
import { changed, completeInput, type InputDraft } from './complete-input.ts';

const temperature = fc
  .integer({ min: -100, max: 700 })
  .map((si) => ({ text: String(si), unit: 'degC' as const, si }));
const stress = orNull(quantity('stress', 1e5, 2e9));
const length = orNull(quantity('length', 0.005, 3));
const pressureCase = fc.record({
  pressure: orNull(quantity('pressure', 1e4, 5e7)),
  temperature: orNull(temperature),
});

const gasket = fc.record({
  kind: orNull(fc.constantFrom('flat' as const, 'spiral wound' as const, 'ring joint' as const)),
  contactInside: length,
  contactOutside: length,
  pitchDiameter: length,
  ringWidth: orNull(quantity('length', 0.001, 0.05)),
  partitionArea: orNull(quantity('area', 1e-6, 0.1)),
  partitionShare: orNull(ratio(0, 1)),
  factorM: orNull(ratio(0, 20)),
  stressY: stress,
  seatingStress: stress,
  operatingStress: stress,
  stressMax: stress,
  targetStress: stress,
  retainedOperating: orNull(ratio(0, 1)),
  retainedTest: orNull(ratio(0, 1)),
  rotationMax: orNull(quantity('angle', 1e-4, 0.5)),
  expansion: orNull(quantity('expansion', 1e-6, 1e-4)),
});

const hot = fc.record({
  assemblyTemperature: orNull(temperature),
  boltTemperature: orNull(temperature),
  flangeTemperature: orNull(temperature),
  boltExpansion: orNull(quantity('expansion', 1e-6, 1e-4)),
  flangeExpansion: orNull(quantity('expansion', 1e-6, 1e-4)),
  boltModulus: orNull(quantity('stress', 1e10, 4e11)),
  boltModulusHot: orNull(quantity('stress', 1e10, 4e11)),
  boltYieldHot: stress,
  jointStiffness: orNull(quantity('stiffness', 1e6, 1e11)),
});

const target = fc.constantFrom(
  { mode: 'gasket stress' as const, basis: 'fixture' },
  { mode: 'component limits' as const, basis: 'fixture' },
  { mode: 'bolt stress' as const, stress: typed('350', 'MPa'), area: 'root' as const, basis: 'fixture' },
);

const anyInput: fc.Arbitrary<CardInput> = fc
  .record({
    gasket,
    further: fc.array(gasket, { maxLength: 2 }),
    design: pressureCase,
    operating: pressureCase,
    test: pressureCase,
    hot,
    target,
    least: orNull(quantity('stress', 1e6, 1e9)),
    largest: orNull(quantity('stress', 1e6, 1e9)),
    ofFlange: orNull(quantity('stress', 1e6, 1e9)),
    rotation: orNull(quantity('angle', 1e-4, 0.5)),
    material: orNull(fc.constantFrom('1.1', '2.2', 'none')),
    nutGrade: orNull(fc.constantFrom('ASTM A194 2H', 'none')),
    method: fc.constantFrom(...method.options),
    plan: fc.constantFrom('staged-thirds', 'two-tools-thirds', 'four-tools-thirds', 'pcc-1-legacy'),
    boltSet: fc.integer({ min: 0, max: 2 }),
    sets: fc.boolean(),
  })
  .map((made) =>
    changed(completeInput('tightening'), (input) => {
      const { data } = input.joint;
      if (data.gasket === null) throw new Error('fixture: no gasket');
      const first = Object.assign(data.gasket, made.gasket);
      data.furtherGaskets = made.further.map((one) => ({ ...structuredClone(first), ...one }));
      Object.assign(data.pressures, { design: made.design, operating: made.operating, test: made.test });
      Object.assign(data.hot, made.hot);
      data.target = made.target;
      Object.assign(data.limits, {
        boltStressMin: made.least,
        boltStressMax: made.largest,
        flangeBoltStressMax: made.ofFlange,
        flangeRotationMax: made.rotation,
      });
      data.flangeMaterial = made.material;
      Object.assign(data.bolting, { nutGrade: made.nutGrade, nutTensileStrength: null });
      Object.assign(input, { method: made.method, planId: made.plan, boltSet: made.boltSet });
      input.torqueTool = handWrench();
      if (made.sets) data.boltSets = [secondSet(data)];
    }),
  );

function handWrench(): InputDraft['torqueTool'] {
  return {
    toolId: null,
    number: 'HW-1',
    scale: {
      by: 'torque',
      least: typed('40', 'N.m'),
      most: typed('800', 'N.m'),
      graduation: typed('5', 'N.m'),
    },
    certificate: 'invented 7',
    validUntil: '2027-01-09',
  };
}

function secondSet(data: InputDraft['joint']['data']): InputDraft['joint']['data']['boltSets'][number] {
  const { bolting, target: aim, limits, space } = structuredClone(data);
  return {
    name: 'cover bolts',
    bolting: { ...bolting, count: 4 },
    lubricant: null,
    target: aim,
    limits,
    space,
  };
}

function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (value === null || typeof value !== 'object') return [];
  return Object.values(value).flatMap(numbersIn);
}

function textsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  if (value === null || typeof value !== 'object') return [];
  return Object.values(value).flatMap(textsIn);
}

describe('gasket, heat, methods and bolt sets with any holes', () => {
  test('give a card of its schema with finite numbers and readable words', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const card = settingCard(input);
        expect(cardSchema.safeParse(card).error).toBeUndefined();
        expect(numbersIn(card).every(Number.isFinite)).toBe(true);
        expect(textsIn(card).filter((text) => /NaN|undefined|Infinity/.test(text))).toEqual([]);
      }),
      { numRuns: 400 },
    );
  });

  test('a limit is never met while what it needs is not known', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        for (const { state, limit, value, needs, side } of settingCard(input).limits) {
          if (limit === null || value === null) {
            expect(state).toBe('not known');
            expect(needs.length).toBeGreaterThan(0);
          } else {
            const room = side === 'at most' ? limit - value : value - limit;
            if (Math.abs(room) > 1e-6 * limit) expect(state).toBe(room > 0 ? 'met' : 'not met');
          }
        }
      }),
      { numRuns: 200 },
    );
  });

  test('an issuable card breaks no limit, whatever was selected and rounded', () => {
    const megapascal = (min: number, max: number) =>
      fc.double({ min, max, noNaN: true }).map((si) => asTyped(si * 1e6, 'MPa'));
    let issuable = 0;
    fc.assert(
      fc.property(
        fc.record({
          mode: fc.constantFrom('gasket stress' as const, 'component limits' as const),
          asked: megapascal(60, 160),
          gasketMax: megapascal(70, 250),
          ofBolt: megapascal(250, 600),
          ofFlange: megapascal(250, 600),
          least: megapascal(50, 300),
          marks: fc.integer({ min: 1, max: 40 }),
        }),
        ({ mode, asked, gasketMax, ofBolt, ofFlange, least, marks }) => {
          const card = settingCard(
            changed(completeInput('tightening'), ({ joint: { data }, set }) => {
              data.target = { mode, basis: 'fixture' };
              if (data.gasket !== null)
                Object.assign(data.gasket, { targetStress: asked, stressMax: gasketMax });
              Object.assign(data.limits, {
                boltStressMax: ofBolt,
                flangeBoltStressMax: ofFlange,
                boltStressMin: least,
              });
              if (set.gauge !== null) set.gauge.data.properties.graduation = asTyped(marks * 1e5, 'bar');
            }),
          );
          if (!card.issuable) return;
          issuable += 1;
          // The code's floor is a cross-check; it warns and does not refuse.
          const broken = card.limits.filter(
            ({ state, name }) => state === 'not met' && !name.startsWith('code minimum'),
          );
          expect(broken).toEqual([]);
        },
      ),
      { numRuns: 300 },
    );
    expect(issuable).toBeGreaterThan(30);
  });
});

describe('component limits', () => {
  const select = (change: (input: InputDraft) => void) =>
    settingCard(
      changed(completeInput('tightening'), (input) => {
        input.joint.data.target = { mode: 'component limits', basis: 'fixture' };
        change(input);
      }),
    );

  test('select between the limits on the root area and name the one that governs', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 300, noNaN: true }),
        fc.double({ min: 100, max: 700, noNaN: true }),
        fc.double({ min: 100, max: 700, noNaN: true }),
        fc.double({ min: 1, max: 99, noNaN: true }),
        (asked, ofBolt, ofFlange, least) => {
          const card = select(({ joint: { data } }) => {
            if (data.gasket !== null) data.gasket.targetStress = asTyped(asked * 1e6, 'MPa');
            Object.assign(data.limits, {
              boltStressArea: 'root',
              boltStressMax: asTyped(ofBolt * 1e6, 'MPa'),
              flangeBoltStressMax: asTyped(ofFlange * 1e6, 'MPa'),
              boltStressMin: asTyped(least * 1e6, 'MPa'),
            });
          });
          const { selection } = card;
          expect(selection).not.toBeNull();
          const selected = selection?.selected ?? Number.NaN;
          const most = Math.min(ofBolt, ofFlange) * 1e6;
          const within = Math.max(least * 1e6, Math.min(selection?.asked ?? Number.NaN, most));
          expect(Math.abs(selected / within - 1)).toBeLessThan(1e-3);
          expect(selection?.targetReached).toBe(
            selection?.governing !== 'largest bolt stress' &&
              selection?.governing !== 'largest bolt stress by the flange',
          );
        },
      ),
    );
  });

  test('of two gaskets in series follow the one that asks for more', () => {
    const card = select(({ joint: { data } }) => {
      if (data.gasket === null) return;
      data.furtherGaskets = [
        { ...structuredClone(data.gasket), type: 'flat ring', targetStress: typed('120', 'MPa') },
      ];
    });
    expect(card.selection?.gasket).toBe('gasket 2, flat ring');
    // Same ring, same bolts: both gaskets carry the whole load.
    expect(card.gaskets[0]?.stress).toBe(card.gaskets[1]?.stress);
  });

  test('with a gasket that nobody measured wait for the diameters, not for an area', () => {
    const card = select(({ joint: { data } }) => {
      Object.assign(data, { flange: { kind: 'custom', description: 'girth flange', siteRow: null } });
      if (data.gasket !== null) Object.assign(data.gasket, { contactInside: null, contactOutside: null });
    });
    const [finding] = card.findings.filter(({ code }) => code === 'gasket_target_unknown');
    expect(finding?.remedy).toMatch(
      /^Outside diameter of the sealing element, above its inside diameter: measure/,
    );
    expect(card.issuable).toBe(false);
  });
});

describe('what the card adds beside the dial', () => {
  const card = settingCard(completeInput('tightening'));

  test('the torque’s three parts make up the torque', () => {
    const { split, torque } = card;
    const sum = (split?.stretch ?? 0) + (split?.thread ?? 0) + (split?.bearing ?? 0);
    expect(Math.abs(sum / (torque ?? Number.NaN) - 1)).toBeLessThan(1e-12);
  });

  test('every gasket case loses its end force and its relaxation', () => {
    const [gasketView] = card.gaskets;
    for (const one of gasketView?.cases ?? []) {
      const area = gasketView?.area ?? Number.NaN;
      const left = ((one.residualLoad ?? 0) - (one.endForcePerBolt ?? 0)) * (card.boltCount ?? 0);
      expect(Math.abs((one.stressLeft ?? Number.NaN) / (left / area) - 1)).toBeLessThan(1e-9);
    }
    expect(gasketView?.cases.map((one) => one.case)).toEqual(['design', 'operating', 'test']);
  });

  test('the load hot lies inside its bound', () => {
    const { hot: view } = card;
    expect(view?.hotLoad ?? Number.NaN).toBeGreaterThanOrEqual(view?.range[0] ?? Number.NaN);
    expect(view?.hotLoad ?? Number.NaN).toBeLessThanOrEqual(view?.range[1] ?? Number.NaN);
  });

  test('a breakout card has none of it', () => {
    const breakout = settingCard(completeInput('breakout'));
    expect(breakout).toMatchObject({
      limits: [],
      gaskets: [],
      rating: [],
      hot: null,
      split: null,
      retightening: null,
    });
  });

  test('nothing says that a retightening is permitted', () => {
    const texts = textsIn(card).filter((text) => /\b(permitted|allowed to retighten)\b/i.test(text));
    expect(texts).toEqual([]);
    expect(card.retightening?.reasons[0]).toBe('not eligible: bolt-metal temperature not measured');
  });

  test('every number shown has a working of its own', () => {
    const of = new Set(card.workings.map((working) => working.of));
    for (const name of [
      'split',
      'gasketArea',
      'gasketStress',
      'endForce',
      'residualLoad',
      'codeMinimum',
      'limit',
      'strength',
      'hotLoad',
      'stretch',
      'strip',
      'rating',
    ] as const) {
      expect(of).toContain(name);
    }
    const titles = card.workings.map(({ title }) => title);
    expect(new Set(titles).size).toBe(titles.length);
  });

  test.each([
    ['staged-thirds', 1, false],
    ['two-tools-thirds', 2, false],
    ['four-tools-thirds', 4, false],
    ['pcc-1-legacy', 1, true],
  ])('plan %s: %i tools, a wait: %s', (planId, tools, waits) => {
    const planned = settingCard({ ...completeInput('tightening'), planId });
    const turned = planned.toolOrder?.steps.flat().filter((bolt) => bolt !== null) ?? [];
    expect(turned.toSorted((a, b) => a - b)).toEqual(
      tools === 1 ? [] : Array.from({ length: 12 }, (_, i) => i + 1),
    );
    expect(planned.toolOrder?.tools ?? 1).toBe(tools);
    expect(planned.rules.some(({ kind }) => kind === 'dwell')).toBe(waits);
  });
});

describe('the simulated spread', () => {
  const input = { ...completeInput('tightening'), withUncertainty: true };
  const view = settingCard(input).uncertainty;

  test('is the same for the same card, and frozen digits keep it', () => {
    expect(settingCard(input).uncertainty).toEqual(view);
    expect(freeze(freeze(view))).toEqual(freeze(view));
  });

  test('agrees with the first order where the load is little skewed', () => {
    const [low = 0, high = 0] = view?.simulation?.relativeInterval ?? [];
    const first = 1.96 * (view?.loadRelative ?? Number.NaN);
    expect(Math.abs((high - low) / 2 / first - 1)).toBeLessThan(0.03);
    // Friction stands in the denominator: the upper tail is longer.
    expect(high).toBeGreaterThan(-low);
  });

  test('has shares that add up to one', () => {
    const sum = view?.shares.reduce((total, { share }) => total + share, 0);
    expect(sum).toBeCloseTo(1, 12);
  });

  test('gives a larger chance to a wider limit, and speaks of bolts or of the joint', () => {
    const probability = (limit: string, most: string) =>
      settingCard(
        changed(input, ({ joint: { data } }) => {
          data.limits.boltStressMax = typed(most, 'MPa');
        }),
      ).uncertainty?.simulation?.probabilities.find((one) => one.limit === limit)?.probability;
    expect(probability('largest bolt stress', '380')).toBeLessThan(
      probability('largest bolt stress', '450') ?? 0,
    );
    const subjects = view?.simulation?.probabilities.map(({ limit, subject }) => [limit, subject]);
    expect(subjects).toContainEqual(['yield strength, axial', 'single bolt']);
    expect(subjects).toContainEqual(['gasket seating', 'joint mean']);
  });
});

describe('methods without a pressure', () => {
  const withMethod = (kind: 'tightening' | 'breakout', wanted: CardInput['method'], tool = handWrench()) =>
    settingCard({ ...completeInput(kind), method: wanted, torqueTool: tool });

  test('a tensioner twists nothing: no torque, no torsion, no friction in the way', () => {
    const card = settingCard(
      changed(completeInput('tightening'), (input) => {
        input.method = 'tensioner';
        input.joint.data.lubricant = null;
      }),
    );
    expect(card).toMatchObject({
      torque: null,
      combinedOfYield: null,
      split: null,
      dial: null,
      issuable: true,
    });
    expect(card.stressTensile).not.toBeNull();
    expect(card.passes.at(-1)?.load).toBe(card.targetLoad);
  });

  test('a step tool is set to the step whose torque lies nearest', () => {
    const card = withMethod('tightening', 'pneumatic torque tool', {
      toolId: null,
      number: 'AT-2',
      scale: {
        by: 'step',
        steps: ['150', '290', '390', '520'].map((torque, index) => ({
          label: String(index + 1),
          torque: typed(torque, 'N.m'),
        })),
      },
      certificate: 'invented 8',
      validUntil: '2027-01-09',
    });
    expect(card.toolSetting).toMatchObject({ text: 'step 3', torque: 390 });
    expect(card.passes.map(({ set }) => set)).toEqual([null, 'step 1', 'step 2', 'step 3', 'step 3']);
    expect(Math.abs((card.load ?? Number.NaN) / (card.targetLoad ?? Number.NaN) - 1)).toBeLessThan(0.03);
  });

  test('loosening: not with a torque wrench, not by a tensioner’s missing torque, below every ceiling with a battery tool', () => {
    expect(withMethod('breakout', 'hand torque wrench').issuable).toBe(false);
    expect(withMethod('breakout', 'tensioner').issuable).toBe(false);
    expect(withMethod('breakout', 'battery torque tool', null).issuable).toBe(false);
    const card = withMethod('breakout', 'battery torque tool');
    expect(card.issuable).toBe(true);
    expect(card.dial).toBeNull();
    const set = card.passes.map((pass) => Number.parseFloat(pass.set ?? ''));
    expect(set[0]).toBeLessThanOrEqual(card.passes[0]?.torque ?? Number.NaN);
    expect(set[1]).toBeLessThanOrEqual(card.breakout?.studCeilingElastic ?? Number.NaN);
    expect(set[1]).toBeLessThanOrEqual(800);
  });
});
