import { findNut, type NutSeries } from '../../core/bolting/nut.ts';
import { findThread } from '../../core/bolting/thread.ts';
import { DIN_934 } from '../../core/reference/din-934.ts';
import { ISO_4032 } from '../../core/reference/iso-4032.ts';
import type { MetricNutRow } from '../../core/reference/metric-nut.ts';
import { type Loose, rowsOf, type TruthRow } from './row.ts';

const MM = 0.001;

/** Size; printed across flats, least across flats and greatest height, mm; empty where not printed. */
const ISO_4032_PRINTED: readonly (readonly [string, string, string, string])[] = [
  ['M5', '8.0', '7.78', '4.7'],
  ['M6', '10.0', '9.78', '5.2'],
  ['M8', '13.0', '12.73', '6.8'],
  ['M10', '16.0', '15.73', '8.4'],
  ['M12', '18.0', '17.73', '10.8'],
  ['M14', '21.0', '20.67', '12.8'],
  ['M16', '24.0', '23.67', '14.8'],
  ['M20', '30.0', '29.16', '18.0'],
  ['M24', '36.0', '35.00', '21.5'],
  ['M30', '46.0', '45.00', '25.6'],
  ['M36', '55.0', '53.80', '31.0'],
  ['M42', '65.0', '63.10', '34.0'],
  ['M48', '75.0', '73.10', '38.0'],
  ['M56', '85.0', '', '45.0'],
  ['M64', '95.0', '92.80', '51.0'],
];

/** Size and printed across flats, mm. */
const DIN_934_PRINTED: readonly (readonly [string, string])[] = [
  ['M5', '8'],
  ['M6', '10'],
  ['M8', '13'],
  ['M10', '17'],
  ['M12', '19'],
  ['M14', '22'],
  ['M16', '24'],
  ['M18', '27'],
  ['M20', '30'],
  ['M22', '32'],
  ['M24', '36'],
  ['M27', '41'],
  ['M30', '46'],
  ['M36', '55'],
  ['M42', '65'],
  ['M48', '75'],
  ['M56', '85'],
  ['M64', '95'],
];

const NOMINAL: Loose = { tolerance: 1e-9, why: 'a limit of size; the last bits of mm to m and back' };

const nut = (series: NutSeries, size: string) => {
  const thread = findThread(size);
  return thread === null ? null : findNut(series, thread);
};
const rowFor = (table: readonly MetricNutRow[], size: string) =>
  table.find(([diameter]) => diameter === Number(size.slice(1)));
const shippedFrom = (table: readonly MetricNutRow[], size: string) => () => rowFor(table, size)?.[5] ?? '';

const iso = rowsOf('iso-4032', 'published table cell');
const din = rowsOf('din-934', 'published table cell');

export const NUT_TABLE_ROWS: readonly TruthRow[] = [
  ...ISO_4032_PRINTED.flatMap(([size, flats, least, height]) =>
    [
      iso(
        'data table',
        `across flats of ${size}, ISO 4032, mm`,
        flats,
        () => (nut('ISO 4032', size)?.acrossFlats ?? Number.NaN) / MM,
        NOMINAL,
      ),
      ...(least === ''
        ? []
        : [
            iso(
              'data table',
              `least across flats of ${size}, ISO 4032, mm`,
              least,
              () => rowFor(ISO_4032, size)?.[2] ?? Number.NaN,
              NOMINAL,
            ),
          ]),
      iso(
        'data table',
        `greatest height of ${size}, ISO 4032, mm`,
        height,
        () => (nut('ISO 4032', size)?.height ?? Number.NaN) / MM,
        NOMINAL,
      ),
    ].map((row) => ({ ...row, shippedFrom: shippedFrom(ISO_4032, size) })),
  ),
  ...DIN_934_PRINTED.map(([size, flats]) => ({
    ...din(
      'table of metric threads',
      `across flats of ${size}, DIN 934, mm`,
      flats,
      () => (nut('DIN 934', size)?.acrossFlats ?? Number.NaN) / MM,
      NOMINAL,
    ),
    shippedFrom: shippedFrom(DIN_934, size),
  })),
];
