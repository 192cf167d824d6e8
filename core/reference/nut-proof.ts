import type { NutSeries } from '../bolting/nut.ts';
import type { Thread } from '../bolting/thread.ts';
import { toSI } from '../units/units.ts';
import { ASTM_A194, ASTM_A194_NOTES } from './astm-a194.ts';
import { METRIC_THREADS } from './iso-261.ts';
import { ISO_898_2 } from './iso-898-2.ts';
import { statusText } from './status.ts';
import type { TableCell, TableValue } from './table-value.ts';

/** Nut standards a proof stress is asked for; ISO 4033 is the high nut, style 2. */
export type ProofSeries = NutSeries | 'ISO 4033';

const A194 = /^(?:ASTM\s+)?A194(?:\/A194M)?\s+(?:GR(?:ADE)?\.?\s*)?(.+)$/i;
const ISO = /^(?:ISO 898-2\s+)?(?:class\s+)?(\d{1,2})$/i;

/**
 * Proof stress of a nut on the tensile area of its stud.
 *
 * Equation: ISO 898-2: Sp = Fproof/As, coarse threads; ASTM A194: as printed.
 * @param grade "ASTM A194 2H", or a property class: "ISO 898-2 8", "8"
 * @param thread thread of the stud
 * @param series standard of the nut: A194 prints heavy hex nuts, ISO 898-2 those of ISO 4032 and ISO 4033
 * @returns proof stress, Pa; null where no table has the grade, size or kind of nut
 * @example nutProofStress('ASTM A194 2H', unifiedThread(0.875, 9), 'ASME B18.2.2 heavy hex')?.value // 1205e6
 * @source ASTM A194; ISO 898-2:1992 (second-hand)
 */
export function nutProofStress(
  grade: string,
  thread: Pick<Thread, 'diameter' | 'designation' | 'tensileArea'>,
  series: ProofSeries,
): TableValue | null {
  const name = grade.trim().replace(/\s+/g, ' ');
  const astm = A194.exec(name)?.[1];
  if (astm !== undefined) return series.endsWith('heavy hex') ? heavyHex(astm, thread.diameter) : null;
  const iso = ISO.exec(name)?.[1];
  return iso === undefined ? null : propertyClass(Number(iso), thread, series);
}

function heavyHex(grade: string, diameter: number): TableValue | null {
  const row = ASTM_A194.find(([name]) => name.toLowerCase() === grade.toLowerCase());
  if (row === undefined) return null;
  const [name, stress, unit, upToMm, sources, status] = row;
  if (stress === null || (upToMm !== null && diameter * 1000 > upToMm + 1e-9)) return null;
  return {
    value: toSI(stress, unit),
    source: `ASTM A194 ${name}, heavy hex: ${stress} ${unit}`,
    sources,
    status,
    note: ASTM_A194_NOTES[name] ?? '',
    cell: null,
    cells: statusText(status) === null ? [] : [heavyHexCell(name, stress, unit)],
  };
}

function heavyHexCell(name: string, stress: number, unit: string): TableCell {
  return {
    table: 'ASTM A194, heavy hex nuts',
    key: name,
    field: 'proof',
    name: 'proof stress',
    value: `${stress} ${unit}`,
  };
}

function classCell([class_, style, size, load]: (typeof ISO_898_2)[number]): TableCell {
  return {
    table: 'ISO 898-2, coarse threads',
    key: `${class_} | style ${style} | ${size}`,
    field: 'proof',
    name: 'proof load',
    value: `${load} N`,
  };
}

/**
 * Every printed proof stress and load of a nut as a person can look it up.
 *
 * @returns cells of both tables
 * @example proofCells()[0]?.field // 'proof'
 * @source the tables of `core/reference`
 */
export function proofCells(): readonly TableCell[] {
  const astm = ASTM_A194.flatMap(([name, stress, unit]) =>
    stress === null ? [] : [heavyHexCell(name, stress, unit)],
  );
  return [...astm, ...ISO_898_2.map(classCell)];
}

function propertyClass(
  class_: number,
  thread: Pick<Thread, 'designation' | 'tensileArea'>,
  series: ProofSeries,
): TableValue | null {
  const style = series === 'ISO 4032' ? 1 : series === 'ISO 4033' ? 2 : null;
  const coarse = METRIC_THREADS.find(
    ([designation, pitches]) => designation === thread.designation && pitches === 'coarse',
  );
  if (coarse === undefined) return null;
  const size = `M${coarse[2]}`;
  const row = ISO_898_2.find((one) => one[0] === class_ && one[1] === style && one[2] === size);
  if (row === undefined) return null;
  const [, , , load, , sources, status] = row;
  return {
    value: load / thread.tensileArea,
    source: `ISO 898-2 class ${class_}, style ${style}, ${size}: proof load ${load} N on the tensile area`,
    sources,
    status,
    note: status === 'SINGLE' ? 'column headings lost in the source; read from position' : '',
    cell: null,
    cells: statusText(status) === null ? [] : [classCell(row)],
  };
}
