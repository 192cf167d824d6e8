import gammaln from '@stdlib/math-base-special-gammaln';
import { compute, type Outcome, whole, within } from '../findings/outcome.ts';
import { normalProbability, normalQuantile } from '../uncertainty/normal.ts';
import { chiSquareProbability, chiSquareQuantile } from './chi-square.ts';
import { legendreRule, risingRoot } from './quadrature.ts';

const NODES = 96;
const PRECISION = 1e-7;
/** Tails left out of an integral over a sample's deviation or mean. */
const TAIL = 1e-10;
const WIDEST = 6.5;
/** No factor is larger: two readings at 99.9 % confidence and coverage need about 3,500. */
const LARGEST = 5000;

function inputs(count: number, coverage: number, confidence: number) {
  return {
    n: whole('n', 'number of readings', count, [2, 1e6], 'at least two readings are needed'),
    p: within('p', 'part of all that is to be covered', coverage, [0.01, 0.9999], 'choose 0.95'),
    gamma: within('γ', 'confidence', confidence, [0.01, 0.9999], 'choose 0.95'),
  };
}

/**
 * One-sided tolerance factor: mean − k·s lies below a part of all with a confidence.
 *
 * Equation: k = t′(γ; n − 1, z_p·√n)/√n, t′ the quantile of the non-central t distribution.
 * @param count n, number of readings, whole, at least 2
 * @param coverage p, part of all readings above the limit, 1, above 0 and below 1
 * @param confidence γ, 1, above 0 and below 1
 * @returns k
 * @example oneSidedTolerance(10, 0.95, 0.95).value // 2.911
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.6.3; D. B. Owen, SCR-607 (1963)
 */
export function oneSidedTolerance(count: number, coverage: number, confidence: number): Outcome<number> {
  return compute(inputs(count, coverage, confidence), ({ n, p, gamma }) => {
    const { nodes, weights } = deviationRule(n - 1);
    const z = normalQuantile(p);
    const root = Math.sqrt(n);
    const kept = (k: number) =>
      nodes.reduce((sum, s, i) => sum + (weights[i] ?? 0) * normalProbability(root * (k * s - z)), 0);
    return risingRoot((k) => kept(k) - gamma, -LARGEST, LARGEST, PRECISION);
  });
}

/**
 * Two-sided tolerance factor, exact: mean ± k·s holds a part of all with a confidence.
 *
 * Equation: ∫ P(χ²_ν ≥ ν·r(x)²/k²)·√n·φ(x·√n) dx = γ with Φ(x + r) − Φ(x − r) = p, ν = n − 1.
 * @param count n, number of readings, whole, at least 2
 * @param coverage p, part of all readings inside, 1, above 0 and below 1
 * @param confidence γ, 1, above 0 and below 1
 * @returns k
 * @example twoSidedTolerance(10, 0.95, 0.95).value // 3.393
 * @source P. M. Berthouex and L. C. Brown, Statistics for Environmental Engineers, 2nd ed. (2002), Table 21.1
 */
export function twoSidedTolerance(count: number, coverage: number, confidence: number): Outcome<number> {
  return compute(inputs(count, coverage, confidence), ({ n, p, gamma }) => {
    const { nodes, weights } = legendreRule(NODES, 0, WIDEST);
    const reaches = nodes.map((z) => halfWidth(z / Math.sqrt(n), p));
    const density = nodes.map((z, i) => 2 * (weights[i] ?? 0) * normalDensity(z));
    const kept = (k: number) =>
      reaches.reduce(
        (sum, r, i) =>
          sum + (density[i] ?? 0) * (1 - chiSquareProbability(((n - 1) * r * r) / (k * k), n - 1)),
        0,
      );
    return risingRoot((k) => kept(k) - gamma, PRECISION, LARGEST, PRECISION);
  });
}

/** Half width of an interval round x that holds a part p of a standard normal variable. */
function halfWidth(x: number, p: number): number {
  return risingRoot((r) => normalProbability(x + r) - normalProbability(x - r) - p, 0, x + 12, 1e-10);
}

const normalDensity = (z: number) => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);

/** Rule over s = √(χ²_ν/ν), its density in the weights. */
function deviationRule(nu: number) {
  const end = (p: number) => Math.sqrt((chiSquareQuantile(p, nu).value ?? 0) / nu);
  const { nodes, weights } = legendreRule(NODES, end(TAIL), end(1 - TAIL));
  const constant = Math.LN2 + (nu / 2) * Math.log(nu / 2) - gammaln(nu / 2);
  return {
    nodes,
    weights: nodes.map(
      (s, i) => (weights[i] ?? 0) * Math.exp(constant + (nu - 1) * Math.log(s) - (nu / 2) * s * s),
    ),
  };
}
