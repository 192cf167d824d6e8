import type { Unit } from '../units/units.ts';
import { leastTrusted, type RowStatus, statusText } from './status.ts';

/** Where a value stands in the shipped tables, and how a person reads it there. */
export interface CellPlace {
  readonly table: string;
  readonly key: string;
  readonly field: string;
  readonly name: string;
  readonly unit: Unit;
}

/** One value of a shipped table as a person can look it up and confirm it. */
export interface TableCell {
  /** Standard or specification the table carries over. */
  readonly table: string;
  readonly key: string;
  readonly field: string;
  readonly name: string;
  /** The value as the confirmation keeps it: another one in a later table is not confirmed by it. */
  readonly value: string;
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
  /** Null for a value that stands nowhere itself, such as one between two rows. */
  readonly cell: CellPlace | null;
  /** Doubtful printed values behind it, where it stands nowhere itself. */
  readonly cells?: readonly TableCell[];
}

/** A point of a column over temperature; null where sources left it open. */
export interface Point {
  readonly at: number;
  readonly value: number | null;
  readonly sources: string;
  readonly status: RowStatus;
}

/** A point that is printed. */
export type PrintedPoint = Point & { readonly value: number };

/** A column's value with the printed points it lies between; one point where it is printed itself. */
export interface Interpolated extends Pick<TableValue, 'value' | 'sources' | 'status'> {
  readonly between: readonly PrintedPoint[];
}

/**
 * A column's value between its points. An open point parts the column: nothing is drawn across it, and nothing beyond
 * the ends.
 *
 * Equation: y = y1 + (y2 − y1)·(x − x1)/(x2 − x1).
 * @param points column in rising order
 * @param at where to read it, any, in the unit of the column
 * @returns value with the trust of the less trusted neighbour and the points it lies between, or null outside the column
 * or beside an open point
 * @example interpolated([{ at: 0, value: 10, sources: '', status: 'AGREE' }, { at: 10, value: 20, sources: '', status: 'AGREE' }], 5)?.value // 15
 * @source linear interpolation
 */
export function interpolated(points: readonly Point[], at: number): Interpolated | null {
  const upperIndex = points.findIndex((point) => point.at >= at);
  const upper = points[upperIndex];
  if (upper === undefined) return null;
  if (upper.at === at) {
    const { value, sources, status } = upper;
    return value === null ? null : { value, sources, status, between: [{ ...upper, value }] };
  }
  const lower = points[upperIndex - 1];
  if (lower === undefined || lower.value === null || upper.value === null) return null;
  const share = (at - lower.at) / (upper.at - lower.at);
  return {
    value: lower.value + (upper.value - lower.value) * share,
    sources: lower.sources === upper.sources ? lower.sources : `${lower.sources}; ${upper.sources}`,
    status: leastTrusted(lower.status, upper.status),
    between: [
      { ...lower, value: lower.value },
      { ...upper, value: upper.value },
    ],
  };
}

/**
 * Cells of the printed points behind a value, as far as a person should confirm them.
 *
 * @param between points the value lies between
 * @param cellOf how a point is found in its table
 * @returns cells of the doubtful ones
 * @example doubtfulPoints([], () => ({ table: '', key: '', field: '', name: '', value: '' })).length // 0
 * @source rule of this program
 */
export function doubtfulPoints(
  between: readonly PrintedPoint[],
  cellOf: (point: PrintedPoint) => TableCell,
): readonly TableCell[] {
  return between.filter(({ status }) => statusText(status) !== null).map(cellOf);
}
