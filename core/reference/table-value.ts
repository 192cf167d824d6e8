import type { Unit } from '../units/units.ts';
import { leastTrusted, type RowStatus } from './status.ts';

/** Where a value stands in the shipped tables, and how a person reads it there. */
export interface CellPlace {
  readonly table: string;
  readonly key: string;
  readonly field: string;
  readonly name: string;
  readonly unit: Unit;
}

/** One value of a table, SI, with what a person has to know about it. */
export interface TableValue {
  readonly value: number;
  /** Standard, edition and row. */
  readonly source: string;
  /** Ids of `sources.ts` that print it. */
  readonly sources: string;
  readonly status: RowStatus;
  readonly note: string;
  /** Null for a value between two rows: only what is printed can be confirmed. */
  readonly cell: CellPlace | null;
}

/** A point of a column over temperature; null where sources left it open. */
export interface Point {
  readonly at: number;
  readonly value: number | null;
  readonly sources: string;
  readonly status: RowStatus;
}

/**
 * A column's value between its points. An open point parts the column: nothing is drawn across it, and nothing beyond
 * the ends.
 *
 * Equation: y = y1 + (y2 − y1)·(x − x1)/(x2 − x1).
 * @param points column in rising order
 * @param at where to read it, any, in the unit of the column
 * @returns value with the trust of the less trusted neighbour, or null outside the column or beside an open point
 * @example interpolated([{ at: 0, value: 10, sources: '', status: 'AGREE' }, { at: 10, value: 20, sources: '', status: 'AGREE' }], 5)?.value // 15
 * @source linear interpolation
 */
export function interpolated(
  points: readonly Point[],
  at: number,
): Pick<TableValue, 'value' | 'sources' | 'status'> | null {
  const upperIndex = points.findIndex((point) => point.at >= at);
  const upper = points[upperIndex];
  if (upper === undefined) return null;
  if (upper.at === at) return upper.value === null ? null : { ...upper, value: upper.value };
  const lower = points[upperIndex - 1];
  if (lower === undefined || lower.value === null || upper.value === null) return null;
  const share = (at - lower.at) / (upper.at - lower.at);
  return {
    value: lower.value + (upper.value - lower.value) * share,
    sources: lower.sources === upper.sources ? lower.sources : `${lower.sources}; ${upper.sources}`,
    status: leastTrusted(lower.status, upper.status),
  };
}
