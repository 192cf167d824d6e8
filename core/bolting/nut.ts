import { HEAVY_HEX_INCH } from '../reference/asme-b18-2-2.ts';
import { HEAVY_HEX_METRIC } from '../reference/asme-b18-2-4-6m.ts';
import { DIN_934 } from '../reference/din-934.ts';
import { ISO_4032 } from '../reference/iso-4032.ts';
import type { MetricNutRow } from '../reference/metric-nut.ts';
import type { RowStatus } from '../reference/status.ts';
import type { Thread } from './thread.ts';

const INCH = 0.0254;
const MM = 0.001;

export const NUT_SERIES = [
  'ASME B18.2.2 heavy hex',
  'ASME B18.2.4.6M heavy hex',
  'ISO 4032',
  'DIN 934',
] as const;
export type NutSeries = (typeof NUT_SERIES)[number];

/** One nut, SI. */
export interface Nut {
  readonly series: NutSeries;
  /** Exact nominal width across flats, m; not the table's rounding. */
  readonly acrossFlats: number;
  /** Largest width across corners, m. */
  readonly acrossCorners: number;
  /** Largest height, m; null where no source prints it. */
  readonly height: number | null;
  /** Outside diameter of the bearing face do, m, and what it is taken from. */
  readonly bearingOutside: number;
  readonly bearingBasis: string;
  readonly source: string;
  readonly status: RowStatus;
}

/**
 * Exact nominal width across flats of an inch heavy hex nut.
 *
 * Equation: F = 1.5·D + 1/8 in.
 * @param diameter nominal diameter D, m, above 0; the standard has 1/2 to 4 in
 * @returns width across flats, m
 * @example heavyHexAcrossFlats(0.875 * 0.0254) // 0.0365125 m, 1-7/16 in
 * @source ASME B18.2.2, rule for heavy hex nuts (second-hand; 21 of 22 printed sizes obey it)
 */
export function heavyHexAcrossFlats(diameter: number): number {
  return 1.5 * diameter + INCH / 8;
}

/**
 * Width across corners of a sharp hexagon.
 *
 * Equation: C = F/cos 30°.
 * @param acrossFlats F, m, above 0
 * @returns C, m
 * @example acrossCorners(0.0365125) // 0.04216...
 * @source plane geometry
 */
export function acrossCorners(acrossFlats: number): number {
  return acrossFlats / Math.cos(Math.PI / 6);
}

/**
 * Finds the nut of a series that goes with a thread.
 *
 * @param series nut standard; none is assumed
 * @param thread thread of the stud
 * @returns the nut, or null when the series has no such size
 * @example findNut('ASME B18.2.2 heavy hex', thread)?.acrossFlats // 0.0365125 for 7/8 in
 * @source ASME B18.2.2, ASME B18.2.4.6M, ISO 4032, DIN 934
 */
export function findNut(series: NutSeries, thread: Thread): Nut | null {
  if (series === 'ASME B18.2.2 heavy hex') return thread.system === 'inch' ? heavyHexInch(thread) : null;
  return thread.system === 'metric' ? metricNut(series, thread) : null;
}

function heavyHexInch(thread: Thread): Nut | null {
  const diameterIn = thread.diameter / INCH;
  const row = HEAVY_HEX_INCH.find(([d]) => Math.abs(d - diameterIn) < 1e-9);
  if (row === undefined) return null;
  const [, printedFlats, , corners, height, , , status] = row;
  const rule = heavyHexAcrossFlats(thread.diameter);
  // 9/16 in is the one size whose print breaks the rule; there the print is kept, with its single-source status.
  const obeysRule = Math.abs(rule / INCH - printedFlats) < 0.001;
  const acrossFlats = obeysRule ? rule : printedFlats * INCH;
  return {
    series: 'ASME B18.2.2 heavy hex',
    acrossFlats,
    acrossCorners: corners * INCH,
    height: height * INCH,
    bearingOutside: acrossFlats,
    bearingBasis: 'bearing face taken as wide as the flats (PCC-1 App. J practice)',
    source: 'ASME B18.2.2',
    status,
  };
}

function metricNut(series: NutSeries, thread: Thread): Nut | null {
  const diameterMm = thread.diameter / MM;
  const row = metricTable(series).find(([d]) => Math.abs(d - diameterMm) < 1e-9);
  if (row === undefined) return null;
  const [, flats, , height, bearing, , status] = row;
  return {
    series,
    acrossFlats: flats * MM,
    acrossCorners: acrossCorners(flats * MM),
    height: height === null ? null : height * MM,
    bearingOutside: (bearing ?? flats) * MM,
    bearingBasis:
      bearing === null
        ? 'bearing face taken as wide as the flats (PCC-1 App. J practice)'
        : `smallest bearing face of ${series}`,
    source: series.replace(' heavy hex', ''),
    status,
  };
}

function metricTable(series: NutSeries): readonly MetricNutRow[] {
  if (series === 'ISO 4032') return ISO_4032;
  if (series === 'DIN 934') return DIN_934;
  return HEAVY_HEX_METRIC;
}
