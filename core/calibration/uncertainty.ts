import type { CertificateLineView } from '../contract/tool.ts';
import { lineUncertainty } from './line.ts';

/** One contributor to the standard uncertainty of the torque, N·m. */
export interface UncertaintyPart {
  readonly name: string;
  readonly u: number;
  readonly basis: string;
}

export interface TorqueBudgetInput {
  readonly line: CertificateLineView;
  /** Pressure really applied, Pa, and the torque it gives, N·m. */
  readonly pressure: number;
  readonly torque: number;
  /** Expanded uncertainty of the laboratory's reference as a fraction of torque, and its coverage factor. */
  readonly reference: { readonly expanded: number; readonly coverage: number } | null;
  /** Largest error of the gauge, Pa, and the distance between its marks, Pa. */
  readonly gauge: { readonly limit: number; readonly graduation: number };
}

/**
 * Standard uncertainty of the torque in one use, by contributor. The reference's part is common to all points of the
 * certificate, so it is added after the fit and does not shrink with their number.
 *
 * Equation: u² = u²(line) + s² + (U/k·T)² + (b·limit/√3)² + (b·graduation/√12)².
 * @param input line, pressure, reference and gauge, SI
 * @returns parts in N·m; the reference is left out when it is not known
 * @example torqueBudget({ line, pressure: 260e5, torque: 384, reference: null, gauge: { limit: 7e5, graduation: 10e5 }
 * }).length // 4 parts, without the reference
 * @source JCGM 100:2008 (GUM), 4.3.7 and Annex H.3
 */
export function torqueBudget({
  line,
  pressure,
  torque,
  reference,
  gauge,
}: TorqueBudgetInput): UncertaintyPart[] {
  const parts: UncertaintyPart[] = [
    { name: 'Certificate line', u: lineUncertainty(line, pressure), basis: 'least-squares fit' },
    { name: 'Repeatability', u: line.residualDeviation, basis: 'scatter of the points about the line, s' },
  ];
  if (reference !== null) {
    parts.push({
      name: 'Laboratory reference',
      u: (reference.expanded / reference.coverage) * torque,
      basis: 'expanded uncertainty divided by its coverage factor, common to all points',
    });
  }
  parts.push(
    { name: 'Gauge class', u: (line.slope * gauge.limit) / Math.sqrt(3), basis: 'largest error / √3' },
    { name: 'Reading', u: (line.slope * gauge.graduation) / Math.sqrt(12), basis: 'one mark / √12' },
  );
  return parts;
}

/**
 * Root of the sum of squares.
 *
 * Equation: u = √Σui².
 * @param parts standard uncertainties of independent contributors, one unit, at least 0
 * @returns combined standard uncertainty
 * @example combined([3, 4]) // 5
 * @source JCGM 100:2008 (GUM), 5.1.2
 */
export function combined(parts: readonly number[]): number {
  return Math.sqrt(parts.reduce((sum, u) => sum + u * u, 0));
}
