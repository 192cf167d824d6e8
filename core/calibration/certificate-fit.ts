import type { Outcome } from '../findings/outcome.ts';
import type { CommonUncertainty } from './prediction.ts';
import { type LinePoint, type WeightedLine, weightedLine } from './weighted-line.ts';

/** Points of a wrench's certificate as stored, as far as the fit needs them; older ones state no uncertainty per point. */
export interface StatedPoints {
  readonly points: readonly {
    readonly pressure: { readonly si: number };
    readonly torque: { readonly si: number };
    /** Expanded, N·m, without what is common to all points; null or missing is not stated. */
    readonly uncertainty?: { readonly si: number } | null;
  }[];
  /** Expanded uncertainty of the reference as a fraction of torque; null is not stated. */
  readonly expandedUncertainty: { readonly si: number } | null;
  /** Coverage factor of all of them. */
  readonly coverageFactor: number;
}

/**
 * Points of a certificate as points of a line, each with the standard uncertainty that is its own.
 *
 * Equation: u = U/k; a stated uncertainty of zero counts as not stated, since nothing is measured exactly.
 * @param measured points as stored, Pa and N·m, coverage factor k above 0
 * @returns points in the order of the certificate
 * @example linePoints({ points: [{ pressure: { si: 1e7 }, torque: { si: 150 }, uncertainty: { si: 3 } }],
 * expandedUncertainty: null, coverageFactor: 2 })[0]?.u // 1.5
 * @source JCGM 100:2008 (GUM), 4.3.3
 */
export function linePoints({ points, coverageFactor }: StatedPoints): LinePoint[] {
  return points.map(({ pressure, torque, uncertainty }) => {
    const expanded = uncertainty?.si ?? 0;
    return { x: pressure.si, y: torque.si, u: expanded > 0 ? expanded / coverageFactor : null };
  });
}

/**
 * Line through a certificate's points, weighted by their own uncertainties where every point states one.
 *
 * Equation: T = a + b·p, see `weightedLine`.
 * @param measured points as stored, at least 3, Pa and N·m
 * @returns the line in SI
 * @example certificateFit(certificate.measured).value?.weighting // 'equal'
 * @source ISO/TS 28037:2010, 6.2 and 6.3; JCGM 100:2008 (GUM), Annex H.3
 */
export function certificateFit(measured: StatedPoints): Outcome<WeightedLine> {
  return weightedLine(linePoints(measured));
}

/**
 * What all points of a certificate share: the laboratory's reference.
 *
 * Equation: ur = U/k, a fraction of torque.
 * @param measured certificate as stored, coverage factor k above 0
 * @returns common uncertainty, or null when the certificate states none
 * @example referenceOf({ points: [], expandedUncertainty: { si: 0.01 }, coverageFactor: 2 })?.scale // 0.005
 * @source JCGM 100:2008 (GUM), 4.3.3 and F.1.2.3
 */
export function referenceOf({ expandedUncertainty, coverageFactor }: StatedPoints): CommonUncertainty | null {
  return expandedUncertainty === null ? null : { shift: 0, scale: expandedUncertainty.si / coverageFactor };
}
