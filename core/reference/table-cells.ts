import { findNut, NUT_SERIES, type Nut } from '../bolting/nut.ts';
import { findThread, type Thread } from '../bolting/thread.ts';
import { showQuantity } from '../text/number.ts';
import { BOLT_STRENGTHS, type BoltStrengthRow } from './bolt-strength.ts';
import { FLANGE_STANDARDS, type FlangeRow, findFlange } from './flanges.ts';

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

type Cells = readonly TableCell[];

/** Cells of a flange row that a joint can take. */
export function flangeCells(row: FlangeRow): Cells {
  const table = row.standard;
  const key = `${row.size} | ${row.rating}`;
  const stud = row.metricThread ?? (row.studIn === null ? null : `${row.studIn} in`);
  return [
    ...cell(table, key, 'count', 'number of studs', row.bolts === null ? null : String(row.bolts)),
    ...cell(table, key, 'thread', 'stud', stud),
    ...cell(table, key, 'circle', 'bolt circle', millimetres(row.boltCircle)),
    ...cell(table, key, 'studLength', 'stud length', millimetres(row.studLength)),
    ...cell(table, key, 'thickness', 'flange thickness', millimetres(row.thickness)),
  ];
}

/** Cells of a strength row. */
export function strengthCells(row: BoltStrengthRow): Cells {
  const key = `${row.grade} | ${row.system} | over ${row.over} to ${row.upTo} mm`;
  return [
    ...cell(row.source, key, 'yield', 'yield strength', row.yield.join(' ')),
    ...cell(row.source, key, 'tensile', 'tensile strength', row.tensile.join(' ')),
  ];
}

/** Cells of a nut of a series. */
export function nutCells(nut: Nut, thread: Pick<Thread, 'designation'>): Cells {
  const key = thread.designation;
  return cell(nut.series, key, 'acrossFlats', 'width across flats', millimetres(nut.acrossFlats));
}

/**
 * Looks up the cells of a table's row as they stand now.
 *
 * @param table standard or specification
 * @param key row as a cell names it
 * @returns its cells, none when no table has such a row
 * @example tableCells('ASME B16.5', '8 | 300')[0]?.value // '12'
 * @source the tables of `core/reference`
 */
export function tableCells(table: string, key: string): Cells {
  const standard = FLANGE_STANDARDS.find((name) => name === table);
  if (standard !== undefined) {
    const [size = '', rating = ''] = key.split(' | ');
    const row = findFlange(standard, size, rating);
    return row === null ? [] : flangeCells(row).filter((one) => one.key === key);
  }
  const series = NUT_SERIES.find((name) => name === table);
  if (series !== undefined) {
    const thread = findThread(key);
    const nut = thread === null ? null : findNut(series, thread);
    return nut === null || thread === null ? [] : nutCells(nut, thread).filter((one) => one.key === key);
  }
  return BOLT_STRENGTHS.flatMap(strengthCells).filter((one) => one.table === table && one.key === key);
}

function cell(table: string, key: string, field: string, name: string, value: string | null): TableCell[] {
  return value === null ? [] : [{ table, key, field, name, value }];
}

function millimetres(length: number | null): string | null {
  return length === null ? null : showQuantity(length, 'mm', 6);
}
