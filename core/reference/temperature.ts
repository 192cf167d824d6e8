import { showQuantity } from '../text/number.ts';
import type { Unit } from '../units/units.ts';
import { ASME_B31_1_MODULUS } from './asme-b31-1-modulus.ts';
import { ASME_II_D_EXPANSION } from './asme-ii-d-expansion.ts';
import { EN_10269, EN_10269_LARGEST_MM } from './en-10269.ts';
import { plainGrade } from './strengths.ts';
import { doubtfulPoints, interpolated, type Point, type TableCell, type TableValue } from './table-value.ts';

const LOW_ALLOY = 'Cr-Mo steel, 1/2 to 2 % Cr';
const AUSTENITIC = 'austenitic stainless steel';
const CARBON_LOW_ALLOY = 'carbon and low-alloy steel';

/**
 * Materials of the stud grades in the tables over temperature. B7M and L7M are the steels of B7 and L7 (from memory).
 * ISO 898-1 leaves the steel open, and no table was found for A453, A540 and L43: they have no entry.
 */
const GRADES: readonly (readonly [grade: string, modulus: string, expansion: string])[] = [
  ['ASTM A193 B7', LOW_ALLOY, CARBON_LOW_ALLOY],
  ['ASTM A193 B7M', LOW_ALLOY, CARBON_LOW_ALLOY],
  ['ASTM A193 B16', LOW_ALLOY, CARBON_LOW_ALLOY],
  ['ASTM A320 L7', LOW_ALLOY, CARBON_LOW_ALLOY],
  ['ASTM A320 L7M', LOW_ALLOY, CARBON_LOW_ALLOY],
  ['ASTM A193 B8 class 1', AUSTENITIC, AUSTENITIC],
  ['ASTM A193 B8 class 2', AUSTENITIC, AUSTENITIC],
  ['ASTM A193 B8M class 1', AUSTENITIC, AUSTENITIC],
  ['ASTM A193 B8M class 2', AUSTENITIC, AUSTENITIC],
];

/** Flange material groups of ASME B16.5 in the table of expansion (from memory: 1.1 carbon steel, 2.1 to 2.3 austenitic). */
const FLANGE_GROUPS: Readonly<Record<string, string>> = {
  '1.1': CARBON_LOW_ALLOY,
  '2.1': AUSTENITIC,
  '2.2': AUSTENITIC,
  '2.3': AUSTENITIC,
};

/**
 * Modulus of elasticity of a stud grade or material at a temperature.
 *
 * Equation: linear between the table's points.
 * @param material grade, "ASTM A193 B7", or material as the table names it
 * @param temperature metal temperature, °C, −200 to 649
 * @returns E, Pa; null for a material or temperature the table doesn't have, NaN included
 * @example modulusAt('ASTM A193 B7', 21)?.value // 204.8e9
 * @source ASME B31.1-1995 (second-hand)
 */
export function modulusAt(material: string, temperature: number): TableValue | null {
  const name = gradeRow(material)?.[1] ?? material;
  return read(MODULUS_COLUMN, MODULUS.get(plain(name)), name, temperature, `ASME B31.1-1995, ${name}`);
}

/**
 * Mean coefficient of thermal expansion of a stud grade, flange group or material, from 20 °C to a temperature.
 *
 * Equation: linear between the table's points.
 * @param material grade, "ASTM A193 B7"; flange group of ASME B16.5, "1.1"; or material as the table names it
 * @param temperature metal temperature, °C, 20 to 600
 * @returns α, 1/K; null for a material or temperature the table doesn't have, NaN included
 * @example expansionAt('ASTM A193 B8 class 1', 200)?.value // 17.0e-6
 * @source ASME BPVC II-D, table TE-1, groups 1 and 3 (second-hand)
 */
export function expansionAt(material: string, temperature: number): TableValue | null {
  const name = gradeRow(material)?.[2] ?? FLANGE_GROUPS[material.trim()] ?? material;
  return read(
    EXPANSION_COLUMN,
    EXPANSION.get(plain(name)),
    name,
    temperature,
    `ASME BPVC II-D, table TE-1, ${name}, mean from 20 °C`,
  );
}

/**
 * Least yield strength of a bolting steel at a temperature. Known for the stainless steels of EN 10269 only; strength at
 * room temperature is never scaled to stand for it.
 *
 * Equation: linear between the table's points.
 * @param material steel as EN 10269 names it: "EN 10269 X22CrMoV12-1 1.4923 QT1"
 * @param temperature metal temperature, °C, 50 to 550
 * @param diameter nominal diameter of the stud, m, above 0 to 0.16
 * @returns Rp0.2, Pa; null for a steel, temperature or diameter the table doesn't have, NaN included
 * @example yieldAt('EN 10269 X5CrNi18-10 1.4301 AT', 200, 0.024)?.value // 127e6
 * @source EN 10269 (second-hand, one source)
 */
export function yieldAt(material: string, temperature: number, diameter: number): TableValue | null {
  if (!(diameter > 0 && diameter * 1000 <= EN_10269_LARGEST_MM)) return null;
  return read(YIELD_COLUMN, YIELD.get(plain(material)), material, temperature, material.trim());
}

/** A column of the tables: what it holds and how a person finds a value of it. */
interface Column {
  readonly table: string;
  readonly field: string;
  readonly name: string;
  /** Unit of its numbers, SI. */
  readonly scale: number;
  readonly unit: Unit;
}

const MODULUS_COLUMN: Column = {
  table: 'ASME B31.1-1995, modulus',
  field: 'modulus',
  name: 'modulus',
  scale: 1e9,
  unit: 'MPa',
};
const EXPANSION_COLUMN: Column = {
  table: 'ASME BPVC II-D, table TE-1',
  field: 'expansion',
  name: 'mean coefficient of expansion',
  scale: 1e-6,
  unit: 'um/m.K',
};
const YIELD_COLUMN: Column = {
  table: 'EN 10269, strength at temperature',
  field: 'yield',
  name: 'yield strength',
  scale: 1e6,
  unit: 'MPa',
};

function cellOf(
  { table, field, name, scale, unit }: Column,
  material: string,
  { at, value }: { readonly at: number; readonly value: number },
): TableCell {
  const shown = showQuantity(value * scale, unit, 6);
  return { table, key: `${plain(material)} | ${at} °C`, field, name: `${name} at ${at} °C`, value: shown };
}

/**
 * Every printed value of the tables over temperature as a person can look it up.
 *
 * @returns cells of modulus, expansion and strength at temperature
 * @example temperatureCells()[0]?.field // 'modulus'
 * @source the tables of `core/reference`
 */
export function temperatureCells(): readonly TableCell[] {
  return [
    ...ASME_B31_1_MODULUS.map(([material, at, , value]) => cellOf(MODULUS_COLUMN, material, { at, value })),
    ...ASME_II_D_EXPANSION.map(([material, at, value]) => cellOf(EXPANSION_COLUMN, material, { at, value })),
    ...EN_10269.map(([material, at, value]) => cellOf(YIELD_COLUMN, material, { at, value })),
  ];
}

type MaterialPoint = readonly [material: string, point: Point];

const MODULUS = byMaterial(
  ASME_B31_1_MODULUS.map(([material, at, , value, sources, status]) => [
    material,
    { at, value, sources, status },
  ]),
);
const EXPANSION = byMaterial(
  ASME_II_D_EXPANSION.map(([material, at, value, sources, status]) => [
    material,
    { at, value, sources, status },
  ]),
);
const YIELD = byMaterial(
  EN_10269.map(([material, at, value, sources, status]) => [material, { at, value, sources, status }]),
);
const BY_GRADE = new Map(GRADES.flatMap((row) => [row[0], plainGrade(row[0])].map((name) => [name, row])));

function byMaterial(rows: readonly MaterialPoint[]): ReadonlyMap<string, readonly Point[]> {
  const columns = new Map<string, Point[]>();
  for (const [material, point] of rows) {
    columns.set(plain(material), [...(columns.get(plain(material)) ?? []), point]);
  }
  return columns;
}

function gradeRow(grade: string) {
  return BY_GRADE.get(grade) ?? BY_GRADE.get(plainGrade(grade));
}

function plain(material: string): string {
  return material.trim().toLowerCase();
}

function read(
  column: Column,
  points: readonly Point[] | undefined,
  material: string,
  at: number,
  source: string,
): TableValue | null {
  const found = points === undefined ? null : interpolated(points, at);
  if (found === null) return null;
  const { value, sources, status, between } = found;
  const cells = doubtfulPoints(between, (point) => cellOf(column, material, point));
  return { value: value * column.scale, sources, status, source, note: '', cell: null, cells };
}
