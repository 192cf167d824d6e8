import { toSI } from '../units/units.ts';
import { ASME_B16_20_RINGS, RINGS_OF_FLANGES, type RingRow } from './asme-b16-20-rings.ts';
import { ASME_B16_20_SPIRAL, type SpiralWoundRow } from './asme-b16-20-spiral.ts';
import { ASME_B16_21, ASME_B16_21_NOTES, type FlatRingRow } from './asme-b16-21.ts';
import { GASKET_FACTOR_NOTES, GASKET_FACTORS, type GasketFactorRow } from './asme-viii-1-appendix-2.ts';
import { rowsBySize, type SizedRow } from './by-size.ts';
import { BS_4865_1, EN_1514_1_COMPUTED, type FlatGasketEnRow } from './en-1514-1.ts';
import type { FlangeStandard } from './flanges.ts';
import { oncePer } from './once-per.ts';
import { plainRating, plainSize } from './size-names.ts';
import type { TableValue } from './table-value.ts';

const MM = 0.001;

/** A standard gasket of a flange, SI; the sealing element where it is spiral wound. */
export interface GasketDimensions {
  readonly inside: TableValue | null;
  readonly outside: TableValue;
  /** Rings of a spiral-wound gasket, m. */
  readonly innerRingInside: TableValue | null;
  readonly centringRingOutside: TableValue | null;
}

type Provenance = Omit<TableValue, 'value' | 'cell'>;

/** A row's provenance with its place, so that each of its values knows its own cell. */
interface Row extends Provenance {
  readonly table: string;
  readonly key: string;
}

function length(millimetres: number, field: string, name: string, { table, key, ...from }: Row): TableValue {
  return { value: millimetres * MM, ...from, cell: { table, key, field, name, unit: 'mm' } };
}

function maybe(millimetres: number | null, field: string, name: string, from: Row): TableValue | null {
  return millimetres === null ? null : length(millimetres, field, name, from);
}

export const SPIRAL_TABLE = 'ASME B16.20, spiral wound';
export const RING_TABLE = 'ASME B16.20, ring joint';
export const FACTOR_TABLE = 'ASME BPVC VIII-1, table 2-5.1';
export const FLAT_TABLES = {
  'ASME B16.5': 'ASME B16.21, for ASME B16.5',
  'ASME B16.47 A': 'ASME B16.21, for ASME B16.47 A',
  'EN 1092-1': 'EN 1514-1',
} as const;

/**
 * Dimensions of the standard gasket of a raised-face flange.
 *
 * @param kind spiral wound (ASME B16.20), or flat inside the bolts (ASME B16.21, EN 1514-1)
 * @param standard flange standard
 * @param size NPS or DN
 * @param rating class or PN
 * @returns dimensions, m, each with its own source; null where no table has the gasket (spiral wound for EN 1092-1 and
 * ASME B16.47, flat above class 900 and for series B)
 * @example gasketDimensions('spiral wound', 'ASME B16.5', '8', '300')?.outside.value // 0.2637
 * @source ASME B16.20-2017; ASME B16.21; BS 4865-1:1989 and its rule for EN 1514-1 (second-hand)
 */
export function gasketDimensions(
  kind: 'spiral wound' | 'flat',
  standard: FlangeStandard,
  size: string,
  rating: string,
): GasketDimensions | null {
  const wanted = plainSize(size);
  const class_ = Number(plainRating(rating));
  if (kind === 'spiral wound') return standard === 'ASME B16.5' ? spiralWound(wanted, class_) : null;
  return standard === 'EN 1092-1' ? flatEn(Number(wanted), class_) : flatRing(standard, wanted, class_);
}

function spiralWound(nps: string, class_: number): GasketDimensions | null {
  const row = ASME_B16_20_SPIRAL.find((one) => one[0] === class_ && one[1] === nps);
  return row === undefined ? null : OF_SPIRAL_ROW(row);
}

const OF_SPIRAL_ROW = oncePer((row: SpiralWoundRow): GasketDimensions => {
  const [class_, nps, inner, inside, outside, centring, sources, status] = row;
  const from = {
    table: SPIRAL_TABLE,
    key: `${nps} | ${class_}`,
    source: `ASME B16.20, spiral wound, NPS ${nps} Class ${class_}`,
    sources,
    status,
    note: '',
  };
  return {
    inside: length(inside, 'inside', 'inside of the sealing element', from),
    outside: length(outside, 'outside', 'outside of the sealing element', from),
    innerRingInside: maybe(inner, 'innerRing', 'inside of the inner ring', from),
    centringRingOutside: length(centring, 'centringRing', 'outside of the centring ring', from),
  };
});

function flatRing(standard: FlangeStandard, nps: string, class_: number): GasketDimensions | null {
  if (standard !== 'ASME B16.5' && standard !== 'ASME B16.47 A') return null;
  const row = ASME_B16_21.find((one) => standard === `ASME ${one[0]}` && one[1] === class_ && one[2] === nps);
  return row === undefined ? null : OF_FLAT_ROW(row);
}

const OF_FLAT_ROW = oncePer((row: FlatRingRow): GasketDimensions => {
  const [flange, class_, nps, inside, outside, sources, status] = row;
  const standard = `ASME ${flange}` as const;
  const from = {
    table: FLAT_TABLES[standard],
    key: `${nps} | ${class_}`,
    source: `ASME B16.21, flat ring for ${standard}, NPS ${nps} Class ${class_}`,
    sources,
    status,
    note: ASME_B16_21_NOTES[`${flange}|${class_}|${nps}`] ?? '',
  };
  return {
    inside: length(inside, 'inside', 'inside diameter', from),
    outside: length(outside, 'outside', 'outside diameter', from),
    innerRingInside: null,
    centringRingOutside: null,
  };
});

function flatEn(dn: number, pn: number): GasketDimensions | null {
  const is = (row: FlatGasketEnRow) => row[0] === pn && row[1] === dn;
  const printed = BS_4865_1.find(is);
  if (printed !== undefined) return OF_PRINTED_EN_ROW(printed);
  const computed = EN_1514_1_COMPUTED.find(is);
  return computed === undefined ? null : OF_COMPUTED_EN_ROW(computed);
}

const OF_PRINTED_EN_ROW = oncePer((row: FlatGasketEnRow) => ofEnRow(row, 'BS 4865-1:1989'));
const OF_COMPUTED_EN_ROW = oncePer((row: FlatGasketEnRow) =>
  ofEnRow(row, 'EN 1514-1 by the rule of BS 4865-1'),
);

function ofEnRow(
  [pn, dn, inside, outside, sources, status]: FlatGasketEnRow,
  table: string,
): GasketDimensions {
  const from = {
    table: FLAT_TABLES['EN 1092-1'],
    key: `${dn} | ${pn}`,
    source: `${table}, inside the bolts, PN ${pn} DN ${dn}`,
    sources,
    status,
    note: '',
  };
  return {
    inside: maybe(inside, 'inside', 'inside diameter', from),
    outside: length(outside, 'outside', 'outside diameter', from),
    innerRingInside: null,
    centringRingOutside: null,
  };
}

/** A ring-joint gasket, SI. */
export interface RingGasket {
  readonly number: string;
  readonly pitchDiameter: TableValue;
  readonly width: TableValue;
  readonly ovalHeight: TableValue | null;
  readonly octagonalHeight: TableValue | null;
  readonly grooveDepth: TableValue | null;
  readonly grooveWidth: TableValue | null;
}

/**
 * Dimensions of a ring-joint gasket, type R.
 *
 * @param number ring number; "R49", "R-49" and "49" are the same
 * @returns dimensions, m; null for a number the table doesn't have
 * @example ringGasket('R49')?.pitchDiameter.value // 0.26988
 * @source ASME B16.20 (second-hand)
 */
export function ringGasket(number: string): RingGasket | null {
  const name = `R${number.trim().replace(/^R\s*-?\s*/i, '')}`;
  const row = ASME_B16_20_RINGS.find(([one]) => one === name);
  return row === undefined ? null : OF_RING_ROW(row);
}

const OF_RING_ROW = oncePer((row: RingRow): RingGasket => {
  const [name, pitch, width, oval, octagonal, depth, groove, sources, status] = row;
  const from = {
    table: RING_TABLE,
    key: name,
    source: `ASME B16.20, ring ${name}`,
    sources,
    status,
    note: '',
  };
  return {
    number: name,
    pitchDiameter: length(pitch, 'pitchDiameter', 'pitch diameter', from),
    width: length(width, 'width', 'width of the ring', from),
    ovalHeight: maybe(oval, 'ovalHeight', 'height, oval', from),
    octagonalHeight: maybe(octagonal, 'octagonalHeight', 'height, octagonal', from),
    grooveDepth: maybe(depth, 'grooveDepth', 'depth of the groove', from),
    grooveWidth: maybe(groove, 'grooveWidth', 'width of the groove', from),
  };
});

/** Number of a flange's ring, with the trust of that assignment. */
export interface RingNumber extends Provenance {
  readonly number: string;
}

/**
 * Ring number of an ASME B16.5 flange with ring-joint facing.
 *
 * @param size NPS
 * @param rating class
 * @returns ring number; null where no source assigns one (class 400, and single sizes elsewhere)
 * @example ringOfFlange('8', '300')?.number // 'R49'
 * @source ASME B16.5, ASME B16.20 (second-hand)
 */
export function ringOfFlange(size: string, rating: string): RingNumber | null {
  return RING_NUMBER('ASME B16.5', size, rating);
}

const RING_NUMBER = rowsBySize(
  RINGS_OF_FLANGES.map(([class_, nps, number, sources, status]): SizedRow<RingNumber> => {
    const source = `ASME B16.5, ring of NPS ${nps} Class ${class_}`;
    return ['ASME B16.5', nps, String(class_), { number, source, sources, status, note: '' }];
  }),
);

/** m and y of the design code. */
export interface GasketFactors {
  readonly name: string;
  /** m, 1 */
  readonly factor: TableValue;
  /** y, Pa */
  readonly seating: TableValue;
}

function factorName(type: string, material: string): string {
  return material === '' ? type : `${type}, ${material}`;
}

/** Gaskets that m and y are held for, as the lookup takes them. */
export const GASKET_FACTOR_NAMES: readonly string[] = GASKET_FACTORS.filter(([, , m]) => m !== null).map(
  ([type, material]) => factorName(type, material),
);

/**
 * Gasket factor m and seating stress y of the design code: non-mandatory design values for its minimum loads, never
 * assembly stresses.
 *
 * @param name type and material exactly as `GASKET_FACTOR_NAMES` has them; nothing is guessed from another wording
 * @returns m, 1, and y, Pa; null for a name the table doesn't have
 * @example gasketFactors('solid flat metal, stainless')?.factor.value // 6.5
 * @source ASME BPVC VIII-1, Appendix 2, table 2-5.1 (second-hand)
 */
export function gasketFactors(name: string): GasketFactors | null {
  const row = FACTOR_ROWS.get(name.trim().toLowerCase());
  return row === undefined ? null : OF_FACTOR_ROW(row);
}

// Turned round, so that of two rows of one name the first stands.
const FACTOR_ROWS = new Map(
  GASKET_FACTORS.toReversed().map((row) => [factorName(row[0], row[1]).toLowerCase(), row]),
);

const OF_FACTOR_ROW = oncePer((row: GasketFactorRow): GasketFactors | null => {
  const [type, material, m, yPsi, sources, status] = row;
  if (m === null || yPsi === null) return null;
  const from: Provenance = {
    source: `${FACTOR_TABLE}, ${factorName(type, material)}`,
    sources,
    status,
    note: GASKET_FACTOR_NOTES[`${type}|${material}`] ?? '',
  };
  const key = factorName(type, material);
  return {
    name: key,
    factor: {
      value: m,
      ...from,
      cell: { table: FACTOR_TABLE, key, field: 'm', name: 'factor m', unit: 'one' },
    },
    seating: {
      value: toSI(yPsi, 'psi'),
      ...from,
      cell: { table: FACTOR_TABLE, key, field: 'y', name: 'seating stress y', unit: 'psi' },
    },
  };
});
