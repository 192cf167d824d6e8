import { compute, type Outcome, positive, within } from '../findings/outcome.ts';
import { type LimitSubject, loadInterval } from '../uncertainty/probabilities.ts';

/** Relative standard uncertainties of a load, by what they share. Null is not known. */
export interface LoadSpread {
  /** The same for every bolt: line and reference of the certificate, gauge, batch of lubricant. */
  readonly common: number | null;
  /** Drawn anew for each bolt: repeatability of the tool, friction from stud to stud. */
  readonly perBolt: number | null;
}

export type LoadRange = readonly [number, number];

/** Load that was really there, with 95 % intervals; null where a part of the spread is not known. */
export interface RealLoads {
  /** N per bolt */
  readonly load: number;
  readonly singleBolt: LoadRange | null;
  readonly jointMean: LoadRange | null;
}

/**
 * Load the bolts of a joint really got when what brought it in was off.
 *
 * Equation: F' = F·(1 + e); 95 % lognormal about F', single bolt and mean of N.
 * @param intended F, load the record promises, N, above 0; null when not known
 * @param error e = (delivered − intended)/intended, 1, above −1
 * @param spread relative standard uncertainties of F', common and per bolt
 * @param boltCount N, whole, 1 to 400; null when not known
 * @returns load with its intervals
 * @example realLoads(100e3, -0.08, { common: 0.01, perBolt: 0.1 }, 12).value?.load // 92e3 N
 * @source JCGM 100:2008 (GUM), 5.1.6; lognormal because friction stands in the denominator
 */
export function realLoads(
  intended: number | null,
  error: number,
  { common, perBolt }: LoadSpread,
  boltCount: number | null,
): Outcome<RealLoads> {
  const scaled = compute(
    {
      F: positive('F', 'load the record promises, N', intended, 'enter thread and friction of the joint'),
      e: within('e', 'error', error, [-1, 100], 'check the sign and the percent'),
    },
    (v) => v.F * (1 + v.e),
  );
  if (scaled.value === null) return scaled;
  const load = scaled.value;
  const range = (subject: LimitSubject): LoadRange | null =>
    common === null || perBolt === null
      ? null
      : loadInterval({ load, common, perBolt, boltCount, shape: 'lognormal' }, subject, PROBABILITY).value;
  return {
    value: { load, singleBolt: range('single bolt'), jointMean: range('joint mean') },
    missing: [],
  };
}

const PROBABILITY = 0.95;
