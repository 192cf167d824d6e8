import type { MetricNutRow } from './metric-nut.ts';

/**
 * Heavy hex nuts, metric (ASME B18.2.4.6M; edition not stated by the sources). Across flats agree in two sources;
 * heights rest on one source throughout, and from M39 up they equal the diameter, so they are approximate.
 */
export const HEAVY_HEX_METRIC: readonly MetricNutRow[] = [
  [12, 21, null, 12.3, null, 'Y1+Y2', 'AGREE'],
  [14, 24, null, 14.3, null, 'Y1+Y2', 'AGREE'],
  [16, 27, null, 17.1, null, 'Y1+Y2', 'AGREE'],
  [18, 30, null, 18.9, null, 'Y1', 'SINGLE'],
  [20, 34, null, 20.7, null, 'Y1+Y2', 'AGREE'],
  [22, 36, null, 23.6, null, 'Y1+Y2', 'AGREE'],
  [24, 41, null, 24.2, null, 'Y1+Y2', 'AGREE'],
  [27, 46, null, 27.5, null, 'Y1+Y2', 'AGREE'],
  [30, 50, null, 30.7, null, 'Y1+Y2', 'AGREE'],
  [33, 55, null, 33.6, null, 'Y1', 'SINGLE'],
  [36, 60, null, 36.6, null, 'Y1+Y2', 'AGREE'],
  [39, 65, null, 39, null, 'Y1', 'SINGLE'],
  [42, 70, null, 42, null, 'Y1+Y2', 'AGREE'],
  [45, 75, null, 45, null, 'Y1', 'SINGLE'],
  [48, 80, null, 48, null, 'Y1+Y2', 'AGREE'],
  [52, 85, null, 52, null, 'Y1', 'SINGLE'],
  [56, 90, null, 56, null, 'Y1+Y2', 'AGREE'],
  [64, 100, null, 64, null, 'Y1+Y2', 'AGREE'],
];
