import type { BreakoutInput, TighteningInput } from '../../core/contract/event.ts';
import type { JointInput } from '../../core/contract/joint.ts';
import type { SettingInput, ToolSetInput } from '../../core/contract/setting.ts';
import type { CertificateInput, ToolInput } from '../../core/contract/tool.ts';
import type { Unit } from '../../core/units/units.ts';
import { ask, key, type TestService } from './ask.ts';

const q = <U extends Unit>(text: string, unit: U) => ({ text, unit });

/** Joint A of the worked joints: NPS 8 Class 300, 12 × 7/8-9 UNC, A193 B7, 50 % of yield on the tensile area, K 0.16. */
export function jointA(unitId: string, tag = 'J-0001'): JointInput {
  return {
    tag,
    unitId,
    location: 'Pump deck, suction side',
    service: 'hot condensate',
    serviceTemperature: q('150', 'degC'),
    flange: { kind: 'standard', standard: 'ASME B16.5', size: '8', rating: '300', facing: 'raised face' },
    bolting: {
      count: 12,
      thread: '7/8-9 UNC',
      circle: q('330.2', 'mm'),
      grade: 'ASTM A193 B7',
      yieldStrength: q('105', 'ksi'),
      yieldOrigin: 'worked joint A',
      studLength: q('139.7', 'mm'),
      grip: q('86.6', 'mm'),
      nutSeries: 'ASME B18.2.2 heavy hex',
    },
    gasket: { type: 'spiral wound, inner ring', thickness: q('3.2', 'mm') },
    lubricant: {
      name: 'nickel-based anti-seize',
      batch: 'L-1',
      nutFactor: q('0.16', 'one'),
      nutFactorCv: q('10', 'percent'),
      frictionThread: null,
      frictionBearing: null,
      evidence: 'measured',
      source: 'invented for the test',
    },
    target: {
      mode: 'percent of yield',
      percent: q('50', 'percent'),
      area: 'tensile',
      basis: 'invented site procedure',
    },
    limits: {
      boltStressMax: q('500', 'MPa'),
      boltStressMin: q('200', 'MPa'),
      boltStressArea: 'tensile',
      flangeBoltStressMax: q('480', 'MPa'),
      source: 'invented limits',
    },
    space: { radialGap: q('60', 'mm') },
    remarks: '',
  };
}

const tool = (number: string, properties: ToolInput['properties']): ToolInput => ({
  number,
  serial: '',
  status: 'available',
  place: 'tool room',
  properties,
  remarks: '',
});

const driveUnit = (number = 'W-1'): ToolInput =>
  tool(number, {
    class: 'drive unit',
    ratedTorque: q('2000', 'N.m'),
    ratedPressure: q('700', 'bar'),
    family: 'F2',
    headRadius: q('30', 'mm'),
  });

const cassette = (number: string, acrossFlats: string, unit: 'in' | 'mm'): ToolInput =>
  tool(number, {
    class: 'cassette',
    acrossFlats: q(acrossFlats, unit),
    looseness: q('0.3', 'mm'),
    ratedTorque: q('2000', 'N.m'),
    family: 'F2',
    headRadius: q('21', 'mm'),
  });

const pump = (): ToolInput => tool('P-1', { class: 'pump', ratedPressure: q('700', 'bar') });

const gauge = (): ToolInput =>
  tool('G-1', {
    class: 'gauge',
    scaleMax: q('1000', 'bar'),
    graduation: q('10', 'bar'),
    accuracy: q('1', 'percent'),
  });

const hose = (): ToolInput =>
  tool('H-1', { class: 'hose', ratedPressure: q('700', 'bar'), madeOn: '2025-01-01' });

/** Pressure in bar and torque in N·m of worked joint A's certificate. */
const POINTS_A: readonly (readonly [string, string])[] = [
  ['70', '100'],
  ['140', '203'],
  ['210', '310'],
  ['280', '414'],
  ['350', '518'],
  ['420', '625'],
  ['490', '730'],
  ['560', '832'],
  ['630', '940'],
  ['690', '1029'],
];

function wrenchCertificate(
  toolId: string,
  withToolIds: string[],
  changes: Partial<CertificateInput> = {},
): CertificateInput {
  return {
    number: 'C-1',
    toolId,
    withToolIds,
    laboratory: 'Laboratory of the test',
    calibratedOn: '2026-01-10',
    validUntil: '2027-01-09',
    validityBasis: 'site rule, 12 months',
    result: 'within limits',
    condition: 'as left',
    measured: {
      kind: 'pressure-torque',
      points: POINTS_A.map(([pressure, torque]) => ({
        pressure: q(pressure, 'bar'),
        torque: q(torque, 'N.m'),
        direction: 'up' as const,
      })),
      expandedUncertainty: q('1', 'percent'),
      coverageFactor: 2,
    },
    remarks: '',
    ...changes,
  };
}

function gaugeCertificate(toolId: string): CertificateInput {
  return {
    ...wrenchCertificate(toolId, []),
    number: 'CG-1',
    measured: {
      kind: 'gauge',
      points: ['0', '250', '500', '750', '1000'].map((text) => ({
        indicated: q(text, 'bar'),
        reference: q(text, 'bar'),
      })),
    },
  };
}

export interface TestPlant {
  readonly unitId: string;
  readonly personId: string;
  readonly jointId: string;
  readonly tools: ToolSetInput;
}

/** Enters one unit, person and joint, and a complete tool set without a wrench certificate. */
export async function enterPlant(started: TestService): Promise<TestPlant> {
  const unit = await ask(started, 'unit.save', {
    key: key(),
    id: null,
    version: null,
    data: { name: 'Unit 100' },
  });
  const person = await ask(started, 'person.save', {
    key: key(),
    id: null,
    version: null,
    data: { name: 'A. Person', role: 'technician' },
  });
  const joint = await saveJoint(started, jointA(unit.id));
  const saveTool = async (data: ToolInput) =>
    (await ask(started, 'tool.save', { key: key(), id: null, version: null, data })).id;
  const tools: ToolSetInput = {
    driveId: await saveTool(driveUnit()),
    cassetteId: await saveTool(cassette('K-1', '1-7/16', 'in')),
    reducerIds: [],
    pumpId: await saveTool(pump()),
    gaugeId: await saveTool(gauge()),
    hoseIds: [await saveTool(hose())],
  };
  await ask(started, 'certificate.add', { key: key(), data: gaugeCertificate(tools.gaugeId ?? '') });
  return { unitId: unit.id, personId: person.id, jointId: joint.id, tools };
}

export function saveJoint(started: TestService, data: JointInput) {
  return ask(started, 'joint.save', { key: key(), id: null, version: null, data });
}

export function certify(started: TestService, plant: TestPlant, changes: Partial<CertificateInput> = {}) {
  const { driveId, cassetteId } = plant.tools;
  const withTools = cassetteId === null ? [] : [cassetteId];
  return ask(started, 'certificate.add', {
    key: key(),
    data: wrenchCertificate(driveId ?? '', withTools, changes),
  });
}

export function settingFor(plant: TestPlant, changes: Partial<SettingInput> = {}): SettingInput {
  return {
    jointId: plant.jointId,
    kind: 'tightening',
    startsOn: '2026-03-16',
    endsOn: '2026-03-16',
    tools: plant.tools,
    planId: 'staged-thirds',
    ...changes,
  };
}

export function tighteningOf(plant: TestPlant, changes: Partial<TighteningInput> = {}): TighteningInput {
  return {
    jointId: plant.jointId,
    settingId: null,
    happenedAt: '2026-03-16T09:00:00+01:00',
    personIds: [plant.personId],
    tools: plant.tools,
    remarks: '',
    dialled: q('260', 'bar'),
    torque: null,
    boltsTightened: 12,
    finalPassNoTurn: true,
    ...changes,
  };
}

export function breakoutOf(plant: TestPlant, changes: Partial<BreakoutInput> = {}): BreakoutInput {
  return {
    jointId: plant.jointId,
    settingId: null,
    happenedAt: '2026-03-16T10:00:00+01:00',
    personIds: [plant.personId],
    tools: plant.tools,
    remarks: '',
    readings: [
      { bolt: 1, outcome: 'turned', torque: null, dialled: q('280', 'bar') },
      { bolt: 2, outcome: 'turned', torque: q('450', 'N.m'), dialled: null },
      { bolt: 3, outcome: 'cut', torque: null, dialled: null },
    ],
    ...changes,
  };
}
