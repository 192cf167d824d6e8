import type { CertificateLineView } from '../contract/tool.ts';
import { inflationOf, weightedLine } from './weighted-line.ts';

export interface TorquePoint {
  /** Pa */
  readonly pressure: number;
  /** N·m */
  readonly torque: number;
  readonly direction: 'up' | 'down';
  /** Standard uncertainty that is the point's own, N·m; null or missing is not stated. */
  readonly own?: number | null;
}

/** Straight line y = a + b·x with what least squares says about it. */
export interface FittedLine {
  readonly intercept: number;
  readonly slope: number;
  readonly interceptUncertainty: number;
  readonly slopeUncertainty: number;
  readonly covariance: number;
  /** Residual standard deviation s with n − 2 degrees of freedom. */
  readonly residualDeviation: number;
  readonly residuals: readonly number[];
}

/**
 * Fits a straight line by unweighted least squares.
 *
 * Equation: b = Sxy/Sxx; a = ȳ − b·x̄; s² = Σr²/(n − 2); u²(b) = s²/Sxx; u²(a) = s²·(1/n + x̄²/Sxx); cov(a, b) =
 * −x̄·s²/Sxx.
 * @param xs abscissas, each in one unit, n ≥ 3, not all equal
 * @param ys ordinates, each in one unit, any finite value, as many
 * @returns the line, or null when the points cannot determine one
 * @example fitLine([0, 1, 2], [1, 3, 5])?.slope // 2
 * @source JCGM 100:2008 (GUM), Annex H.3
 */
export function fitLine(xs: readonly number[], ys: readonly number[]): FittedLine | null {
  const n = xs.length;
  if (n < 3 || ys.length !== n) return null;
  const meanX = mean(xs);
  const meanY = mean(ys);
  let sxx = 0;
  let sxy = 0;
  for (let i = 0; i < n; i++) {
    const dx = (xs[i] ?? 0) - meanX;
    sxx += dx * dx;
    sxy += dx * ((ys[i] ?? 0) - meanY);
  }
  if (!(sxx > 0) || !Number.isFinite(sxy)) return null;
  const slope = sxy / sxx;
  const intercept = meanY - slope * meanX;
  const residuals = xs.map((x, i) => (ys[i] ?? 0) - (intercept + slope * x));
  const variance = residuals.reduce((sum, r) => sum + r * r, 0) / (n - 2);
  return {
    intercept,
    slope,
    interceptUncertainty: Math.sqrt(variance * (1 / n + (meanX * meanX) / sxx)),
    slopeUncertainty: Math.sqrt(variance / sxx),
    covariance: (-meanX * variance) / sxx,
    residualDeviation: Math.sqrt(variance),
    residuals,
  };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/**
 * The line through a certificate's points, torque over pressure.
 *
 * Equation: T = a + b·p by least squares, weighted where every point states its own uncertainty; through the origin would
 * do when |a| ≤ 2·u(a).
 * @param points pressure in Pa and torque in N·m, at least 3, rising
 * @returns the line in SI, or null when the points give no rising line
 * @example certificateLine([1, 2, 3].map((n) => ({ pressure: n * 1e7, torque: n * 150, direction: 'up' })))?.slope //
 * 1.5e-5 N·m/Pa
 * @source JCGM 100:2008 (GUM), Annex H.3
 */
export function certificateLine(points: readonly TorquePoint[]): CertificateLineView | null {
  const fit = points.every(({ own }) => (own ?? 0) > 0) ? fitByWeights(points) : fitEqually(points);
  // A wrench's torque rises with its pressure; a level or falling line can't be turned into a setting.
  if (fit === null || !(fit.slope > 0)) return null;
  return {
    intercept: fit.intercept,
    slope: fit.slope,
    interceptUncertainty: fit.interceptUncertainty,
    slopeUncertainty: fit.slopeUncertainty,
    covariance: fit.covariance,
    residualDeviation: fit.residualDeviation,
    largestResidual: fit.residuals.reduce((most, r) => (Math.abs(r) > Math.abs(most) ? r : most), 0),
    throughOrigin: Math.abs(fit.intercept) <= 2 * fit.interceptUncertainty,
    points: points.map(({ pressure, torque, direction }, index) => ({
      pressure,
      torque,
      direction,
      residual: fit.residuals[index] ?? 0,
    })),
  };
}

function fitEqually(points: readonly TorquePoint[]): FittedLine | null {
  return fitLine(
    points.map((point) => point.pressure),
    points.map((point) => point.torque),
  );
}

function fitByWeights(points: readonly TorquePoint[]): FittedLine | null {
  const line = weightedLine(
    points.map(({ pressure, torque, own }) => ({ x: pressure, y: torque, u: own ?? null })),
  );
  if (line.value === null) return null;
  const factor = inflationOf(line.value);
  return {
    intercept: line.value.intercept,
    slope: line.value.slope,
    interceptUncertainty: factor * line.value.interceptUncertainty,
    slopeUncertainty: factor * line.value.slopeUncertainty,
    covariance: factor * factor * line.value.covariance,
    residualDeviation: line.value.residualDeviation,
    residuals: line.value.residuals,
  };
}

/**
 * Standard uncertainty of the fitted line at one abscissa.
 *
 * Equation: u² = u²(a) + x²·u²(b) + 2·x·cov(a, b).
 * @param line fitted line
 * @param x abscissa, Pa for a certificate, any finite value
 * @returns standard uncertainty in the ordinate's unit, N·m for a certificate
 * @example lineUncertainty({ interceptUncertainty: 0.5, slopeUncertainty: 1e-8, covariance: -4e-9 }, 260e5) // 0.33 N·m
 * @source JCGM 100:2008 (GUM), Annex H.3, equation (H.15)
 */
export function lineUncertainty(
  line: Pick<FittedLine, 'interceptUncertainty' | 'slopeUncertainty' | 'covariance'>,
  x: number,
): number {
  const variance =
    line.interceptUncertainty ** 2 + (x * line.slopeUncertainty) ** 2 + 2 * x * line.covariance;
  return Math.sqrt(Math.max(0, variance));
}
