import type { RowStatus } from './status.ts';

/** Row of a metric hexagon nut table. */
export type MetricNutRow = readonly [
  diameterMm: number,
  acrossFlatsMaxMm: number,
  acrossFlatsMinMm: number | null,
  heightMaxMm: number | null,
  bearingDiameterMinMm: number | null,
  sources: string,
  status: RowStatus,
];
