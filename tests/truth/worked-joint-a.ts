import { jointData } from '../../core/contract/joint.ts';
import type { CertificateData } from '../../core/contract/tool.ts';
import { NO_SITE_TABLES } from '../../core/joint/site-tables.ts';
import type { CardInput } from '../../core/setting/input.ts';
import { NO_TOOL_ROOM } from '../../core/tools/facts.ts';
import { typed } from './entered.ts';

const POINTS: readonly [number, number][] = [
  [70, 100],
  [140, 203],
  [210, 310],
  [280, 414],
  [350, 518],
  [420, 625],
  [490, 730],
  [560, 832],
  [630, 940],
  [690, 1029],
];

const IDS = {
  joint: '018f0000-0000-7000-8000-000000000001',
  unit: '018f0000-0000-7000-8000-000000000002',
  drive: '018f0000-0000-7000-8000-000000000011',
  cassette: '018f0000-0000-7000-8000-000000000012',
  pump: '018f0000-0000-7000-8000-000000000013',
  gauge: '018f0000-0000-7000-8000-000000000014',
  hose: '018f0000-0000-7000-8000-000000000015',
  driveCertificate: '018f0000-0000-7000-8000-000000000021',
  gaugeCertificate: '018f0000-0000-7000-8000-000000000022',
} as const;

const TOOL = {
  serial: '',
  status: 'available',
  place: '',
  remarks: '',
  owner: { kind: 'own' },
  weight: null,
} as const;

const CERTIFICATE: Omit<CertificateData, 'number' | 'toolId' | 'withToolIds' | 'measured'> = {
  confirmed: [],
  laboratory: 'invented laboratory',
  calibratedOn: '2026-01-10',
  validUntil: '2027-01-09',
  validityBasis: 'site rule: 12 months',
  result: 'within limits',
  condition: 'as left',
  remarks: '',
  asFound: null,
  method: '',
  environment: null,
  decisionRule: null,
};

/** Worked joint A: NPS 8 Class 300, arithmetic by an independent script; gasket and limits left out. */
export function workedJointA(): CardInput {
  return {
    joint: {
      id: IDS.joint,
      version: 1,
      data: jointData.parse({
        tag: 'A',
        unitId: IDS.unit,
        location: '',
        service: '',
        serviceTemperature: null,
        flange: { kind: 'standard', standard: 'ASME B16.5', size: '8', rating: '300', facing: 'raised face' },
        bolting: {
          count: null,
          thread: null,
          circle: null,
          grade: 'ASTM A193 B7',
          yieldStrength: null,
          yieldOrigin: '',
          studLength: typed('139.7', 'mm'),
          grip: typed('86.6', 'mm'),
          nutSeries: null,
        },
        gasket: { type: 'spiral wound with inner ring', thickness: typed('3.2', 'mm') },
        lubricant: {
          name: 'nickel-based anti-seize',
          batch: '',
          nutFactor: typed('0.16', 'one'),
          nutFactorCv: typed('10', 'percent'),
          frictionThread: null,
          frictionBearing: null,
          evidence: 'measured',
          source: 'site test',
        },
        target: {
          mode: 'percent of yield',
          percent: typed('50', 'percent'),
          area: 'tensile',
          basis: 'worked joint A',
        },
        limits: {
          boltStressMax: null,
          boltStressMin: null,
          boltStressArea: 'tensile',
          flangeBoltStressMax: null,
          source: '',
        },
        space: { radialGap: null },
        remarks: '',
      }),
    },
    kind: 'tightening',
    startsOn: '2026-03-16',
    endsOn: '2026-03-17',
    planId: 'staged-thirds',
    boltSet: 0,
    method: 'hydraulic wrench',
    torqueTool: null,
    handWrench: null,
    toolRoom: NO_TOOL_ROOM,
    withUncertainty: false,
    set: {
      drive: {
        id: IDS.drive,
        data: {
          ...TOOL,
          number: 'D-04',
          properties: {
            class: 'drive unit',
            ratedTorque: typed('1100', 'N.m'),
            ratedPressure: typed('690', 'bar'),
            family: 'F1',
            headRadius: null,
            reactionArm: null,
            coupling: '',
          },
        },
        certificates: [
          {
            id: IDS.driveCertificate,
            data: {
              ...CERTIFICATE,
              number: '118',
              toolId: IDS.drive,
              withToolIds: [IDS.cassette],
              measured: {
                kind: 'pressure-torque',
                points: POINTS.map(([bar, torque]) => ({
                  pressure: typed(String(bar), 'bar'),
                  torque: typed(String(torque), 'N.m'),
                  direction: 'up' as const,
                  uncertainty: null,
                })),
                expandedUncertainty: typed('1', 'percent'),
                coverageFactor: 2,
              },
            },
          },
        ],
      },
      cassette: {
        id: IDS.cassette,
        data: {
          ...TOOL,
          number: 'C-11',
          properties: {
            class: 'cassette',
            acrossFlats: typed('1-7/16', 'in'),
            looseness: typed('0.3', 'mm'),
            ratedTorque: typed('2000', 'N.m'),
            family: 'F1',
            headRadius: typed('32', 'mm'),
            height: null,
            bore: null,
            studRoom: null,
            openThrough: false,
            reactionArm: null,
          },
        },
        certificates: [],
      },
      reducers: [],
      couplers: [],
      counterhold: null,
      further: [],
      pump: {
        id: IDS.pump,
        data: {
          ...TOOL,
          number: 'P-07',
          properties: { class: 'pump', ratedPressure: typed('700', 'bar'), connections: 1, coupling: '' },
        },
        certificates: [],
      },
      gauge: {
        id: IDS.gauge,
        data: {
          ...TOOL,
          number: 'G-17',
          properties: {
            class: 'gauge',
            scaleMax: typed('1000', 'bar'),
            graduation: typed('10', 'bar'),
            accuracy: typed('1', 'percent'),
            alsoPrinted: null,
          },
        },
        certificates: [
          {
            id: IDS.gaugeCertificate,
            data: {
              ...CERTIFICATE,
              number: '204',
              toolId: IDS.gauge,
              withToolIds: [],
              measured: { kind: 'gauge', points: [] },
            },
          },
        ],
      },
      hoses: [
        {
          id: IDS.hose,
          data: {
            ...TOOL,
            number: 'H-22',
            properties: {
              class: 'hose',
              ratedPressure: typed('700', 'bar'),
              madeOn: '2025-01-01',
              firstUsedOn: null,
              coupling: '',
            },
          },
          certificates: [],
        },
      ],
    },
    onRegister: { cassettes: [], reducers: [] },
    lastTightening: null,
    site: NO_SITE_TABLES,
  };
}
