import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { NUT_SERIES } from '../../core/bolting/nut.ts';
import { threadDesignations } from '../../core/bolting/thread.ts';
import { settingCard as cardSchema } from '../../core/contract/setting.ts';
import { SEVERITIES } from '../../core/findings/finding.ts';
import { FLANGE_STANDARDS, flangeSizes } from '../../core/reference/flanges.ts';
import { gradeNames } from '../../core/reference/strengths.ts';
import { settingCard } from '../../core/setting/card.ts';
import type { CardInput } from '../../core/setting/input.ts';
import { freeze } from '../../core/units/round.ts';
import { asTyped, orNull, quantity, ratio } from './any-quantity.ts';
import { changed, completeInput, type InputDraft } from './complete-input.ts';

const date = fc.constantFrom('2025-01-01', '2026-03-15', '2026-03-16', '2026-03-17', '2027-12-31');

const flange = fc.oneof(
  fc.constant({ kind: 'custom' as const, description: 'girth flange', siteRow: null }),
  fc.constantFrom(...FLANGE_STANDARDS).chain((standard) =>
    fc.constantFrom(...flangeSizes(standard)).chain(({ size, ratings }) =>
      fc.record({
        kind: fc.constant('standard' as const),
        standard: fc.constant(standard),
        size: fc.constantFrom(size, '999'),
        rating: fc.constantFrom(...ratings),
        facing: fc.constantFrom('raised face' as const, 'ring joint' as const),
      }),
    ),
  ),
);

const target = fc.oneof(
  fc.record({
    mode: fc.constant('percent of yield' as const),
    percent: ratio(0.01, 1),
    area: fc.constantFrom('tensile' as const, 'root' as const),
    basis: fc.constant('fixture'),
  }),
  fc.record({
    mode: fc.constant('bolt stress' as const),
    stress: quantity('stress', 1e6, 2e9),
    area: fc.constantFrom('tensile' as const, 'root' as const),
    basis: fc.constant('fixture'),
  }),
  fc.record({
    mode: fc.constant('torque' as const),
    torque: quantity('torque', 1, 2e5),
    basis: fc.constant('fixture'),
  }),
);

const joint = fc.record({
  flange,
  bolting: fc.record({
    count: orNull(fc.integer({ min: 1, max: 400 })),
    thread: orNull(fc.constantFrom(...threadDesignations(), 'M24x7', 'unreadable')),
    circle: orNull(quantity('length', 0.02, 20)),
    grade: orNull(fc.constantFrom(...gradeNames(), 'no such grade')),
    yieldStrength: orNull(quantity('stress', 50e6, 2e9)),
    studLength: orNull(quantity('length', 0.02, 5)),
    grip: orNull(quantity('length', 0.005, 5)),
    nutSeries: orNull(fc.constantFrom(...NUT_SERIES)),
  }),
  lubricant: orNull(
    fc.record({
      name: fc.constant('graphite paste'),
      batch: fc.constant(''),
      nutFactor: orNull(ratio(0.03, 0.8)),
      nutFactorCv: orNull(ratio(0, 1)),
      nutFactorBatchCv: orNull(ratio(0, 1)),
      frictionThread: orNull(ratio(0.02, 0.6)),
      frictionBearing: orNull(ratio(0.02, 0.6)),
      evidence: fc.constantFrom('published' as const, 'measured' as const, 'assumed' as const),
      source: fc.constant(''),
    }),
  ),
  target: orNull(target),
  radialGap: orNull(quantity('length', 0.001, 2)),
  least: orNull(quantity('stress', 1e6, 2e9)),
  largest: orNull(quantity('stress', 1e6, 2e9)),
});

const set = fc.record({
  missing: fc.subarray(['drive', 'cassette', 'pump', 'gauge'] as const),
  hoses: fc.boolean(),
  opening: quantity('length', 0.005, 0.3),
  looseness: orNull(quantity('length', 1e-5, 0.005)),
  ratedTorque: quantity('torque', 1, 2e5),
  ratedPressure: quantity('pressure', 1e5, 4e8),
  scaleMax: quantity('pressure', 1e5, 4e8),
  graduation: quantity('pressure', 1e3, 1e8),
  points: fc.array(fc.tuple(quantity('pressure', 1e5, 4e8), quantity('torque', 1, 2e5)), {
    minLength: 3,
    maxLength: 12,
  }),
  gaugePoints: fc.array(fc.tuple(quantity('pressure', 1e5, 4e8), quantity('pressure', 1e5, 4e8)), {
    maxLength: 6,
  }),
  calibratedOn: date,
  validUntil: date,
});

const anyInput: fc.Arbitrary<CardInput> = fc
  .record({
    kind: fc.constantFrom('tightening' as const, 'breakout' as const),
    planId: fc.constantFrom('staged-thirds', 'pcc-1-legacy', ''),
    startsOn: date,
    endsOn: date,
    joint,
    set,
    installed: orNull(fc.double({ min: 0, max: 1e5, noNaN: true })),
  })
  .map(({ kind, planId, startsOn, endsOn, joint: made, set: chosen, installed }) =>
    changed(completeInput(kind), (input) => {
      Object.assign(input, { planId, startsOn, endsOn });
      const { data } = input.joint;
      data.flange = made.flange;
      Object.assign(data.bolting, made.bolting);
      data.lubricant = made.lubricant;
      data.target = made.target;
      data.space.radialGap = made.radialGap;
      data.limits.boltStressMin = made.least;
      data.limits.boltStressMax = made.largest;
      input.lastTightening =
        installed === null
          ? null
          : { torque: installed, happenedAt: '2025-05-04T10:00:00+02:00', eventId: 'invented' };
      const drive = input.set.drive;
      if (drive !== null) {
        drive.data.properties.ratedPressure = chosen.ratedPressure;
        const [certificate] = drive.certificates;
        if (certificate !== undefined) {
          Object.assign(certificate.data, {
            calibratedOn: chosen.calibratedOn,
            validUntil: chosen.validUntil,
          });
          if (certificate.data.measured.kind === 'pressure-torque') {
            certificate.data.measured.points = chosen.points.map(([pressure, torque]) => ({
              pressure,
              torque,
              direction: 'up' as const,
              uncertainty: null,
            }));
          }
        }
      }
      if (input.set.cassette !== null) {
        Object.assign(input.set.cassette.data.properties, {
          acrossFlats: chosen.opening,
          looseness: chosen.looseness,
          ratedTorque: chosen.ratedTorque,
        });
        input.onRegister.cassettes = [structuredClone(input.set.cassette)];
      }
      const gauge = input.set.gauge;
      if (gauge !== null) {
        Object.assign(gauge.data.properties, { scaleMax: chosen.scaleMax, graduation: chosen.graduation });
        const measured = gauge.certificates[0]?.data.measured;
        if (measured?.kind === 'gauge') {
          measured.points = chosen.gaugePoints.map(([indicated, reference]) => ({ indicated, reference }));
        }
      }
      for (const role of chosen.missing) input.set[role] = null;
      if (!chosen.hoses) input.set.hoses = [];
    }),
  );

/** What can be taken away from a complete input, each on its own. */
const HOLES: ((input: InputDraft) => void)[] = [
  function noGasketGripOrStud({ joint: { data } }) {
    data.gasket = null;
    data.bolting.grip = null;
  },
  function noGrade({ joint: { data } }) {
    data.bolting.grade = null;
  },
  function noLubricant({ joint: { data } }) {
    data.lubricant = null;
  },
  function noLimits({ joint: { data } }) {
    Object.assign(data.limits, { boltStressMin: null, boltStressMax: null, flangeBoltStressMax: null });
  },
  function noRadialGap({ joint: { data } }) {
    data.space.radialGap = null;
  },
  function noStandard({ joint: { data } }) {
    data.flange = { kind: 'custom', description: 'girth flange', siteRow: null };
  },
  function noLooseness({ set: parts }) {
    if (parts.cassette !== null) parts.cassette.data.properties.looseness = null;
  },
  function noHeadRadius({ set: parts }) {
    if (parts.cassette !== null) parts.cassette.data.properties.headRadius = null;
  },
  function noCassetteRating({ set: parts }) {
    if (parts.cassette !== null) parts.cassette.data.properties.ratedTorque = null;
  },
  function noHoses({ set: parts }) {
    parts.hoses = [];
  },
  function noGauge({ set: parts }) {
    parts.gauge = null;
  },
  function noDriveCertificate({ set: parts }) {
    if (parts.drive !== null) parts.drive.certificates = [];
  },
  function noGaugeCertificate({ set: parts }) {
    if (parts.gauge !== null) parts.gauge.certificates = [];
  },
];

/** Every number in a value, at any depth. */
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

describe('a card for any data with any holes', () => {
  test('keeps to its schema, holds only finite numbers, and says so when it may not be issued', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const card = settingCard(input);
        expect(cardSchema.safeParse(card).error).toBeUndefined();
        expect(numbersIn(card).every(Number.isFinite)).toBe(true);
        expect(textsIn(card).filter((text) => /NaN|undefined|Infinity/.test(text))).toEqual([]);
        const severities = card.findings.map((finding) => SEVERITIES.indexOf(finding.severity));
        expect([...severities].sort((a, b) => a - b)).toEqual(severities);
        expect(card.issuable).toBe(!severities.includes(SEVERITIES.indexOf('refusal')));
        expect(settingCard(input)).toEqual(card);
        expect(freeze(freeze(card))).toEqual(freeze(card));
      }),
      { numRuns: 400 },
    );
  });

  test('holes never leave an issuable card without dial, torque and order', () => {
    let issuable = 0;
    fc.assert(
      fc.property(
        fc.constantFrom('tightening' as const, 'breakout' as const),
        fc.subarray(HOLES),
        (kind, holes) => {
          const card = settingCard(
            changed(completeInput(kind), (input) => {
              for (const hole of holes) hole(input);
            }),
          );
          if (!card.issuable) return;
          issuable += 1;
          expect(card.dial).not.toBeNull();
          expect(card.torque).not.toBeNull();
          expect(card.order).not.toBeNull();
        },
      ),
      { numRuns: 400 },
    );
    expect(issuable).toBeGreaterThan(10);
  });

  test.each(HOLES.map((hole) => [hole.name, hole] as const))('%s is not silent', (_, hole) => {
    const card = settingCard(changed(completeInput('tightening'), hole));
    expect(card.findings.length).toBeGreaterThan(0);
  });

  test('no mark on an issuable card stands above a rating, a scale or the certified points', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 0.68, noNaN: true }),
        fc.integer({ min: 1, max: 50 }),
        (share, marks) => {
          const card = settingCard(
            changed(completeInput('tightening'), (input) => {
              if (input.set.gauge !== null) {
                input.set.gauge.data.properties.graduation = asTyped(marks * 1e5, 'bar');
              }
              Object.assign(input.joint.data.limits, { boltStressMin: null });
              const percent = { text: String(share * 100), unit: 'percent' as const, si: share };
              input.joint.data.target = {
                mode: 'percent of yield',
                percent,
                area: 'tensile',
                basis: 'fixture',
              };
            }),
          );
          if (!card.issuable) return;
          expect(card.dial?.pressure ?? Number.NaN).toBeLessThanOrEqual(690e5 * (1 + 1e-12));
          expect(card.stressTensile ?? Number.NaN).toBeLessThanOrEqual(450e6 * (1 + 1e-9));
        },
      ),
    );
  });

  test('more bolt stress never asks for less pressure', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 50, max: 430, noNaN: true }),
        fc.double({ min: 0, max: 50, noNaN: true }),
        (low, more) => {
          const dialled = (stress: number) =>
            settingCard(
              changed(completeInput('tightening'), (input) => {
                input.joint.data.target = {
                  mode: 'bolt stress',
                  stress: { text: String(stress), unit: 'MPa', si: stress * 1e6 },
                  area: 'tensile',
                  basis: 'fixture',
                };
              }),
            ).dial?.value ?? Number.NaN;
          expect(dialled(low + more)).toBeGreaterThanOrEqual(dialled(low));
        },
      ),
    );
  });
});

describe('a breakout card', () => {
  const card = settingCard(completeInput('breakout'));

  test('begins below the installed torque and ends below set and stud', () => {
    const { breakout } = card;
    expect(breakout).not.toBeNull();
    if (breakout === null) return;
    expect(breakout.cleanTorque ?? Number.NaN).toBeLessThan(breakout.installedTorque);
    expect(breakout.start?.pressure ?? Number.NaN).toBeLessThan(breakout.never?.pressure ?? Number.NaN);
    expect(breakout.studCeilingElastic ?? Number.NaN).toBeLessThan(breakout.studCeilingPlastic ?? Number.NaN);
    const highest = card.passes.at(-1)?.torque ?? Number.NaN;
    expect(highest).toBeLessThanOrEqual(breakout.studCeilingElastic ?? Number.NaN);
    expect(highest).toBeLessThanOrEqual(breakout.capacity ?? Number.NaN);
  });

  test('without friction begins at the installed torque, says so, and knows no ceiling of the stud', () => {
    const blind = settingCard(
      changed(completeInput('breakout'), (input) => {
        input.joint.data.lubricant = null;
      }),
    );
    expect(blind.breakout?.cleanTorque).toBeNull();
    expect(blind.passes[0]?.name).toBe('First pressure, installed torque');
    expect(blind.findings.map((finding) => finding.code)).toContain('limit_unknown');
    expect(blind.findings.map((finding) => finding.code)).toContain('friction_unknown');
  });

  test('without a record of tightening the target stands in as an assumption', () => {
    const assumed = settingCard(
      changed(completeInput('breakout'), (input) => {
        input.lastTightening = null;
      }),
    );
    expect(assumed.breakout?.installedOrigin).toBe('assumed');
    expect(assumed.assumed).toBe(true);
    expect(assumed.findings.map((finding) => finding.code)).toContain('installed_torque_unknown');
  });
});
