import { findNut, NUT_SERIES, type Nut } from '../bolting/nut.ts';
import { findThread, type Thread } from '../bolting/thread.ts';
import { showQuantity } from '../text/number.ts';
import { BOLT_STRENGTHS, type BoltStrengthRow } from './bolt-strength.ts';
import { hubDiameter, raisedFaceDiameter, raisedFaceHeight, ringJoint } from './faces.ts';
import { FLANGE_STANDARDS, type FlangeRow, findFlange } from './flanges.ts';
import {
  FACTOR_TABLE,
  FLAT_TABLES,
  gasketDimensions,
  gasketFactors,
  RING_TABLE,
  ringGasket,
  ringOfFlange,
  SPIRAL_TABLE,
} from './gaskets.ts';
import { proofCells } from './nut-proof.ts';
import { ratingCells } from './ratings.ts';
import { needsConfirmation, statusText } from './status.ts';
import type { TableCell, TableValue } from './table-value.ts';
import { temperatureCells } from './temperature.ts';

type Cells = readonly TableCell[];

const FLAT: Readonly<Record<string, string>> = FLAT_TABLES;

/**
 * Cells of a flange row that a joint can take.
 *
 * @param row row of a flange table
 * @returns its printed values; open ones are left out
 * @example flangeCells(findFlange('ASME B16.5', '8', '300'))[0]?.value // '12'
 * @source the tables of `core/reference`
 */
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

/**
 * Cells of a flange that belong to its facing and hub.
 *
 * @param row row of a flange table
 * @returns printed values; open ones are left out
 * @example faceCells(findFlange('ASME B16.5', '8', '300')).at(-1)?.value // 'R49'
 * @source the tables of `core/reference`
 */
export function faceCells({ standard, size, rating }: FlangeRow): Cells {
  const ring = standard === 'ASME B16.5' ? ringOfFlange(size, rating) : null;
  const joint = standard === 'ASME B16.5' ? ringJoint(size, rating) : null;
  return [
    ...valueCells([
      hubDiameter(standard, size, rating),
      raisedFaceDiameter(standard, size, rating),
      raisedFaceHeight(standard, size, rating),
      joint?.studLength ?? null,
      joint?.standOff ?? null,
    ]),
    ...cell(standard, `${size} | ${rating}`, 'ring', 'ring number', ring?.number ?? null),
  ];
}

function valueCells(values: readonly (TableValue | null)[]): Cells {
  return values.flatMap((one) => (one === null ? [] : (one.cells ?? tableCell(one) ?? [])));
}

function tableCell({ cell: place, value }: TableValue): TableCell | null {
  if (place === null) return null;
  const { table, key, field, name, unit } = place;
  return { table, key, field, name, value: showQuantity(value, unit, 6) };
}

/**
 * Cells that a person should confirm before a value that rests on them is relied on.
 *
 * @param values values of shipped tables
 * @returns cells of those with one source only, else of those whose sources disagree; undefined where sources agree on
 * all
 * @example cellsToConfirm([gasketDimensions('spiral wound', 'ASME B16.5', '8', '150').outside])?.[0]?.value // '263.7 mm'
 * @source rule of this program
 */
export function cellsToConfirm(values: readonly TableValue[]): Cells | undefined {
  const doubtful = values.filter(({ status }) => statusText(status) !== null);
  if (doubtful.length === 0) return;
  const waiting = doubtful.filter(({ status }) => needsConfirmation(status));
  const cells = valueCells(waiting.length > 0 ? waiting : doubtful);
  return cells.length === 0 ? undefined : cells;
}

function gasketCells(table: string, key: string): Cells {
  if (table === FACTOR_TABLE) {
    const factors = gasketFactors(key);
    return factors === null ? [] : valueCells([factors.factor, factors.seating]);
  }
  if (table === RING_TABLE) {
    const ring = ringGasket(key);
    return ring === null
      ? []
      : valueCells([
          ring.pitchDiameter,
          ring.width,
          ring.ovalHeight,
          ring.octagonalHeight,
          ring.grooveDepth,
          ring.grooveWidth,
        ]);
  }
  const [size = '', rating = ''] = key.split(' | ');
  const standard = FLANGE_STANDARDS.find(
    (name) => (table === SPIRAL_TABLE && name === 'ASME B16.5') || FLAT[name] === table,
  );
  if (standard === undefined) return [];
  const gasket = gasketDimensions(table === SPIRAL_TABLE ? 'spiral wound' : 'flat', standard, size, rating);
  return gasket === null
    ? []
    : valueCells([gasket.inside, gasket.outside, gasket.innerRingInside, gasket.centringRingOutside]);
}

/**
 * Cells of a strength row.
 *
 * @param row row of a strength table
 * @returns yield and tensile strength as printed
 * @example strengthCells(findStrength('ASTM A193 B7', thread))[0]?.value // '105 ksi'
 * @source the tables of `core/reference`
 */
export function strengthCells(row: BoltStrengthRow): Cells {
  const key = `${row.grade} | ${row.system} | over ${row.over} to ${row.upTo} mm`;
  return [
    ...cell(row.source, key, 'yield', 'yield strength', row.yield.join(' ')),
    ...cell(row.source, key, 'tensile', 'tensile strength', row.tensile.join(' ')),
  ];
}

/**
 * Cells of a nut of a series.
 *
 * @param nut nut as found
 * @param thread thread it goes with, which names the row
 * @returns its width across flats
 * @example nutCells(nut, thread)[0]?.field // 'acrossFlats'
 * @source the tables of `core/reference`
 */
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
    return row === null ? [] : [...flangeCells(row), ...faceCells(row)].filter((one) => one.key === key);
  }
  const series = NUT_SERIES.find((name) => name === table);
  if (series !== undefined) {
    const thread = findThread(key);
    const nut = thread === null ? null : findNut(series, thread);
    return nut === null || thread === null ? [] : nutCells(nut, thread).filter((one) => one.key === key);
  }
  const cells = [
    ...BOLT_STRENGTHS.flatMap(strengthCells),
    ...gasketCells(table, key),
    ...temperatureCells(),
    ...ratingCells(),
    ...proofCells(),
  ];
  return cells.filter((one) => one.table === table && one.key === key);
}

function cell(table: string, key: string, field: string, name: string, value: string | null): TableCell[] {
  return value === null ? [] : [{ table, key, field, name, value }];
}

function millimetres(length: number | null): string | null {
  return length === null ? null : showQuantity(length, 'mm', 6);
}
