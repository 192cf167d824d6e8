import type { RowStatus } from './status.ts';

/**
 * Friction classes of VDI 2230-1, table A5: guide values for thread and bearing face at room temperature, not for one
 * lubricant or bolt. An open upper end is null.
 */
export type FrictionClassRow = readonly [
  class_: 'A' | 'B' | 'C' | 'D' | 'E',
  lubricant: string,
  surface: string,
  min: number,
  max: number | null,
  sources: string,
  status: RowStatus,
];

export const VDI_2230_FRICTION: readonly FrictionClassRow[] = [
  [
    'A',
    'solid lubricant (MoS2, graphite, PTFE, PA, PE, PI) in lubricating varnish, top coat or paste; molten wax; wax dispersion',
    'bare steel; black (blued); phosphated; electroplated Zn, Zn/Fe, Zn/Ni; zinc flake',
    0.04,
    0.1,
    'B1+B2+B3',
    'AGREE',
  ],
  [
    'B',
    'solid lubricant (MoS2, graphite, PTFE, PA, PE, PI) in lubricating varnish, top coat or paste; molten wax; wax dispersion; grease; oil; as-delivered',
    'bare steel; black; phosphated; electroplated Zn, Zn/Fe, Zn/Ni; zinc flake; Al and Mg alloys',
    0.08,
    0.16,
    'B1+B2+B3',
    'AGREE',
  ],
  ['B', 'MoS2; graphite; wax dispersion', 'hot-dip galvanised', 0.08, 0.16, 'B1+B2+B3', 'AGREE'],
  ['B', 'integrated solid lubricant or wax dispersion', 'organic coating', 0.08, 0.16, 'B1+B2+B3', 'AGREE'],
  ['B', 'solid lubricant or wax; paste', 'austenitic stainless', 0.08, 0.16, 'B1+B2+B3', 'AGREE'],
  ['C', 'wax dispersion; paste', 'austenitic stainless', 0.14, 0.24, 'B1+B2+B3', 'AGREE'],
  ['C', 'as-delivered, lightly oiled', 'bare steel; phosphated', 0.14, 0.24, 'B1+B2+B3', 'AGREE'],
  ['C', 'none', 'electroplated Zn, Zn/Fe, Zn/Ni; zinc flake', 0.14, 0.24, 'B1+B2+B3', 'AGREE'],
  ['D', 'oil', 'austenitic stainless', 0.2, 0.35, 'B1+B2+B3', 'AGREE'],
  ['D', 'none', 'electroplated Zn, Zn/Fe; hot-dip galvanised', 0.2, 0.35, 'B1+B2+B3', 'AGREE'],
  [
    'E',
    'none',
    'electroplated Zn/Fe, Zn/Ni; austenitic stainless; Al and Mg alloys',
    0.3,
    null,
    'B1+B2+B3',
    'AGREE',
  ],
];
