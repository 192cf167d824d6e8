import type { WorkKind } from '../../core/contract/setting.ts';
import type { CardInput } from '../../core/setting/input.ts';
import { typed } from '../truth/entered.ts';
import { workedJointA } from '../truth/worked-joint-a.ts';

type Draft<T> = T extends object ? { -readonly [K in keyof T]: Draft<T[K]> } : T;
export type InputDraft = Draft<CardInput>;

/** A copy of an input with changes made to it. */
export function changed(input: CardInput, change: (draft: InputDraft) => void): CardInput {
  const draft = structuredClone(input) as InputDraft;
  change(draft);
  return draft as CardInput;
}

/** Gasket, pressure cases and heat, invented, with room on every side. */
function gasketAndHeat({ joint: { data } }: InputDraft): void {
  if (data.gasket === null || data.lubricant === null) throw new Error('fixture: no gasket or lubricant');
  data.serviceTemperature = typed('150', 'degC');
  data.flangeMaterial = '1.1';
  data.lubricant.nutFactorBatchCv = typed('4', 'percent');
  Object.assign(data.bolting, { nutGrade: 'ASTM A194 2H', nutTensileStrength: typed('860', 'MPa') });
  data.limits.flangeRotationMax = typed('0.5', 'deg');
  Object.assign(data.gasket, {
    kind: 'spiral wound',
    contactInside: typed('233.4', 'mm'),
    contactOutside: typed('263.7', 'mm'),
    factorM: typed('3', 'one'),
    stressY: typed('69', 'MPa'),
    seatingStress: typed('60', 'MPa'),
    operatingStress: typed('35', 'MPa'),
    stressMax: typed('200', 'MPa'),
    targetStress: typed('100', 'MPa'),
    retainedOperating: typed('70', 'percent'),
    retainedTest: typed('90', 'percent'),
    rotationMax: typed('1', 'deg'),
    source: 'invented data sheet',
  });
  data.pressures = {
    design: { pressure: typed('40', 'bar'), temperature: typed('200', 'degC') },
    operating: { pressure: typed('30', 'bar'), temperature: typed('150', 'degC') },
    test: { pressure: typed('60', 'bar'), temperature: typed('20', 'degC') },
    source: 'invented line list',
  };
  Object.assign(data.hot, {
    assemblyTemperature: typed('20', 'degC'),
    boltTemperature: typed('140', 'degC'),
    flangeTemperature: typed('145', 'degC'),
    boltExpansion: typed('11.9', 'um/m.K'),
    flangeExpansion: typed('11.9', 'um/m.K'),
    boltModulus: typed('204000', 'MPa'),
    boltModulusHot: typed('196000', 'MPa'),
    boltYieldHot: typed('640', 'MPa'),
    jointStiffness: typed('2000', 'kN/mm'),
    source: 'invented',
  });
}

/** Lines that couple, a head with room for the stud, and a wrench on the far nut; invented. */
function wholeSet({ set }: InputDraft): void {
  const [hose] = set.hoses;
  if (set.pump === null || set.drive === null || set.cassette === null || hose === undefined) {
    throw new Error('fixture: no pump, hose, drive unit or cassette');
  }
  for (const { data } of [set.pump, hose, set.drive]) data.properties.coupling = 'S1';
  Object.assign(set.cassette.data.properties, {
    height: typed('70', 'mm'),
    bore: typed('30', 'mm'),
    openThrough: true,
    reactionArm: typed('160', 'mm'),
  });
  set.couplers = [
    {
      id: '018f0000-0000-7000-8000-000000000016',
      data: {
        ...OWN,
        number: 'K-31',
        properties: { class: 'coupler', ratedPressure: typed('700', 'bar'), coupling: 's1' },
      },
      certificates: [],
    },
  ];
  set.counterhold = {
    id: '018f0000-0000-7000-8000-000000000017',
    data: {
      ...OWN,
      number: 'B-05',
      properties: {
        class: 'counterhold wrench',
        acrossFlats: typed('1-7/16', 'in'),
        looseness: typed('0.3', 'mm'),
        ratedTorque: typed('2000', 'N.m'),
      },
    },
    certificates: [],
  };
}

const OWN = {
  serial: '',
  status: 'available',
  place: '',
  remarks: '',
  owner: { kind: 'own' },
  weight: null,
} as const;

/** Everything known and in order: the card has nothing to say about it. */
export function completeInput(kind: WorkKind): CardInput {
  return changed(workedJointA(), (input) => {
    input.kind = kind;
    Object.assign(input.joint.data.bolting, {
      count: 12,
      thread: '7/8-9 UNC',
      circle: typed('330.2', 'mm'),
      studLength: typed('145', 'mm'),
    });
    Object.assign(input.joint.data.limits, {
      boltStressMax: typed('500', 'MPa'),
      boltStressMin: typed('150', 'MPa'),
      boltStressArea: 'tensile',
      flangeBoltStressMax: typed('450', 'MPa'),
      source: 'site limits',
    });
    Object.assign(input.joint.data.space, { radialGap: typed('60', 'mm'), axialGap: typed('200', 'mm') });
    wholeSet(input);
    gasketAndHeat(input);
    const gauge = input.set.gauge?.certificates[0]?.data.measured;
    if (gauge?.kind === 'gauge') {
      gauge.points = ['0', '300', '600', '1000'].map((bar) => ({
        indicated: typed(bar, 'bar'),
        reference: typed(bar, 'bar'),
      }));
    }
    if (kind === 'breakout' && input.set.gauge !== null) {
      // The clean loosening torque needs less pressure: a shorter scale with finer marks reads it well.
      const { properties } = input.set.gauge.data;
      properties.scaleMax = typed('600', 'bar');
      properties.graduation = typed('5', 'bar');
      input.lastTightening = { torque: 280, happenedAt: '2025-05-04T10:00:00+02:00', eventId: 'invented' };
    }
  });
}
