import type { FindingCode } from '../../core/findings/codes.ts';
import { settingCard } from '../../core/setting/card.ts';
import type { CardInput } from '../../core/setting/input.ts';
import { typed } from '../truth/entered.ts';
import type { InputDraft } from './complete-input.ts';
import type { Change } from './finding-case.ts';

/** A tool of the set, which the fixture has. */
export function chosen<K extends 'drive' | 'cassette' | 'pump' | 'gauge' | 'counterhold'>(
  { set }: InputDraft,
  role: K,
): NonNullable<InputDraft['set'][K]> {
  const tool = set[role];
  if (tool === null) throw new Error(`fixture: no ${role}`);
  return tool as NonNullable<InputDraft['set'][K]>;
}

export const drive = (input: InputDraft) => chosen(input, 'drive');

export function driveCertificate(input: InputDraft) {
  const certificate = drive(input).certificates[0];
  if (certificate === undefined) throw new Error('fixture: no certificate');
  return certificate.data;
}

export const cassette = (input: InputDraft) => chosen(input, 'cassette').data.properties;

export const gauge = (input: InputDraft) => chosen(input, 'gauge').data.properties;

export function lubricant(input: InputDraft) {
  if (input.joint.data.lubricant === null) throw new Error('fixture: no lubricant');
  return input.joint.data.lubricant;
}

export function gasket(input: InputDraft) {
  if (input.joint.data.gasket === null) throw new Error('fixture: no gasket');
  return input.joint.data.gasket;
}

export function handWrench(most: string): InputDraft['torqueTool'] {
  return {
    toolId: null,
    number: 'HW-1',
    scale: {
      by: 'torque',
      least: typed('40', 'N.m'),
      most: typed(most, 'N.m'),
      graduation: typed('5', 'N.m'),
    },
    certificate: 'invented 7',
    validUntil: '2027-01-09',
  };
}

export const target =
  (share: string): Change =>
  (input) => {
    input.joint.data.target = {
      mode: 'percent of yield',
      percent: typed(share, 'percent'),
      area: 'tensile',
      basis: 'fixture',
    };
  };

export const noLimits: Change = (input) => {
  Object.assign(input.joint.data.limits, { boltStressMax: null, flangeBoltStressMax: null });
};

export const custom: Change = (input) => {
  input.joint.data.flange = { kind: 'custom', description: 'girth flange', siteRow: null };
};

export function reducer(outer: string, inner: string): InputDraft['set']['reducers'][number] {
  return {
    id: '018f0000-0000-7000-8000-000000000031',
    data: {
      number: 'R-03',
      serial: '',
      status: 'available',
      place: '',
      remarks: '',
      owner: { kind: 'own' },
      weight: null,
      properties: {
        class: 'reducer',
        outerAcrossFlats: typed(outer, 'in'),
        acrossFlats: typed(inner, 'in'),
        looseness: typed('0.2', 'mm'),
        ratedTorque: typed('900', 'N.m'),
      },
    },
    certificates: [],
  };
}

export function found(input: CardInput, code: FindingCode) {
  return settingCard(input).findings.filter((finding) => finding.code === code);
}
