import type { RowStatus } from './status.ts';

/**
 * Proof stress of heavy hex nuts by ASTM A194; edition not stated by the sources. Plain hex nuts carry less, and no source
 * was found for them, for 7M and for strain-hardened 8 and 8M. `upToMm`: largest stud diameter the print is for.
 */
export type NutProofStressRow = readonly [
  grade: string,
  proofStress: number | null,
  unit: 'MPa' | 'ksi',
  upToMm: number | null,
  sources: string,
  status: RowStatus,
];

export const ASTM_A194: readonly NutProofStressRow[] = [
  ['2H', 1205, 'MPa', 38.1, 'X1+X2+X3', 'AGREE'],
  ['2HM', 1035, 'MPa', null, 'X1+X3', 'DISAGREE'],
  ['4', 175, 'ksi', null, 'X3', 'SINGLE'],
  ['7', 175, 'ksi', null, 'X3', 'SINGLE'],
  ['7M', null, 'MPa', null, '', 'GAP'],
  ['8', 550, 'MPa', null, 'X1+X2', 'AGREE'],
  ['8M', 550, 'MPa', null, 'X1+X2', 'AGREE'],
  ['8 strain hardened', null, 'MPa', null, '', 'GAP'],
  ['8M strain hardened', null, 'MPa', null, '', 'GAP'],
];

export const ASTM_A194_NOTES: Readonly<Record<string, string>> = {
  '2HM':
    'one source gives 2H, 2HM and 2 together 175 ksi, which the hardness of 2HM (159–235 HBW) cannot carry; 1035 MPa = 150 ksi kept',
};

/** Stud grades that sources pair with a nut grade. Pairs that no source was found for are left out. */
export const NUT_PAIRS: readonly (readonly [
  stud: string,
  nut: string,
  sources: string,
  status: RowStatus,
])[] = [
  ['ASTM A193 B7', '2H', 'X1+R5+X4', 'AGREE'],
  ['ASTM A193 B7M', '2HM', 'X1+X5', 'AGREE'],
];
