import type { CheckInput } from '../../core/contract/check.ts';
import type { JointInput } from '../../core/contract/joint.ts';
import type { CaseInput } from '../../core/contract/recall.ts';
import type { CertificateInput } from '../../core/contract/tool.ts';
import { ask, createEmpty, key, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { certify, enterPlant, jointA, saveJoint, type TestPlant, tighteningOf } from './records.ts';

/** Pressure in bar and torque in N·m that the planted wrench gave at the laboratory: about 8 % under its certificate. */
export const FOUND: readonly (readonly [number, number])[] = [
  [70, 91.6],
  [140, 187.3],
  [210, 284.4],
  [280, 381.6],
  [350, 476.1],
  [420, 575.4],
  [490, 671.2],
  [560, 766.0],
  [630, 864.3],
  [690, 947.1],
];

const pointsOf = (points: readonly (readonly [number, number])[]) => ({
  kind: 'pressure-torque' as const,
  points: points.map(([pressure, torque]) => ({
    pressure: { text: String(pressure), unit: 'bar' as const },
    torque: { text: String(torque), unit: 'N.m' as const },
    direction: 'up' as const,
  })),
  expandedUncertainty: { text: '1', unit: 'percent' as const },
  coverageFactor: 2,
});

/** What the laboratory found and put right on a day in June. */
export const FAILING: Partial<CertificateInput> = {
  number: 'C-2',
  calibratedOn: '2026-06-10',
  validUntil: '2027-06-09',
  asFound: pointsOf(FOUND),
};

export interface RecallPlant extends TestPlant {
  readonly started: TestService;
  /** Approves what the first person decided. */
  readonly approverId: string;
}

/** The plant of the service tests with its wrench certified in January, on a day in September. */
export async function recallPlant(folder = temporaryFolder()): Promise<RecallPlant> {
  const started = startService(folder, '2026-09-01T12:00:00Z');
  await createEmpty(started);
  const plant = await enterPlant(started);
  await certify(started, plant);
  const approver = await ask(started, 'person.save', {
    key: key(),
    id: null,
    version: null,
    data: { name: 'B. Engineer', role: 'integrity engineer' },
  });
  return { ...plant, started, approverId: approver.id };
}

export interface Job {
  readonly tag: string;
  readonly day: string;
  readonly bar?: number;
  /** Least bolt stress of the joint, MPa. */
  readonly least?: number;
  readonly change?: (joint: JointInput) => JointInput;
}

/** Enters a joint and records its tightening; answers both ids. */
export async function tighten(plant: RecallPlant, { tag, day, bar = 260, least = 200, change }: Job) {
  const { started } = plant;
  const base = jointA(plant.unitId, tag);
  const limits = { ...base.limits, boltStressMin: { text: String(least), unit: 'MPa' as const } };
  const data = { ...base, limits };
  const joint = await saveJoint(started, change === undefined ? data : change(data));
  const eventId = await record(plant, joint.id, day, bar);
  return { jointId: joint.id, eventId };
}

export async function record(plant: RecallPlant, jointId: string, day: string, bar = 260) {
  const { id } = await ask(plant.started, 'event.recordTightening', {
    key: key(),
    data: tighteningOf(plant, {
      jointId,
      happenedAt: `${day}T09:00:00+01:00`,
      dialled: { text: String(bar), unit: 'bar' },
    }),
  });
  return id;
}

/** A comparison of the wrench at one pressure: what its certificate says there, and what the reference showed. */
export function comparison(plant: RecallPlant, day: string, changes: Partial<CheckInput> = {}): CheckInput {
  return {
    toolId: plant.tools.driveId ?? '',
    kind: 'comparison',
    happenedAt: `${day}T07:00:00+01:00`,
    personId: plant.personId,
    checklist: null,
    comparisons: [
      {
        pressure: { text: '260', unit: 'bar' },
        reference: { text: '386', unit: 'N.m' },
        intended: { text: '384', unit: 'N.m' },
      },
    ],
    limit: { text: '4', unit: 'percent' },
    result: 'passed',
    remarks: '',
    ...changes,
  };
}

export const FAILED = {
  result: 'failed' as const,
  comparisons: [
    {
      pressure: { text: '260', unit: 'bar' as const },
      reference: { text: '368', unit: 'N.m' as const },
      intended: { text: '400', unit: 'N.m' as const },
    },
  ],
};

export async function check(plant: RecallPlant, data: CheckInput): Promise<string> {
  return (await ask(plant.started, 'tool.check', { key: key(), data })).id;
}

export function caseOn(
  plant: RecallPlant,
  basis: CaseInput['basis'],
  changes: Partial<CaseInput> = {},
): CaseInput {
  return {
    subject: { kind: 'tool', toolId: plant.tools.driveId ?? '' },
    basis,
    happenedAt: '2026-08-01T09:00:00+02:00',
    personId: plant.personId,
    remarks: '',
    ...changes,
  };
}
