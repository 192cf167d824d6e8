import type { RowStatus } from './status.ts';

/** Largest pressure of a flange at a temperature; in bar and °C or in psi and °F, as the table's name says. */
export type RatingRow = readonly [
  group: string,
  class_: number,
  temperature: number,
  pressure: number | null,
  sources: string,
  status: RowStatus,
];
