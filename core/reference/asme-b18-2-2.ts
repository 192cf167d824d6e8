import type { RowStatus } from './status.ts';

/**
 * Heavy hex nuts, inch (ASME B18.2.2; edition not stated by the sources). The across flats printed here are rounded
 * to three decimals; the exact nominal size is 1.5 D + 1/8 in, which every row but 9/16 in obeys.
 */
export type HeavyHexInchRow = readonly [
  diameterIn: number,
  acrossFlatsMaxIn: number,
  acrossFlatsMinIn: number,
  acrossCornersMaxIn: number,
  heightMaxIn: number,
  heightMinIn: number,
  sources: string,
  status: RowStatus,
];

export const HEAVY_HEX_INCH: readonly HeavyHexInchRow[] = [
  [0.5, 0.875, 0.85, 1.01, 0.504, 0.464, 'N1+N2', 'AGREE'],
  [0.5625, 0.938, 0.909, 1.083, 0.568, 0.526, 'N1', 'SINGLE'],
  [0.625, 1.062, 1.031, 1.227, 0.631, 0.587, 'N1+N2', 'AGREE'],
  // biome-ignore lint/suspicious/noApproximativeNumericConstant: a width across corners of the table
  [0.75, 1.25, 1.212, 1.443, 0.758, 0.71, 'N1+N2', 'AGREE'],
  [0.875, 1.438, 1.394, 1.66, 0.885, 0.833, 'N1+N2', 'AGREE'],
  [1, 1.625, 1.575, 1.876, 1.012, 0.956, 'N1+N2', 'AGREE'],
  [1.125, 1.812, 1.756, 2.093, 1.139, 1.079, 'N1+N2', 'AGREE'],
  [1.25, 2, 1.938, 2.309, 1.251, 1.187, 'N1+N2', 'AGREE'],
  [1.375, 2.188, 2.119, 2.526, 1.378, 1.31, 'N1+N2', 'AGREE'],
  [1.5, 2.375, 2.3, 2.742, 1.505, 1.433, 'N1+N2', 'AGREE'],
  [1.625, 2.562, 2.481, 2.959, 1.632, 1.556, 'N1+N2', 'AGREE'],
  [1.75, 2.75, 2.662, 3.175, 1.759, 1.679, 'N1+N2', 'AGREE'],
  [1.875, 2.938, 2.844, 3.392, 1.886, 1.802, 'N2', 'AGREE_RULE'],
  [2, 3.125, 3.025, 3.608, 2.013, 1.925, 'N1+N2', 'AGREE'],
  [2.25, 3.5, 3.388, 4.041, 2.251, 2.155, 'N1+N2', 'AGREE'],
  [2.5, 3.875, 3.75, 4.474, 2.505, 2.401, 'N1+N2', 'AGREE'],
  [2.75, 4.25, 4.112, 4.907, 2.759, 2.647, 'N1+N2', 'AGREE'],
  [3, 4.625, 4.475, 5.34, 3.013, 2.893, 'N1+N2', 'AGREE'],
  [3.25, 5, 4.838, 5.774, 3.252, 3.124, 'N1+N2', 'AGREE'],
  [3.5, 5.375, 5.2, 6.207, 3.506, 3.37, 'N1+N2', 'AGREE'],
  [3.75, 5.75, 5.562, 6.64, 3.76, 3.616, 'N1+N2', 'AGREE'],
  [4, 6.125, 5.925, 7.073, 4.014, 3.862, 'N1+N2', 'AGREE'],
];
