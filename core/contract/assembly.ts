import * as z from 'zod';
import {
  answer,
  boltNumber,
  bolts,
  clock,
  common,
  length,
  moment,
  person,
  pressure,
  soundness,
  temperature,
  torque,
  words,
} from './evidence-fields.ts';
import { causes, leakRate } from './leak.ts';
import { loadMeasurement } from './measured-load.ts';
import { date, entered, id, text } from './values.ts';

export const criticality = z.enum(['mild', 'intermediate', 'critical']);
export type Criticality = z.infer<typeof criticality>;

export const fluidHazard = z.enum(['toxic', 'flammable', 'hydrogen', 'steam', 'corrosive', 'hot', 'other']);

export const assessEvidence = z.strictObject({
  class: criticality.nullable().default(null),
  /** Procedure and edition, or the reasoning. */
  basis: words(500),
  likelihood: words(300),
  consequence: words(300),
  /** Null: not known. Empty: looked into, none of them. */
  fluidHazards: z.array(fluidHazard).max(7).nullable().default(null),
  highTemperature: answer,
  highPressure: answer,
  cyclic: answer,
  /** Cycles in the year before, where they are counted. */
  cyclesPerYear: z.int('a whole number').min(0, 'at least 0').max(100_000).nullable().default(null),
  firstAssembly: answer,
  vibration: answer,
  externalLoad: answer,
  gasketRelaxes: answer,
  hasLeaked: answer,
  hardToReach: answer,
  peopleNearby: answer,
  insulated: answer,
  inspectionLevel: words(120),
  /** Words of the site's procedure; the program never says that hot work is allowed. */
  hotWork: words(300),
  reviewBy: date.nullable().default(null),
  ...common,
});
export type AssessEvidence = z.output<typeof assessEvidence>;

export const isolationEvidence = z.strictObject({
  isolationRef: words(120),
  /** Name or number of the boundary the joint lies within. */
  boundary: words(120),
  method: z
    .enum(['blind or spade', 'disconnected', 'double block and bleed', 'single valve', 'other', 'not known'])
    .default('not known'),
  /** Valves, blinds and breakers by number. */
  points: z.array(text(80)).max(60).nullable().default(null),
  locked: answer,
  drained: answer,
  vented: answer,
  purged: answer,
  proven: answer,
  provenBy: person,
  provenHow: words(300),
  ...common,
});
export type IsolationEvidence = z.output<typeof isolationEvidence>;

const identityCheck = z.strictObject({
  personId: id,
  checkedAt: moment,
  how: z.enum(['tag scanned', 'tag read', 'drawing and landmark', 'not known']).default('not known'),
  /** As read or scanned at the joint. */
  tagSeen: words(60),
  sideSeen: words(120),
});

export const releaseEvidence = z
  .strictObject({
    /** Each made at the joint, by a person of their own. */
    identityChecks: z.array(identityCheck).max(4, 'at most 4').default([]),
    permitRef: words(120),
    permitUntil: moment,
    isolationRef: words(120),
    /** At this joint, not somewhere on the line. */
    zeroEnergyProven: answer,
    provenBy: person,
    provenHow: words(300),
    supportsLocked: answer,
    ...common,
  })
  .superRefine(({ identityChecks }, context) => {
    identityChecks.forEach(({ personId }, index) => {
      if (identityChecks.findIndex((other) => other.personId === personId) === index) return;
      const path = ['identityChecks', index, 'personId'];
      context.addIssue({ code: 'custom', path, message: 'another person than the checks before it' });
    });
  });
export type ReleaseEvidence = z.output<typeof releaseEvidence>;

const gapAt = z.strictObject({ at: clock, gap: entered('length', { min: 0, max: 0.5 }) });

export const breakEvidence = z.strictObject({
  permitRef: words(120),
  isolationRef: words(120),
  zeroEnergyProven: answer,
  /** Of the break before this one, where the register doesn't know it. */
  lastBrokenOn: date.nullable().default(null),
  /** Breakout record with the torque or pressure of each bolt. */
  breakoutEventId: id.nullable().default(null),
  firstMovement: z
    .array(z.strictObject({ bolt: boltNumber, angle: entered('angle', { min: 0, max: 20 }) }))
    .max(400)
    .nullable()
    .default(null),
  seizedBolts: bolts,
  cutBolts: bolts,
  /** Gap opened with the bolts slack, by position. */
  gaps: z.array(gapAt).max(12).nullable().default(null),
  seenFrom: words(120),
  openedSide: words(120),
  /** How far, and which way, the flanges moved when they were let go. */
  flangeSpring: length(1),
  springDirection: words(120),
  residue: answer,
  residueFound: words(300),
  ...common,
});
export type BreakEvidence = z.output<typeof breakEvidence>;

const face = z.strictObject({
  /** "pipe side", "valve", "channel". */
  name: text(80),
  damage: answer,
  depth: length(0.05),
  /** Across the face, in the direction a leak would take. */
  radialExtent: length(1),
  flatness: length(0.05),
  rust: answer,
  finish: words(120),
  verdict: soundness,
});

export const inspectionEvidence = z.strictObject({
  /** Null: nobody looked. */
  faces: z.array(face).max(4, 'at most 4').nullable().default(null),
  studs: z
    .strictObject({
      galling: answer,
      necking: answer,
      corrosion: answer,
      /** Every nut runs down its thread by hand. */
      runsByHand: answer,
      nutFace: soundness,
      holes: soundness,
      /** Bolts set aside or replaced. */
      rejected: bolts,
    })
    .prefault({}),
  alignment: z
    .strictObject({
      axialGap: length(0.5),
      /** Largest less smallest gap round the joint. */
      parallelism: length(0.2),
      /** Of the centre lines. */
      offset: length(0.2),
      /** Of the bolt holes, along the circle. */
      rotation: length(0.2),
      forceNeeded: answer,
      force: entered('force', { min: 0, max: 1e7 }).nullable().default(null),
      /** Whose figures it was held against. */
      limits: words(300),
      verdict: soundness,
    })
    .prefault({}),
  inspectorId: person,
  result: z.enum(['fit for assembly', 'not fit for assembly', 'not known']).default('not known'),
  ...common,
});
export type InspectionEvidence = z.output<typeof inspectionEvidence>;

export const holdEvidence = z.strictObject({
  reason: words(500),
  defect: words(500),
  /** Joint, bolts or part that is held. */
  where: words(300),
  /** Role or person that may clear it by the site's procedure. */
  clearedBy: words(120),
  ...common,
});

export const clearHoldEvidence = z.strictObject({ reason: words(500), repair: words(500), ...common });

export const makeUpEvidence = z.strictObject({
  tagSerials: z.array(text(60)).max(12).nullable().default(null),
  gasket: z
    .strictObject({
      condition: z.enum(['new', 'used', 'not known']).default('not known'),
      /** What stands on it: marking, stock number. */
      identity: words(200),
      batch: words(80),
      /** Held against the joint's own data before it went in. */
      matchesJoint: answer,
      verifiedBy: person,
    })
    .prefault({}),
  lubricant: z
    .strictObject({
      /** Product class, never a brand. */
      productClass: words(120),
      batch: words(80),
      appliedTo: z
        .array(z.enum(['threads', 'nut face', 'washer']))
        .max(3)
        .nullable()
        .default(null),
      verifiedBy: person,
    })
    .prefault({}),
  studs: z
    .strictObject({
      condition: z.enum(['new', 'used', 'mixed', 'not known']).default('not known'),
      /** Tightenings before this one; the highest of the set. */
      useCount: z.int('a whole number').min(0, 'at least 0').max(1000).nullable().default(null),
      batch: words(80),
      certificate: words(120),
      coating: words(120),
      /** Grades as marked on stud and nut. */
      gradeSeen: words(60),
      nutGradeSeen: words(60),
    })
    .prefault({}),
  washers: z
    .enum(['under both nuts', 'under the turned nut', 'none', 'mixed', 'not known'])
    .default('not known'),
  /** Every nut fully on its thread. */
  fullEngagement: answer,
  shortBolts: bolts,
  /** Least thread beyond the nut. */
  protrusion: length(1),
  snugTorque: torque,
  snugBy: z.enum(['hand', 'hand wrench', 'machine', 'not known']).default('not known'),
  turnedSides: z.enum(['one', 'both', 'not known']).default('not known'),
  ...common,
});
export type MakeUpEvidence = z.output<typeof makeUpEvidence>;

export const witnessEvidence = z.strictObject({
  witnessId: person,
  /** Read the setting on the gauge before the first nut, beside the one who set it. */
  settingSeenBy: person,
  settingSeen: answer,
  boltsWitnessed: bolts,
  finalPassNoTurn: answer,
  loadMeasurement: loadMeasurement.nullable().default(null),
  gaps: z.array(gapAt).max(12).nullable().default(null),
  seenFrom: words(120),
  supervisorId: person,
  result: soundness,
  ...common,
});
export type WitnessEvidence = z.output<typeof witnessEvidence>;

export const relaxationEvidence = z.strictObject({
  kind: z.enum(['after the dwell', 'during start-up']).nullable().default(null),
  /** End of the last full pass, from which the dwell counts. */
  dwellFrom: moment,
  dwell: entered('duration', { min: 0, max: 3.2e7 }).nullable().default(null),
  ambientTemperature: temperature,
  boltTemperature: temperature,
  /** The site's own for this pass. */
  procedure: words(120),
  dialled: pressure,
  torque,
  /** Largest turn of any nut before it stopped. */
  rotation: entered('angle', { min: 0, max: 20 }).nullable().default(null),
  boltsTurned: bolts,
  ...common,
});
export type RelaxationEvidence = z.output<typeof relaxationEvidence>;

export const testEvidence = z.strictObject({
  pack: words(120),
  medium: words(120),
  pressure,
  hold: entered('duration', { min: 0, max: 3.2e6 }).nullable().default(null),
  /** Gauge of the register, or its number and due date where it is not kept there. */
  gaugeToolId: id.nullable().default(null),
  gauge: words(120),
  gaugeDueOn: date.nullable().default(null),
  ambientTemperature: temperature,
  metalTemperature: temperature,
  method: z
    .enum(['soap solution', 'tracer gas', 'pressure decay', 'acoustic', 'sight', 'other', 'not known'])
    .default('not known'),
  result: z.enum(['passed', 'failed', 'not known']).default('not known'),
  rate: leakRate,
  /** Tightness class by its standard: "L 0.01". */
  tightnessClass: words(60),
  action: words(500),
  /** 0 for the first test of this make-up. */
  retest: z.int('a whole number').min(0, 'at least 0').max(100).nullable().default(null),
  ...common,
});
export type TestEvidence = z.output<typeof testEvidence>;

export const reinstateEvidence = z.strictObject({
  tagsRemoved: answer,
  guardsBack: answer,
  insulationBack: answer,
  supportsUnlocked: answer,
  blindsRemoved: answer,
  isolationLifted: answer,
  /** Null: the list was not gone through. */
  punchItems: z
    .array(
      z.strictObject({
        text: text(300),
        state: z.enum(['closed', 'carried over', 'open']),
        /** Where a carried-over item is kept. */
        reference: words(120),
      }),
    )
    .max(60)
    .nullable()
    .default(null),
  ...common,
});
export type ReinstateEvidence = z.output<typeof reinstateEvidence>;

export const leakEvidence = z.strictObject({
  /** Hour on a clock's face, seen from the side named. */
  clock: clock.nullable().default(null),
  seenFrom: words(120),
  /** Bolts the leak lies between or at. */
  nearBolts: bolts,
  phase: z.enum(['leak test', 'start-up', 'in service', 'not known']).default('not known'),
  medium: words(120),
  rate: leakRate,
  /** Where no rate was measured: "two drops a minute", "audible". */
  rateWords: words(200),
  method: words(120),
  causes,
  action: words(500),
  ...common,
});

/** What was done about a leak. The causes may be others than were first thought; both stay on record. */
export const closeLeakEvidence = z.strictObject({
  leakEventId: id.nullable().default(null),
  done: words(500),
  causes,
  checkedHow: words(300),
  ...common,
});
