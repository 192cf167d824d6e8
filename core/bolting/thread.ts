import { UNIFIED_THREADS, type UnifiedThreadRow } from '../reference/asme-b1-1.ts';
import { METRIC_THREADS, type MetricThreadRow } from '../reference/iso-261.ts';
import type { RowStatus } from '../reference/status.ts';

const INCH = 0.0254;
const MM = 0.001;

/** Geometry of one external thread, SI. The root diameter is the one bolt stresses are computed with. */
export interface Thread {
  readonly designation: string;
  readonly system: 'inch' | 'metric';
  /** Nominal diameter d, m. */
  readonly diameter: number;
  /** Pitch P, m. */
  readonly pitch: number;
  /** Pitch diameter d2, m. */
  readonly pitchDiameter: number;
  /** Root diameter for stress: D − 1.299038/n, or d3 of ISO 724, m. */
  readonly rootDiameter: number;
  /** Stress diameter for torsion ds = (d2 + d3)/2, m. */
  readonly stressDiameter: number;
  /** Tensile stress area, m². */
  readonly tensileArea: number;
  /** Root area, m². */
  readonly rootArea: number;
  readonly source: string;
  readonly status: RowStatus;
}

/**
 * Geometry of a unified thread.
 *
 * Equation: d2 = D − 0.649519/n; dr = D − 1.299038/n; As = (π/4)(D − 0.9743/n)²; Ar = (π/4)·dr².
 * @param diameterIn nominal diameter D, inch, above 1.3/n
 * @param threadsPerInch n, 1/inch, above 0
 * @returns geometry in SI
 * @example unifiedThread(0.875, 9).tensileArea // 0.00029789 m²
 * @source ASME B1.1, appendix on stress areas (second-hand); root diameter from memory of ASME PCC-1-2013, Appendix H
 */
export function unifiedThread(diameterIn: number, threadsPerInch: number): Thread {
  const pitchDiameter = (diameterIn - 0.649519 / threadsPerInch) * INCH;
  const rootDiameter = (diameterIn - 1.299038 / threadsPerInch) * INCH;
  return {
    designation: `${diameterIn}-${threadsPerInch}`,
    system: 'inch',
    diameter: diameterIn * INCH,
    pitch: INCH / threadsPerInch,
    pitchDiameter,
    rootDiameter,
    stressDiameter: (pitchDiameter + rootDiameter) / 2,
    tensileArea: circleArea((diameterIn - 0.9743 / threadsPerInch) * INCH),
    rootArea: circleArea(rootDiameter),
    source: 'ASME B1.1 geometry',
    status: 'FORMULA_ONLY',
  };
}

/**
 * Geometry of an ISO metric thread.
 *
 * Equation: d2 = d − 0.649519·P; d3 = d − 1.226869·P; As = (π/4)((d2 + d3)/2)²; A3 = (π/4)·d3².
 * @param diameterMm nominal diameter d, mm, above 1.23·P
 * @param pitchMm pitch P, mm, above 0
 * @returns geometry in SI
 * @example metricThread(24, 3).tensileArea // 0.0003525 m²
 * @source ISO 724 and ISO 898-1 (second-hand)
 */
export function metricThread(diameterMm: number, pitchMm: number): Thread {
  const pitchDiameter = (diameterMm - 0.649519 * pitchMm) * MM;
  const rootDiameter = (diameterMm - 1.226869 * pitchMm) * MM;
  const stressDiameter = (pitchDiameter + rootDiameter) / 2;
  return {
    designation: `M${diameterMm}x${pitchMm}`,
    system: 'metric',
    diameter: diameterMm * MM,
    pitch: pitchMm * MM,
    pitchDiameter,
    rootDiameter,
    stressDiameter,
    tensileArea: circleArea(stressDiameter),
    rootArea: circleArea(rootDiameter),
    source: 'ISO 724 geometry',
    status: 'FORMULA_ONLY',
  };
}

function circleArea(diameter: number): number {
  return (Math.PI / 4) * diameter * diameter;
}

const UNIFIED = /^([\d./ -]+?)\s*(?:in|")?\s*-\s*(\d+(?:\.\d+)?)\s*-?\s*(UNC|8-?UN|UN)?$/i;
// "1-1/8-8UN" names the eight-thread series with the pitch inside the series' name.
const EIGHT_THREAD = /^([\d./ -]+?)\s*(?:in|")?\s*-\s*8-?UN$/i;
const METRIC = /^M\s*(\d+(?:\.\d+)?)(?:\s*[x×]\s*(\d+(?:\.\d+)?))?$/i;

/**
 * Finds a thread of the shipped tables by its designation, however it is spaced.
 *
 * @param designation "7/8-9 UNC", "1-1/8-8 8UN", "1-1/8-8UN", "M24x3"; "M24" means the coarse pitch
 * @returns the thread, or null when no table has it
 * @example findThread('7/8-9 UNC')?.designation // '7/8-9 UNC'
 * @source ASME B1.1; ISO 261 and ISO 724
 */
export function findThread(designation: string): Thread | null {
  const text = designation.trim().replace(/\s+/g, ' ');
  return BY_NAME.get(text) ?? findMetric(text) ?? findUnified(text);
}

function findMetric(text: string): Thread | null {
  const match = METRIC.exec(text);
  if (match === null) return null;
  const diameter = Number(match[1]);
  const pitch = match[2] === undefined ? null : Number(match[2]);
  const row = METRIC_THREADS.find(
    ([, series, d, p]) => d === diameter && (pitch === null ? series === 'coarse' : p === pitch),
  );
  return row === undefined ? null : fromMetricRow(row);
}

function findUnified(text: string): Thread | null {
  const eight = EIGHT_THREAD.exec(text);
  const match = eight ?? UNIFIED.exec(text);
  if (match === null) return null;
  const diameter = inches(match[1] ?? '');
  if (diameter === null) return null;
  const threads = eight === null ? Number(match[2]) : 8;
  const rows = UNIFIED_THREADS.filter(([, d, n]) => Math.abs(d - diameter) < 1e-9 && n === threads);
  const series = eight === null ? match[3]?.toUpperCase().replace('-', '') : '8UN';
  const row = rows.find(([name]) => series !== undefined && name.endsWith(` ${series}`)) ?? rows[0];
  if (series === 'UNC' && row !== undefined && !row[0].endsWith('UNC')) return null;
  return row === undefined ? null : fromUnifiedRow(row);
}

/**
 * Thread of the series used for plant studs: coarse to 1 inch, eight threads above.
 *
 * @param diameterIn nominal diameter D, inch, above 0
 * @returns the thread, or null when the series has no such size
 * @example studThread(1.25)?.designation // '1-1/4-8 8UN'
 * @source ASME B1.1; common practice for the change of series at 1 in
 */
export function studThread(diameterIn: number): Thread | null {
  return STUD_THREADS.get(diameterIn) ?? null;
}

function isStudThread([designation, diameter]: UnifiedThreadRow): boolean {
  return designation.endsWith(diameter <= 1 ? ' UNC' : ' 8UN');
}

/**
 * Every designation of the shipped tables, inch first, in order of size.
 *
 * @returns designations as `findThread` reads them
 * @example threadDesignations()[0] // '3/8-16 UNC'
 * @source ASME B1.1; ISO 261
 */
export function threadDesignations(): string[] {
  const inch = [...UNIFIED_THREADS].sort((a, b) => a[1] - b[1]).map(([name]) => name);
  const metric = [...METRIC_THREADS].sort((a, b) => a[2] - b[2] || b[3] - a[3]).map(([name]) => name);
  return [...inch, ...metric];
}

function fromUnifiedRow([designation, diameter, threads, , , , status]: UnifiedThreadRow): Thread {
  return { ...unifiedThread(diameter, threads), designation, source: 'ASME B1.1', status };
}

function fromMetricRow([designation, , diameter, pitch, , , , status]: MetricThreadRow): Thread {
  return { ...metricThread(diameter, pitch), designation, source: 'ISO 261, ISO 724', status };
}

const BY_NAME: ReadonlyMap<string, Thread> = new Map(
  [...UNIFIED_THREADS.map(fromUnifiedRow), ...METRIC_THREADS.map(fromMetricRow)].map((thread) => [
    thread.designation,
    thread,
  ]),
);

const STUD_THREADS: ReadonlyMap<number, Thread> = new Map(
  UNIFIED_THREADS.filter(isStudThread).map((row) => [row[1], fromUnifiedRow(row)]),
);

function inches(text: string): number | null {
  const match = /^(?:(\d+(?:\.\d+)?)|(\d+)\/(\d+)|(\d+)[ -](\d+)\/(\d+))$/.exec(text.trim());
  if (match === null) return null;
  if (match[1] !== undefined) return Number(match[1]);
  if (match[2] !== undefined) return Number(match[2]) / Number(match[3]);
  return Number(match[4]) + Number(match[5]) / Number(match[6]);
}
