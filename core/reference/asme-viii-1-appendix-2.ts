import type { RowStatus } from './status.ts';

/**
 * Gasket factor m and design seating stress y of ASME BPVC VIII-1, Appendix 2, Table 2-5.1. Non-mandatory design values
 * for the code's minimum loads, never assembly stresses; makers print lower y for the same kind of gasket.
 */
export type GasketFactorRow = readonly [
  type: string,
  material: string,
  m: number | null,
  yPsi: number | null,
  sources: string,
  status: RowStatus,
];

export const GASKET_FACTORS: readonly GasketFactorRow[] = [
  ['self-energising (O-rings, metallic, elastomer, self-sealing types)', '', 0, 0, 'G7+G8+G9', 'AGREE'],
  ['elastomer without fabric, below 75A', '', 0.5, 0, 'G7+G8+G9', 'AGREE'],
  ['elastomer without fabric, 75A or higher', '', 1, 200, 'G7+G8+G9', 'AGREE'],
  ['elastomer with cotton fabric insertion', '', 1.25, 400, 'G7+G8+G9', 'AGREE'],
  ['vegetable fibre', '', 1.75, 1100, 'G7+G8+G9', 'AGREE'],
  ['spiral-wound metal with filler', 'stainless / nickel-copper windings', 3, 10000, 'G7+G8+G9+G10', 'AGREE'],
  ['corrugated metal or corrugated jacketed, filled', 'soft aluminium', 2.5, 2900, 'G7+G8+G9', 'AGREE'],
  [
    'corrugated metal or corrugated jacketed, filled',
    'soft copper or brass',
    2.75,
    3700,
    'G7+G8+G9',
    'AGREE',
  ],
  ['corrugated metal or corrugated jacketed, filled', 'iron or soft steel', 3, 4500, 'G7+G8+G9', 'AGREE'],
  [
    'corrugated metal or corrugated jacketed, filled',
    'nickel-copper or 4-6% chrome',
    3.25,
    5500,
    'G7+G8+G9',
    'AGREE',
  ],
  ['corrugated metal or corrugated jacketed, filled', 'stainless', 3.5, 6500, 'G7+G8+G9', 'AGREE'],
  ['corrugated metal', 'soft aluminium', 2.75, 3700, 'G7+G8+G9', 'AGREE'],
  ['corrugated metal', 'soft copper or brass', 3, 4500, 'G7+G8+G9', 'AGREE'],
  ['corrugated metal', 'iron or soft steel', 3.25, 5500, 'G7+G8+G9', 'AGREE'],
  ['corrugated metal', 'nickel-copper or 4-6% chrome', 3.5, 6500, 'G7+G8+G9', 'AGREE'],
  ['corrugated metal', 'stainless', 3.75, 7600, 'G7+G8+G9', 'AGREE'],
  ['flat metal jacketed, filled', 'soft aluminium', 3.25, 5500, 'G7+G8+G9', 'AGREE'],
  ['flat metal jacketed, filled', 'soft copper or brass', 3.5, 6500, 'G7+G8+G9', 'AGREE'],
  ['flat metal jacketed, filled', 'iron or soft steel', 3.75, 7600, 'G7+G8+G9', 'AGREE'],
  ['flat metal jacketed, filled', 'nickel-copper', 3.5, 8000, 'G7+G8+G9', 'AGREE'],
  ['flat metal jacketed, filled', '4-6% chrome', 3.75, 9000, 'G7+G8+G9', 'AGREE'],
  ['flat metal jacketed, filled', 'stainless', 3.75, 9000, 'G7+G8+G9', 'AGREE'],
  ['grooved metal', 'soft aluminium', 3.25, 5500, 'G7+G8+G9', 'AGREE'],
  ['grooved metal', 'soft copper or brass', 3.5, 6500, 'G7+G8+G9', 'AGREE'],
  ['grooved metal', 'iron or soft steel', 3.75, 7600, 'G7+G8+G9', 'AGREE'],
  ['grooved metal', 'nickel-copper or 4-6% chrome', 3.75, 9000, 'G7+G8+G9', 'AGREE'],
  ['grooved metal', 'stainless', 4.25, 10100, 'G7+G9', 'DISAGREE'],
  ['solid flat metal', 'soft aluminium', 4, 8800, 'G7+G8+G9', 'AGREE'],
  ['solid flat metal', 'soft copper or brass', 4.75, 13000, 'G7+G8+G9', 'AGREE'],
  ['solid flat metal', 'iron or soft steel', 5.5, 18000, 'G7+G8+G9', 'AGREE'],
  ['solid flat metal', 'nickel-copper or 4-6% chrome', 6, 21800, 'G7+G8+G9', 'AGREE'],
  ['solid flat metal', 'stainless', 6.5, 26000, 'G7+G8+G9', 'AGREE'],
  ['ring joint', 'iron or soft steel', 5.5, 18000, 'G7+G9', 'AGREE'],
  ['ring joint', 'nickel-copper or 4-6% chrome', 6, 21800, 'G9', 'SINGLE'],
  ['ring joint', 'stainless', null, null, '', 'GAP'],
];

export const GASKET_FACTOR_NOTES: Readonly<Record<string, string>> = {
  'spiral-wound metal with filler|stainless / nickel-copper windings':
    'makers print lower y for this kind of gasket, 5 000 to 7 500 psi: that is not the code’s value',
  'grooved metal|stainless': 'one source prints m = 3.25, which breaks the rising sequence; its y agrees',
  'ring joint|nickel-copper or 4-6% chrome': 'a second source prints the same m; its y is cut off',
};
