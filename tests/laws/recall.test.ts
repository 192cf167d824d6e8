import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { AffectedEvent } from '../../core/contract/recall.ts';
import { affectedLoad } from '../../core/recall/affected.ts';
import { errorByComparisons } from '../../core/recall/check-error.ts';
import { deliveredIn, type ErrorSource, type SuspectUse } from '../../core/recall/delivered.ts';
import { jointLimits } from '../../core/recall/joint-limits.ts';
import { marginOf, worstFirst } from '../../core/recall/order.ts';
import { realLoads } from '../../core/recall/real-load.ts';
import { standingOf } from '../../core/recall/standing.ts';
import { type GoodEvidence, suspectWindow, type WindowEvidence } from '../../core/recall/window.ts';
import { basisOf } from '../../core/setting/basis.ts';
import { hydraulicsOf } from '../../core/setting/hydraulics.ts';
import { completeInput } from './complete-input.ts';

const FIRST = Date.parse('2026-01-01T00:00:00.000Z');
const moment = fc
  .integer({ min: 0, max: 400 * 24 })
  .map((hours) => new Date(FIRST + hours * 3_600_000).toISOString());
const good: fc.Arbitrary<GoodEvidence> = fc
  .tuple(moment, fc.integer({ min: 0, max: 24 }))
  .map(([first, hours]) => ({
    first,
    last: new Date(Date.parse(first) + hours * 3_600_000).toISOString(),
    text: 'good',
  }));
const named = (text: string) => moment.map((at) => ({ at, text }));
const evidence: fc.Arbitrary<WindowEvidence> = fc.record({
  good: fc.array(good, { maxLength: 5 }),
  failing: fc.record({ at: moment, text: fc.constant('failing'), putRight: fc.boolean() }),
  barred: fc.array(named('barred'), { maxLength: 3 }),
  opened: named('opened'),
  since: fc.option(named('since'), { freq: 4 }),
});

describe('the suspect window', () => {
  test('more good evidence never makes it wider', () => {
    fc.assert(
      fc.property(evidence, good, (given, more) => {
        const before = suspectWindow(given);
        const after = suspectWindow({ ...given, good: [...given.good, more] });
        expect(after.to <= before.to).toBe(true);
        if (before.from !== null) expect((after.from ?? '') >= before.from).toBe(true);
      }),
    );
  });

  test('it holds the failing moment, and begins with good evidence that was over by then', () => {
    fc.assert(
      fc.property(evidence, (given) => {
        const { from, to } = suspectWindow({ ...given, since: null });
        expect(to >= given.failing.at).toBe(true);
        if (from === null) expect(given.good.every(({ last }) => last >= given.failing.at)).toBe(true);
        else expect(from < given.failing.at).toBe(true);
      }),
    );
  });

  test('good evidence after the failing one does not move its beginning', () => {
    fc.assert(
      fc.property(evidence, good, (given, more) => {
        fc.pre(more.last >= given.failing.at);
        const after = suspectWindow({ ...given, good: [...given.good, more] });
        expect(after.from).toBe(suspectWindow(given).from);
      }),
    );
  });

  test('a tool that was put right or barred at once is suspect up to the failing moment and no longer', () => {
    fc.assert(
      fc.property(evidence, fc.boolean(), (given, barred) => {
        const failing = { ...given.failing, putRight: !barred };
        const bars = barred ? [{ at: failing.at, text: 'barred' }] : given.barred;
        expect(suspectWindow({ ...given, failing, barred: bars }).to).toBe(failing.at);
      }),
    );
  });
});

const complete = completeInput('tightening');
const joint = { data: complete.joint.data, basis: basisOf(complete) };
const { line } = hydraulicsOf(complete);
if (line === null) throw new Error('fixture: no line');
const use: SuspectUse = {
  dialled: 26e6,
  pressure: 26e6,
  torque: 384,
  line,
  nutFactor: 0.16,
  gauge: { limit: 1e6, graduation: 1e6 },
};
const reference = { expanded: 0.01, coverage: 2 };
const affectedBy = (source: ErrorSource, assumption = '') =>
  affectedLoad({ ...use, source, assumption, limitsKnown: true, joint, tensionedLoad: null });

describe('the load that was really there', () => {
  test('no error leaves it as it was meant', () => {
    const sources: ErrorSource[] = [
      { kind: 'line', name: 'C', line, reference },
      { kind: 'stated', name: 'stated', error: 0 },
      { kind: 'nut factor', name: 'K', value: 0.16 },
      {
        kind: 'comparisons',
        name: 'check',
        of: 'torque',
        along: 'pressure',
        comparisons: [{ at: 26e6, intended: 384, reference: 384 }],
      },
      {
        kind: 'comparisons',
        name: 'check',
        of: 'pressure',
        along: 'pressure',
        comparisons: [{ at: 26e6, intended: 26e6, reference: 26e6 }],
      },
      { kind: 'gauge', name: 'CG', correction: { toIndicated: (p) => p, toReference: (p) => p } },
    ];
    for (const source of sources) {
      const { error, intendedLoad, realLoad, intendedTorque, deliveredTorque } = affectedBy(source);
      expect(Math.abs(error ?? 1), source.kind).toBeLessThan(1e-12);
      expect(realLoad, source.kind).toBeCloseTo(intendedLoad ?? 0, 6);
      expect(deliveredTorque, source.kind).toBeCloseTo(intendedTorque ?? 0, 9);
    }
  });

  test('it follows the error in proportion, and so does its interval', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e3, max: 1e6, noNaN: true }),
        fc.double({ min: -0.9, max: 2, noNaN: true }),
        fc.double({ min: 0.001, max: 0.2, noNaN: true }),
        fc.integer({ min: 2, max: 200 }),
        (load, error, spread, bolts) => {
          const at = (e: number) => realLoads(load, e, { common: 0.01, perBolt: spread }, bolts).value;
          const real = at(error);
          const meant = at(0);
          expect(real?.load).toBeCloseTo(load * (1 + error), 6);
          const ratio = (real?.singleBolt?.[0] ?? 0) / (meant?.singleBolt?.[0] ?? 1);
          expect(ratio).toBeCloseTo(1 + error, 9);
          // The mean of many bolts is known better than one of them.
          expect(real?.jointMean?.[0] ?? 0).toBeGreaterThan(
            real?.singleBolt?.[0] ?? Number.POSITIVE_INFINITY,
          );
        },
      ),
    );
  });

  test.each<[string, Partial<SuspectUse>, ErrorSource, string]>([
    [
      'no pressure',
      { pressure: null },
      { kind: 'line', name: 'C', line, reference },
      'no pressure was recorded',
    ],
    [
      'a pressure no point reaches',
      { pressure: 9e7 },
      { kind: 'line', name: 'C', line, reference },
      'above the highest point',
    ],
    ['no certificate', { line: null }, { kind: 'line', name: 'C', line, reference }, 'no certificate says'],
    [
      'no comparison',
      {},
      { kind: 'comparisons', name: 'check', of: 'torque', along: 'pressure', comparisons: [] },
      'no comparison',
    ],
    [
      'no nut factor',
      { nutFactor: null },
      { kind: 'nut factor', name: 'K', value: 0.2 },
      'without a nut factor',
    ],
    [
      'a reading outside a gauge’s points',
      {},
      { kind: 'gauge', name: 'CG', correction: { toIndicated: () => null, toReference: () => null } },
      'outside the points of CG',
    ],
    ['nothing said of torque', {}, { kind: 'not known', name: 'not known: a failed leak test' }, 'leak test'],
  ])('with %s it is not known, and says why', (_, change, source, why) => {
    const delivered = deliveredIn({ ...use, ...change }, source);
    expect(delivered).toMatchObject({
      error: null,
      deliveredTorque: null,
      basis: expect.stringContaining(why),
    });
    const affected = affectedLoad({
      ...use,
      ...change,
      source,
      assumption: '',
      limitsKnown: true,
      joint,
      tensionedLoad: null,
    });
    expect(affected).toMatchObject({ realLoad: null, worst: 'not known', limits: [] });
  });

  test('an interval nobody can state is none', () => {
    expect(affectedBy({ kind: 'line', name: 'C', line, reference }).interval).not.toBeNull();
    expect(affectedBy({ kind: 'line', name: 'C', line, reference: null }).interval).toBeNull();
    expect(affectedBy({ kind: 'stated', name: 'stated', error: 0 }).interval).toBeNull();
    const dry = { ...joint.basis, friction: { ...joint.basis.friction, scatter: null } };
    const affected = affectedLoad({
      ...use,
      source: { kind: 'line', name: 'C', line, reference },
      assumption: '',
      limitsKnown: true,
      joint: { ...joint, basis: dry },
      tensionedLoad: null,
    });
    expect(affected.interval).toBeNull();
    expect(affected.basis).toContain('scatter of friction not entered');
  });

  test('with a batch that changes what the joint stands, the load is as it was meant and its limits are not known', () => {
    const affected = affectedLoad({
      ...use,
      source: { kind: 'stated', name: 'stud batch', error: 0 },
      assumption: '',
      limitsKnown: false,
      joint,
      tensionedLoad: null,
    });
    expect(affected.realLoad).toBe(affected.intendedLoad);
    expect(affected).toMatchObject({ worst: 'not known', limits: [] });
  });
});

describe('comparisons of a check', () => {
  const points = [
    { at: 1e7, intended: 100, reference: 95 },
    { at: 3e7, intended: 300, reference: 270 },
  ];

  test('between two the error lies on a line, outside it is the nearest one, and which it was is said', () => {
    expect(errorByComparisons(points, 2e7).value).toMatchObject({ how: 'between two comparisons' });
    expect(errorByComparisons(points, 2e7).value?.error).toBeCloseTo(-0.075, 12);
    expect(errorByComparisons(points, 6e7).value).toMatchObject({ how: 'nearest comparison', highest: 3e7 });
    expect(errorByComparisons(points, 6e7).value?.error).toBeCloseTo(-0.1, 12);
    expect(errorByComparisons(points, 5e6).value?.error).toBeCloseTo(-0.05, 12);
  });

  test('their order and how often one was repeated doesn’t matter', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 5e7, noNaN: true }), (at) => {
        const again = [...points, ...points].toReversed();
        expect(errorByComparisons(again, at).value?.error).toBeCloseTo(
          errorByComparisons(points, at).value?.error ?? Number.NaN,
          12,
        );
      }),
    );
  });
});

describe('standing against limits', () => {
  const loads = { load: 100, singleBolt: [80, 125], jointMean: [95, 105] } as const;
  const limit = (
    side: 'least' | 'most',
    value: number,
    subject: 'single bolt' | 'joint mean' = 'single bolt',
  ) => ({
    name: side,
    side,
    limit: value,
    subject,
  });

  test('broken by the load itself, kept by the whole interval, not sure between', () => {
    const standing = (value: number) => standingOf(loads, -0.1, [limit('least', value)], '').worst;
    expect(standing(101)).toBe('broken');
    expect(standing(90)).toBe('not sure');
    expect(standing(79)).toBe('kept');
    const upper = (value: number) => standingOf(loads, 0.1, [limit('most', value)], '').worst;
    expect(upper(99)).toBe('broken');
    expect(upper(120)).toBe('not sure');
    expect(upper(126)).toBe('kept');
  });

  test('a gasket’s limit is about the mean of all bolts', () => {
    expect(standingOf(loads, -0.1, [limit('least', 90, 'joint mean')], '').worst).toBe('kept');
  });

  test('nothing is called kept without an interval, by an assumption, or while the limit that matters is not known', () => {
    const bare = { ...loads, singleBolt: null, jointMean: null };
    expect(standingOf(bare, -0.1, [limit('least', 10)], '').worst).toBe('not sure');
    expect(standingOf(loads, -0.1, [limit('least', 10)], 'taken over').worst).toBe('not sure');
    expect(standingOf(loads, -0.1, [limit('most', 1000)], '')).toMatchObject({
      worst: 'not known',
      open: expect.stringContaining('no least load'),
    });
    expect(standingOf(loads, 0.1, [limit('least', 10)], '').worst).toBe('not known');
    expect(standingOf(loads, -0.1, [], '').worst).toBe('not known');
  });

  test('the limits of a complete joint are those the card holds its load against', () => {
    const names = jointLimits(joint.data, joint.basis).map(({ name }) => name);
    expect(names).toEqual(
      expect.arrayContaining([
        'Least bolt stress',
        'Largest bolt stress',
        'Yield strength, axial',
        'Gasket seating',
        'Gasket in operation, test',
        'Gasket ceiling',
      ]),
    );
  });
});

const event: fc.Arbitrary<AffectedEvent> = fc.record({
  eventId: fc.uuid(),
  jointId: fc.constant('00000000-0000-7000-8000-000000000001'),
  tag: fc.constant('J'),
  happenedAt: moment,
  role: fc.constant('drive unit'),
  pressure: fc.constant(null),
  intendedTorque: fc.constant(null),
  deliveredTorque: fc.constant(null),
  error: fc.option(fc.double({ min: -1, max: 1, noNaN: true })),
  errorUncertainty: fc.constant(null),
  intendedLoad: fc.constant(null),
  realLoad: fc.option(fc.integer({ min: 1, max: 5 })),
  interval: fc.constant(null),
  limits: fc.array(
    fc.record({
      name: fc.constant('l'),
      side: fc.constantFrom('least' as const, 'most' as const),
      limit: fc.integer({ min: 1, max: 5 }),
      standing: fc.constant('kept' as const),
    }),
    { maxLength: 2 },
  ),
  worst: fc.constantFrom('broken' as const, 'not sure' as const, 'kept' as const, 'not known' as const),
  basis: fc.constant(''),
  redoneAt: fc.constant(null),
  decision: fc.constant(null),
});

test('room counts towards the limit that the error leads to, and a broken limit on either side', () => {
  const limits = [
    { side: 'least', limit: 50, standing: 'kept' },
    { side: 'most', limit: 110, standing: 'kept' },
  ] as const;
  expect(marginOf({ error: -0.1, realLoad: 100, limits })).toBeCloseTo(1, 12);
  expect(marginOf({ error: 0.1, realLoad: 100, limits })).toBeCloseTo(10 / 110, 12);
  const broken = { side: 'most', limit: 90, standing: 'broken' } as const;
  expect(marginOf({ error: -0.1, realLoad: 100, limits: [...limits, broken] })).toBeCloseTo(-10 / 90, 12);
  expect(marginOf({ error: -0.1, realLoad: null, limits })).toBeNull();
});

test('worst first is an order of its own: however the records come, they stand alike', () => {
  const rank = ['broken', 'not sure', 'not known', 'kept'];
  fc.assert(
    fc.property(
      fc.uniqueArray(event, { selector: ({ eventId }) => eventId, maxLength: 12 }),
      fc.infiniteStream(fc.nat()),
      (events, keys) => {
        const sorted = worstFirst(events);
        const shuffled = events
          .map((one) => ({ one, key: keys.next().value }))
          .sort((a, b) => a.key - b.key)
          .map(({ one }) => one);
        expect(worstFirst(shuffled)).toEqual(sorted);
        expect(worstFirst(sorted)).toEqual(sorted);
        const ranks = sorted.map(({ worst }) => rank.indexOf(worst));
        expect(ranks).toEqual(ranks.toSorted((a, b) => a - b));
      },
    ),
  );
});
