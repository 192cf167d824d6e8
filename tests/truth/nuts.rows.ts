import { findNut, heavyHexAcrossFlats } from '../../core/bolting/nut.ts';
import { findThread } from '../../core/bolting/thread.ts';
import { type Loose, row, type TruthRow } from './row.ts';

const INCH = 0.0254;

/** Diameter in inch, printed width across flats in inch: the rule 1.5 D + 1/8 in against the print. */
const HEAVY_HEX: readonly (readonly [number, string])[] = [
  [0.5, '0.875'],
  [0.625, '1.062'],
  [0.75, '1.250'],
  [0.875, '1.438'],
  [1, '1.625'],
  [1.125, '1.812'],
  [1.25, '2.000'],
  [1.375, '2.188'],
  [1.5, '2.375'],
  [1.625, '2.562'],
  [1.75, '2.750'],
  [1.875, '2.938'],
  [2, '3.125'],
  [2.25, '3.500'],
  [2.5, '3.875'],
  [2.75, '4.250'],
  [3, '4.625'],
  [3.25, '5.000'],
  [3.5, '5.375'],
  [3.75, '5.750'],
  [4, '6.125'],
];

const ISO_4032_FROM_MEMORY: readonly (readonly [string, number])[] = [
  ['M8', 13],
  ['M10', 16],
  ['M12', 18],
  ['M14', 21],
  ['M16', 24],
  ['M20', 30],
  ['M22', 34],
  ['M24', 36],
  ['M30', 46],
  ['M36', 55],
  ['M42', 65],
  ['M48', 75],
  ['M56', 85],
  ['M64', 95],
];

function isoFlats(thread: string): () => number {
  return () => {
    const found = findThread(thread);
    return (found === null ? Number.NaN : (findNut('ISO 4032', found)?.acrossFlats ?? Number.NaN)) * 1000;
  };
}

const NOMINAL: Loose = { tolerance: 1e-9, why: 'a nominal size; the last bits of mm to m and back' };

export const NUT_ROWS: readonly TruthRow[] = [
  ...HEAVY_HEX.map(([diameter, printed]) =>
    row(
      'published table cell',
      `across flats of the ${diameter} in heavy hex nut, inch`,
      'asme-b18-2-2',
      'width across flats, basic',
      printed,
      () => heavyHexAcrossFlats(diameter * INCH) / INCH,
    ),
  ),
  row(
    'published table cell',
    'across flats of the M10 hexagon nut, style 1, mm',
    'machinerys-handbook',
    'Table 25, p. 1734, after ASME B18.2.4.1M',
    '16',
    isoFlats('M10'),
    NOMINAL,
  ),
  ...ISO_4032_FROM_MEMORY.map(([thread, flats]) =>
    row(
      'from memory',
      `across flats of the ${thread} nut, ISO 4032, mm`,
      'iso-4032',
      'across flats, from memory',
      String(flats),
      isoFlats(thread),
      NOMINAL,
    ),
  ),
];
