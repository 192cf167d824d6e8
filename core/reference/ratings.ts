import { showQuantity } from '../text/number.ts';
import { fromSI, toSI } from '../units/units.ts';
import { RATINGS_1_1_INCH, RATINGS_1_1_METRIC } from './asme-b16-5-ratings-1-1.ts';
import { RATINGS_1_2_INCH, RATINGS_1_2_METRIC } from './asme-b16-5-ratings-1-2.ts';
import { RATINGS_1_9_METRIC } from './asme-b16-5-ratings-1-9.ts';
import { RATINGS_2_1_METRIC } from './asme-b16-5-ratings-2-1.ts';
import { RATINGS_2_2_METRIC, RATINGS_2_3_METRIC } from './asme-b16-5-ratings-2-2.ts';
import { RATINGS_BEFORE_2003 } from './asme-b16-5-ratings-before-2003.ts';
import type { RatingRow } from './rating-row.ts';
import { plainRating } from './size-names.ts';
import { doubtfulPoints, interpolated, type TableCell, type TableValue } from './table-value.ts';

/** Two editions circulate under each other's name; they are never mixed. */
export type RatingEdition = '2003 and later' | 'before 2003';

interface RatingTable {
  readonly edition: RatingEdition;
  readonly rows: readonly RatingRow[];
  readonly temperature: 'degC' | 'degF';
  readonly pressure: 'bar' | 'psi';
  /** Lowest temperature the first row holds for: the tables head it "−29 to 38 °C", "−20 to 100 °F". */
  readonly from: number;
}

const metric = (rows: readonly RatingRow[]): RatingTable => ({
  edition: '2003 and later',
  rows,
  temperature: 'degC',
  pressure: 'bar',
  from: -29,
});

const inch = (edition: RatingEdition, rows: readonly RatingRow[]): RatingTable => ({
  edition,
  rows,
  temperature: 'degF',
  pressure: 'psi',
  from: -20,
});

/** Metric tables first: an inch table is read only where no metric row reaches. */
const TABLES: readonly RatingTable[] = [
  metric(RATINGS_1_1_METRIC),
  metric(RATINGS_1_2_METRIC),
  metric(RATINGS_1_9_METRIC),
  metric(RATINGS_2_1_METRIC),
  metric(RATINGS_2_2_METRIC),
  metric(RATINGS_2_3_METRIC),
  inch('2003 and later', RATINGS_1_1_INCH),
  inch('2003 and later', RATINGS_1_2_INCH),
  inch('before 2003', RATINGS_BEFORE_2003),
];

/** Material groups a rating is held for. */
export const RATING_GROUPS: readonly string[] = [
  ...new Set(TABLES.flatMap(({ rows }) => rows.map(([group]) => group))),
].sort();

/**
 * Largest pressure of an ASME B16.5 flange at a temperature.
 *
 * Equation: linear in temperature between two rows; never between classes, never across an open cell.
 * @param group material group as the standard numbers it: "1.1"; others than `RATING_GROUPS` are not known
 * @param rating class, "300" or 300
 * @param temperature °C, any; known from −29 to the table's last row
 * @param edition thickness and ratings changed in 2003: an old paper is compared with its own table
 * @returns gauge pressure, Pa; null for a group, class or temperature no table has, NaN included
 * @example ratingAt('1.1', '300', 200)?.value // 4380000
 * @source ASME B16.5, 2003 and later, tables 2-1.1 to 2-2.3 (second-hand); range of the first row and interpolation from
 * memory
 */
export function ratingAt(
  group: string,
  rating: string | number,
  temperature: number,
  edition: RatingEdition = '2003 and later',
): TableValue | null {
  const class_ = Number(plainRating(String(rating)));
  for (const table of TABLES) {
    if (table.edition !== edition) continue;
    const found = readTable(table, group.trim(), class_, temperature);
    if (found !== null) return found;
  }
  return null;
}

function cellOf(
  { edition, temperature, pressure }: RatingTable,
  group: string,
  class_: number,
  { at, value }: { readonly at: number; readonly value: number },
): TableCell {
  const degrees = `${at} ${temperature === 'degC' ? '°C' : '°F'}`;
  return {
    table: `ASME B16.5, ${edition}, ratings`,
    key: `${group} | ${class_} | ${degrees}`,
    field: 'rating',
    name: `rating at ${degrees}`,
    value: showQuantity(toSI(value, pressure), pressure, 6),
  };
}

/**
 * Every printed rating as a person can look it up.
 *
 * @returns cells of all groups, classes and temperatures
 * @example ratingCells()[0]?.table // 'ASME B16.5, 2003 and later, ratings'
 * @source the tables of `core/reference`
 */
export function ratingCells(): readonly TableCell[] {
  return TABLES.flatMap((table) =>
    table.rows.flatMap(([group, class_, at, value]) =>
      value === null ? [] : [cellOf(table, group, class_, { at, value })],
    ),
  );
}

function readTable(table: RatingTable, group: string, class_: number, celsius: number): TableValue | null {
  const points = table.rows
    .filter((row) => row[0] === group && row[1] === class_)
    .map(([, , at, value, sources, status]) => ({ at, value, sources, status }));
  const [first] = points;
  const at = fromSI(celsius, table.temperature);
  if (first === undefined || !(at >= table.from)) return null;
  const found = interpolated(points, Math.max(at, first.at));
  if (found === null) return null;
  const unit = table.temperature === 'degC' ? '°C and bar' : '°F and psi';
  const { value, sources, status, between } = found;
  return {
    sources,
    status,
    value: toSI(value, table.pressure),
    cells: doubtfulPoints(between, (point) => cellOf(table, group, class_, point)),
    source: `ASME B16.5, ${table.edition}, group ${group}, class ${class_}, ${unit}`,
    note: '',
    cell: null,
  };
}
