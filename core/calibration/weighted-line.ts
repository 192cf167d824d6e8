import {
  compute,
  noSolution,
  type Outcome,
  positive,
  type RelationInput,
  within,
} from '../findings/outcome.ts';

/** A point of a line: abscissa and ordinate each in one unit, for a certificate Pa and N·m. */
export interface LinePoint {
  readonly x: number;
  readonly y: number;
  /**
   * Standard uncertainty of y that belongs to this point alone, above 0; null is not known. What is common to all points,
   * such as the laboratory's reference, has no place here: it would shrink with their number.
   */
  readonly u: number | null;
}

/** Straight line y = a + b·x through points of equal or unequal weight. */
export interface WeightedLine {
  readonly intercept: number;
  readonly slope: number;
  readonly interceptUncertainty: number;
  readonly slopeUncertainty: number;
  readonly covariance: number;
  /** Correlation of a and b, −1 to 1; null when neither has any uncertainty. */
  readonly correlation: number | null;
  /** Scatter of a single point of mean weight about the line, s. */
  readonly residualDeviation: number;
  /** n − 2 */
  readonly degreesOfFreedom: number;
  readonly weighting: 'equal' | 'by the points’ own uncertainties';
  /** Sum of squared residuals over squared uncertainties; null for equal weights, which test nothing. */
  readonly chiSquared: number | null;
  /** √(χ²/(n − 2)): near 1 the points scatter as their uncertainties say; null for equal weights. */
  readonly birgeRatio: number | null;
  readonly residuals: readonly number[];
  /** Part of each fitted value that its own point decides, 0 to 1. */
  readonly leverages: readonly number[];
  /** Share of each point in the sum of weights times n: 1 for equal weights. */
  readonly weights: readonly number[];
}

/**
 * Straight line through points, weighted by their own uncertainties where every point states one.
 *
 * Equation: w = 1/u²; b = Σw(x − x̄)(y − ȳ)/Σw(x − x̄)²; a = ȳ − b·x̄; u²(b) = 1/Σw(x − x̄)²; u²(a) = 1/Σw +
 * x̄²·u²(b); cov(a, b) = −x̄·u²(b); with equal weights u = s, s² = Σr²/(n − 2).
 * @param points at least 3, not all at one abscissa
 * @returns the line; weights count only when every point has its uncertainty, else all are equal
 * @example weightedLine([0, 1, 2].map((x) => ({ x, y: 1 + 2 * x, u: 0.1 }))).value?.slope // 2
 * @source ISO/TS 28037:2010, 6.2 and 6.3; JCGM 100:2008 (GUM), Annex H.3
 */
export function weightedLine(points: readonly LinePoint[]): Outcome<WeightedLine> {
  const checked = compute({}, () => true, pointInputs(points));
  if (checked.value === null) return checked;
  const stated = points.every(({ u }) => u !== null);
  const line = solve(points, stated);
  return line === null || !allFinite(line)
    ? noSolution('b', 'slope', 'measure at two different abscissas at least; check the units')
    : { value: line, missing: [] };
}

/**
 * Factor by which points that scatter more than they state make the line more uncertain than stated. Points that scatter
 * less leave it as stated.
 *
 * Equation: max(1, √(χ²/(n − 2))).
 * @param line fitted line; 1 for equal weights, whose uncertainties come from the scatter already
 * @returns factor on every uncertainty of the line, at least 1
 * @example inflationOf({ birgeRatio: 1.4 }) // 1.4
 * @source R. T. Birge, Phys. Rev. 40 (1932) 207 (from memory)
 */
export function inflationOf({ birgeRatio }: Pick<WeightedLine, 'birgeRatio'>): number {
  return Math.max(1, birgeRatio ?? 1);
}

function pointInputs(points: readonly LinePoint[]): RelationInput[] {
  const any = [-Number.MAX_VALUE, Number.MAX_VALUE] as const;
  return [
    within('n', 'number of points', points.length, [3, 10_000], 'measure at least three points'),
    ...points.flatMap(({ x, y, u }, index) => [
      within('x', `abscissa of point ${index + 1}`, x, any, 'enter a number'),
      within('y', `ordinate of point ${index + 1}`, y, any, 'enter a number'),
      // A point without its own uncertainty makes all weights equal, which is no gap.
      positive('u', `standard uncertainty of point ${index + 1}`, u ?? 1, 'take it from the certificate'),
    ]),
  ];
}

function solve(points: readonly LinePoint[], stated: boolean): WeightedLine | null {
  const n = points.length;
  const smallest = stated ? Math.min(...points.map(({ u }) => u ?? 1)) : 1;
  // Weights relative to the best point keep their squares in range whatever unit the uncertainties are in.
  const raw = points.map(({ u }) => (stated ? (smallest / (u ?? smallest)) ** 2 : 1));
  const sum = total(raw);
  const weights = raw.map((w) => (w * n) / sum);
  const meanX = total(points.map(({ x }, i) => (weights[i] ?? 0) * x)) / n;
  const meanY = total(points.map(({ y }, i) => (weights[i] ?? 0) * y)) / n;
  const sxx = total(points.map(({ x }, i) => (weights[i] ?? 0) * (x - meanX) ** 2));
  const sxy = total(points.map(({ x, y }, i) => (weights[i] ?? 0) * (x - meanX) * (y - meanY)));
  const widest = Math.max(...points.map(({ x }) => Math.abs(x)));
  if (!(sxx > n * (1e-12 * widest) ** 2)) return null;
  const slope = sxy / sxx;
  const intercept = meanY - slope * meanX;
  const residuals = points.map(({ x, y }) => y - (meanY + slope * (x - meanX)));
  const scatter = total(residuals.map((r, i) => (weights[i] ?? 0) * r * r)) / (n - 2);
  const birge = stated ? Math.sqrt((scatter * sum) / n) / smallest : null;
  // Variance of a point of mean weight: as stated, or as the scatter shows it.
  const variance = stated ? (smallest * smallest * n) / sum : scatter;
  const slopeVariance = variance / sxx;
  const interceptVariance = variance / n + meanX * meanX * slopeVariance;
  const covariance = -meanX * slopeVariance;
  const product = Math.sqrt(interceptVariance * slopeVariance);
  return {
    intercept,
    slope,
    interceptUncertainty: Math.sqrt(interceptVariance),
    slopeUncertainty: Math.sqrt(slopeVariance),
    covariance,
    correlation: product > 0 ? covariance / product : null,
    residualDeviation: Math.sqrt(scatter),
    degreesOfFreedom: n - 2,
    weighting: stated ? 'by the points’ own uncertainties' : 'equal',
    chiSquared: birge === null ? null : birge * birge * (n - 2),
    birgeRatio: birge,
    residuals,
    leverages: points.map(({ x }, i) => (weights[i] ?? 0) * (1 / n + (x - meanX) ** 2 / sxx)),
    weights,
  };
}

function total(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

function allFinite(line: WeightedLine): boolean {
  return (
    Object.values(line).every((value) => typeof value !== 'number' || Number.isFinite(value)) &&
    line.residuals.every(Number.isFinite) &&
    line.leverages.every(Number.isFinite)
  );
}
