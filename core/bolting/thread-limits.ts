import type { Thread } from './thread.ts';

const INCH = 0.0254;
const MM = 0.001;

/** Limits of size that decide how much metal a thread strips through, m. */
export interface ThreadLimits {
  /** Least major diameter of the stud's thread. */
  readonly majorMin: number;
  /** Least pitch diameter of the stud's thread. */
  readonly pitchMin: number;
  /** Largest minor diameter of the nut's thread. */
  readonly nutMinorMax: number;
  /** Largest pitch diameter of the nut's thread. */
  readonly nutPitchMax: number;
  /** Tolerance classes and where they are from. */
  readonly basis: string;
}

/**
 * Limits of size of stud and nut thread: classes 2A and 2B of unified threads, 6g and 6H of metric ones.
 *
 * Equation: inch: Td2 = 0.0015·(D^⅓ + √LE + 10·P^⅔), LE = D; es = 0.3·Td2; Td = 0.06·P^⅔; TD2 = 1.3·Td2; TD1 = 0.25·P −
 * 0.4·P². Metric, µm with P and d in mm: es = 15 + 11·P; Td = 180·P^⅔ − 3.15/√P; Td2 = 90·P^0.4·d^0.1; TD2 = 1.32·Td2;
 * TD1 = 230·P^0.7 for P ≥ 1 mm. The standard rounds the metric ones to preferred numbers.
 * @param thread thread of the stud: UNC, 8-UN, or metric with a pitch from 1 to 6 mm
 * @returns limits, m; null when the thread lies outside what the relations are for
 * @example threadLimits(unifiedThread(1, 8))?.pitchMin // 0.02311 m, 0.9100 in
 * @source ASME B1.1-2003, section 5.8 (second-hand); ISO 965-1:1998, section 13 (from memory; TD1 against its table)
 */
export function threadLimits(thread: Thread): ThreadLimits | null {
  return thread.system === 'inch' ? unifiedLimits(thread) : metricLimits(thread);
}

function unifiedLimits(thread: Thread): ThreadLimits | null {
  const diameter = thread.diameter / INCH;
  const pitch = thread.pitch / INCH;
  // Below 1/4 in another relation holds for the minor diameter.
  if (diameter < 0.25 || pitch > 0.25) return null;
  const pitchTolerance = 0.0015 * (Math.cbrt(diameter) + Math.sqrt(diameter) + 10 * pitch ** (2 / 3));
  const allowance = 0.3 * pitchTolerance;
  const basicPitch = diameter - 0.649519 * pitch;
  return {
    majorMin: (diameter - allowance - 0.06 * pitch ** (2 / 3)) * INCH,
    pitchMin: (basicPitch - allowance - pitchTolerance) * INCH,
    nutMinorMax: (diameter - 1.082532 * pitch + 0.25 * pitch - 0.4 * pitch ** 2) * INCH,
    nutPitchMax: (basicPitch + 1.3 * pitchTolerance) * INCH,
    basis: 'classes 2A and 2B, ASME B1.1',
  };
}

function metricLimits(thread: Thread): ThreadLimits | null {
  const diameter = thread.diameter / MM;
  const pitch = thread.pitch / MM;
  if (pitch < 1 || pitch > 6) return null;
  const allowance = (15 + 11 * pitch) * MM;
  const pitchTolerance = 90 * pitch ** 0.4 * diameter ** 0.1 * MM;
  const majorTolerance = (180 * pitch ** (2 / 3) - 3.15 / Math.sqrt(pitch)) * MM;
  const basicPitch = diameter - 0.649519 * pitch;
  return {
    majorMin: (diameter - allowance - majorTolerance) * MM,
    pitchMin: (basicPitch - allowance - pitchTolerance) * MM,
    nutMinorMax: (diameter - 1.082532 * pitch + 230 * pitch ** 0.7 * MM) * MM,
    nutPitchMax: (basicPitch + 1.32 * pitchTolerance) * MM,
    basis: 'classes 6g and 6H, ISO 965-1',
  };
}
