import {
  assessEvidence,
  breakEvidence,
  inspectionEvidence,
  isolationEvidence,
  makeUpEvidence,
  reinstateEvidence,
  relaxationEvidence,
  releaseEvidence,
  testEvidence,
  witnessEvidence,
} from '../../core/contract/assembly.ts';
import { breakoutData, tighteningData } from '../../core/contract/event.ts';
import { jointData } from '../../core/contract/joint.ts';
import { passData } from '../../core/contract/pass.ts';
import { resolveJoint } from '../../core/joint/resolve.ts';
import { type AssemblyRecord, emptyRecord } from '../../core/record/record.ts';
import { settingCard } from '../../core/setting/card.ts';
import { completeInput } from './complete-input.ts';

const person = (n: number) => `0190a000-0000-7000-8000-00000000000${n}`;
const TOOL = '0190a000-0000-7000-8000-000000000020';
const JOINT = '0190a000-0000-7000-8000-000000000030';
const RUN = '0190a000-0000-7000-8000-000000000040';
const q = (text: string, unit: string) => ({ text, unit });
const BOLTS = Array.from({ length: 12 }, (_, at) => at + 1);

const TOOLS = {
  driveId: TOOL,
  cassetteId: TOOL,
  reducerIds: [],
  hoseIds: [TOOL],
  pumpId: TOOL,
  gaugeId: TOOL,
};

/** Evidence of each step with nothing stated in it. */
export const BLANK_STEPS: AssemblyRecord['steps'] = {
  assess: assessEvidence.parse({}),
  isolate: isolationEvidence.parse({}),
  release: releaseEvidence.parse({}),
  break: breakEvidence.parse({}),
  inspect: inspectionEvidence.parse({}),
  'make up': makeUpEvidence.parse({}),
  witness: witnessEvidence.parse({}),
  'relaxation pass': relaxationEvidence.parse({}),
  test: testEvidence.parse({}),
  reinstate: reinstateEvidence.parse({}),
};

/** The worked joint with what its own data can say filled in; invented. */
function knownJoint() {
  const { data } = completeInput('tightening').joint;
  return jointData.parse({
    ...data,
    service: 'hot condensate',
    bolting: { ...data.bolting, pressureRetaining: true },
    identity: {
      type: 'pipe flange',
      system: 'hot condensate',
      line: 'L-101',
      drawing: 'ISO-101',
      revision: 'C',
      landmark: 'pump P-101',
      direction: 'above',
      distance: q('1.5', 'm'),
      valve: 'XV-1',
      valveSide: 'downstream',
      neighbours: ['J-2'],
      testPack: 'TP-1',
      isolationBoundary: 'IB-1',
      numberingMark: 'name plate',
      photo: 'a'.repeat(64),
      confusableWith: [],
    },
    retightening: { procedure: 'BP-7', from: null, to: null, gasketExcluded: null },
    limits: { ...data.limits, boltStressMax: q('500', 'MPa') },
  });
}

function workedSteps(): AssemblyRecord['steps'] {
  const gaps = [3, 6, 9, 12].map((at) => ({ at, gap: q('4.4', 'mm') }));
  return {
    assess: assessEvidence.parse({
      class: 'critical',
      basis: 'site procedure CL-2 rev 1',
      fluidHazards: ['flammable', 'hot'],
      hasLeaked: 'no',
      vibration: 'no',
      insulated: 'yes',
      inspectionLevel: 'every joint',
    }),
    isolate: isolationEvidence.parse({ isolationRef: 'I-9', boundary: 'IB-1', proven: 'yes' }),
    release: releaseEvidence.parse({
      identityChecks: [{ personId: person(1) }, { personId: person(2) }],
      permitRef: 'P-77',
      isolationRef: 'I-9',
      zeroEnergyProven: 'yes',
    }),
    break: breakEvidence.parse({
      permitRef: 'P-77',
      isolationRef: 'I-9',
      firstMovement: [{ bolt: 1, angle: q('10', 'deg') }],
      seizedBolts: [],
      cutBolts: [4],
      gaps,
      flangeSpring: q('1', 'mm'),
      residue: 'no',
    }),
    inspect: inspectionEvidence.parse({
      faces: ['pipe', 'valve'].map((name) => ({
        name,
        verdict: 'as it should be',
        flatness: q('0.1', 'mm'),
      })),
      studs: { runsByHand: 'yes', nutFace: 'as it should be' },
      alignment: {
        axialGap: q('4', 'mm'),
        parallelism: q('0.3', 'mm'),
        offset: q('0.5', 'mm'),
        forceNeeded: 'no',
      },
      inspectorId: person(3),
    }),
    'make up': makeUpEvidence.parse({
      tagSerials: ['T-1'],
      gasket: { condition: 'new', identity: 'SW 8 300', batch: 'G-1', matchesJoint: 'yes' },
      lubricant: {
        productClass: 'nickel-based anti-seize',
        batch: 'L-1',
        appliedTo: ['threads', 'nut face'],
      },
      studs: {
        condition: 'used',
        useCount: 2,
        batch: 'S-1',
        certificate: 'M-1',
        coating: 'none',
        gradeSeen: 'B7',
        nutGradeSeen: '2H',
      },
      washers: 'none',
      fullEngagement: 'yes',
      snugTorque: q('40', 'N.m'),
      turnedSides: 'one',
      problems: 'none',
      advice: 'bring a short socket',
    }),
    witness: witnessEvidence.parse({
      witnessId: person(4),
      supervisorId: person(5),
      loadMeasurement: { method: 'elongation', readings: [{ bolt: 1, load: q('108', 'kN') }] },
      gaps,
      result: 'as it should be',
    }),
    'relaxation pass': relaxationEvidence.parse({
      dwell: q('4', 'h'),
      rotation: q('5', 'deg'),
      ambientTemperature: q('12', 'degC'),
    }),
    test: testEvidence.parse({
      pack: 'TP-1',
      pressure: q('7', 'bar'),
      hold: q('10', 'min'),
      gauge: 'G-55',
      gaugeDueOn: '2026-12-01',
      result: 'passed',
    }),
    reinstate: reinstateEvidence.parse({
      tagsRemoved: 'yes',
      guardsBack: 'yes',
      insulationBack: 'no',
      punchItems: [],
    }),
  };
}

const HAPPENED = '2026-03-16T09:00:00+01:00';
const common = {
  jointId: JOINT,
  settingId: null,
  personIds: [person(1)],
  tools: TOOLS,
  remarks: '',
};

/** A record in which every field is answered; invented. */
export function wholeRecord(): AssemblyRecord {
  const joint = knownJoint();
  const card = settingCard(completeInput('tightening'));
  const pass = passData.parse({
    ...common,
    runId: RUN,
    pass: 1,
    of: 1,
    name: 'full',
    boltsDone: BOLTS,
    dialled: q('260', 'bar'),
    confirmedBy: person(2),
    startedAt: '2026-03-16T08:00:00+01:00',
    endedAt: '2026-03-16T08:40:00+01:00',
    readings: BOLTS.map((bolt) => ({ bolt, outcome: 'done' })),
    stoppedBecause: null,
  });
  return {
    ...emptyRecord(joint, resolveJoint(joint)),
    unitName: 'Unit 100',
    criticality: 'critical',
    steps: workedSteps(),
    reinstatedBy: 'A. Person',
    setting: { number: 'S-0001', card },
    tightening: {
      data: tighteningData.parse({
        ...common,
        happenedAt: HAPPENED,
        dialled: q('260', 'bar'),
        torque: null,
        boltsTightened: 12,
        finalPassNoTurn: true,
      }),
      flags: [],
      people: ['A. Person'],
      recordedBy: 'A. Person',
    },
    passes: [pass],
    breakout: {
      data: breakoutData.parse({
        ...common,
        happenedAt: HAPPENED,
        readings: BOLTS.map((bolt) => ({
          bolt,
          outcome: bolt === 4 ? 'cut' : 'turned',
          torque: bolt === 4 ? null : q('400', 'N.m'),
          dialled: null,
        })),
      }),
      on: '2026-03-14',
    },
    competence: 'A. Person: until 2028-04-01',
    signatures: ['A. Person: did'],
  };
}
