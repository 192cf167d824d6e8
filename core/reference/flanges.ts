import { ASME_B16_5, ASME_B16_5_NOTES } from './asme-b16-5.ts';
import { ASME_B16_47, ASME_B16_47_NOTES } from './asme-b16-47.ts';
import { rowsBySize } from './by-size.ts';
import { EN_1092_1, EN_1092_1_NOTES } from './en-1092-1.ts';
import type { RowStatus } from './status.ts';

const INCH = 0.0254;
const MM = 0.001;

export const FLANGE_STANDARDS = ['ASME B16.5', 'ASME B16.47 A', 'ASME B16.47 B', 'EN 1092-1'] as const;
export type FlangeStandard = (typeof FLANGE_STANDARDS)[number];

/** Bolting of a standard flange, SI; null cells are disputed or unknown and have to be measured. */
export interface FlangeRow {
  readonly standard: FlangeStandard;
  readonly size: string;
  readonly rating: string;
  readonly bolts: number | null;
  /** Inch stud diameter, inch; null for metric bolting and disputed sizes. */
  readonly studIn: number | null;
  /** Metric bolt, coarse pitch implied: "M24". */
  readonly metricThread: string | null;
  readonly boltCircle: number | null;
  /** Stud length for a raised face, m, points left out. */
  readonly studLength: number | null;
  /** Thickness of one flange without its raised face, m. */
  readonly thickness: number | null;
  /** Diameter of the raised face, m. */
  readonly raisedFace: number | null;
  readonly sources: string;
  readonly status: RowStatus;
  readonly note: string;
}

/**
 * Finds the row of a standard flange.
 *
 * @param standard flange standard
 * @param size NPS or DN as the standard writes it; "1-1/2" and "1 1/2" are the same
 * @param rating class or PN, digits only
 * @returns the row in SI, or null when the table has none
 * @example findFlange('ASME B16.5', '8', '300')?.bolts // 12
 * @source ASME B16.5, ASME B16.47, EN 1092-1 (second-hand, see README.md of this folder)
 */
export function findFlange(standard: FlangeStandard, size: string, rating: string): FlangeRow | null {
  return FLANGE_ROW(standard, size, rating);
}

/**
 * Sizes and ratings a standard's table has, in table order.
 *
 * @param standard flange standard
 * @returns every size with its ratings
 * @example flangeSizes('ASME B16.5')[0]?.size // '1/2'
 * @source ASME B16.5, ASME B16.47, EN 1092-1 (second-hand)
 */
export function flangeSizes(standard: FlangeStandard): { size: string; ratings: string[] }[] {
  const sizes = new Map<string, string[]>();
  for (const row of ROWS) {
    if (row.standard !== standard) continue;
    sizes.set(row.size, [...(sizes.get(row.size) ?? []), row.rating]);
  }
  return [...sizes].map(([size, ratings]) => ({ size, ratings }));
}

function fromB165(): FlangeRow[] {
  return ASME_B16_5.map(
    ([nps, , rating, bolts, studIn, circle, , , thickness, studLength, face, sources, status]) => ({
      standard: 'ASME B16.5',
      size: nps,
      rating: String(rating),
      bolts,
      studIn,
      metricThread: null,
      boltCircle: circle * MM,
      studLength: studLength === null ? null : studLength * INCH,
      thickness: thickness === null ? null : thickness * MM,
      raisedFace: face === null ? null : face * MM,
      sources,
      status,
      note: ASME_B16_5_NOTES[`${nps}|${rating}`] ?? '',
    }),
  );
}

function fromB1647(): FlangeRow[] {
  return ASME_B16_47.map(
    ([series, rating, nps, bolts, studIn, circle, , , studLength, face, sources, status]) => ({
      standard: series === 'A' ? 'ASME B16.47 A' : 'ASME B16.47 B',
      size: nps,
      rating: String(rating),
      bolts,
      studIn,
      metricThread: null,
      boltCircle: circle === null ? null : circle * MM,
      studLength: studLength === null ? null : studLength * INCH,
      thickness: null,
      raisedFace: face === null ? null : face * INCH,
      sources,
      status,
      note: ASME_B16_47_NOTES[`${series}|${rating}|${nps}`] ?? '',
    }),
  );
}

function fromEn1092(): FlangeRow[] {
  return EN_1092_1.map(([pn, dn, bolts, thread, circle, , , sources, status]) => ({
    standard: 'EN 1092-1',
    size: String(dn),
    rating: String(pn),
    bolts,
    studIn: null,
    metricThread: thread,
    boltCircle: circle * MM,
    studLength: null,
    thickness: null,
    raisedFace: null,
    sources,
    status,
    note: EN_1092_1_NOTES[`${pn}|${dn}`] ?? '',
  }));
}

const ROWS: readonly FlangeRow[] = [...fromB165(), ...fromB1647(), ...fromEn1092()];

const FLANGE_ROW = rowsBySize(ROWS.map((row) => [row.standard, row.size, row.rating, row]));
