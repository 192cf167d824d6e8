import gammaQuantile from '@stdlib/math-base-special-gammaincinv';
import { legendreRule } from '../statistics/quadrature.ts';
import { normalProbability, normalQuantile } from '../uncertainty/normal.ts';
import type { Expected } from './model.ts';

/** Nodes of σ²: the more readings are behind it, the fewer are needed. */
const scaleNodes = (shape: number) => (shape < 12 ? 14 : shape < 60 ? 8 : 5);
/** Steps of the joint's level: the integrand is smooth over about half a deviation of a bolt. */
const levelStep = (root: number) => Math.min(0.2, 0.4 / root);
const LEVEL_REACH = 6.4;
const FARTHEST = 8;

/** Table of the worst bolt's probability on a normal scale: along u/√(1 + v) and ln v. */
const ALONG = { from: -6, to: 12, step: 0.1 } as const;
const ACROSS = { from: Math.log(1e-3), to: Math.log(200), count: 40 } as const;
const COLUMNS = Math.round((ALONG.to - ALONG.from) / ALONG.step) + 1;
const ROW_STEP = (ACROSS.to - ACROSS.from) / (ACROSS.count - 1);

/**
 * Probability that the largest of N standard normal bolts about a shared normal level stays at or below a value.
 *
 * Equation: G(u) = ∫ Φ(u − z·√v)^N·φ(z) dz.
 * @param u value over σ, any number
 * @param shared v, variance of the shared level over that of a bolt, 1, at least 0
 * @param bolts N, whole, at least 1
 * @returns probability
 * @example worstOf(2.18, 0, 24) // 0.702
 * @source order statistics of equally correlated normal variables; Y. L. Tong, The Multivariate Normal Distribution (1990), 8.3 (from memory)
 */
export function worstOf(u: number, shared: number, bolts: number): number {
  const root = Math.sqrt(shared);
  const step = levelStep(root);
  let sum = 0;
  let all = 0;
  for (let z = -LEVEL_REACH; z <= LEVEL_REACH + 1e-9; z += step) {
    const density = Math.exp((-z * z) / 2);
    all += density;
    sum += density * normalProbability(u - root * z) ** bolts;
  }
  return sum / all;
}

const tables = new Map<number, Float64Array>();

function tableFor(bolts: number): Float64Array {
  const known = tables.get(bolts);
  if (known !== undefined) return known;
  const table = new Float64Array(ACROSS.count * COLUMNS);
  for (let row = 0; row < ACROSS.count; row++) {
    const shared = Math.exp(ACROSS.from + row * ROW_STEP);
    for (let column = 0; column < COLUMNS; column++) {
      const u = (ALONG.from + column * ALONG.step) * Math.sqrt(1 + shared);
      const z = normalQuantile(worstOf(u, shared, bolts));
      table[row * COLUMNS + column] = Math.min(FARTHEST, Math.max(-FARTHEST, z));
    }
  }
  tables.set(bolts, table);
  return table;
}

/** Normal score of the worst bolt's probability, between the table's places on straight lines. */
function worstScore(u: number, shared: number, bolts: number, table: Float64Array): number {
  if (bolts === 1) return u / Math.sqrt(1 + shared);
  const row = Math.min(
    ACROSS.count - 1,
    Math.max(0, (Math.log(Math.max(shared, 1e-9)) - ACROSS.from) / ROW_STEP),
  );
  const column = Math.min(COLUMNS - 1, Math.max(0, (u / Math.sqrt(1 + shared) - ALONG.from) / ALONG.step));
  const top = Math.min(ACROSS.count - 2, Math.floor(row));
  const left = Math.min(COLUMNS - 2, Math.floor(column));
  const down = row - top;
  const right = column - left;
  const at = top * COLUMNS + left;
  const upper = (table[at] ?? 0) * (1 - right) + (table[at + 1] ?? 0) * right;
  const lower = (table[at + COLUMNS] ?? 0) * (1 - right) + (table[at + COLUMNS + 1] ?? 0) * right;
  return upper * (1 - down) + lower * down;
}

/** What a forecast is asked about: any one bolt, the hardest of all, or the level the bolts lie about. */
export type About =
  | { readonly kind: 'worst'; readonly bolts: number }
  | { readonly kind: 'one bolt' | 'middle' };

const NO_TABLE = new Float64Array(0);

/**
 * Probability that ln R of one bolt, of the worst bolt or of the joint's middle stays at or below a value.
 *
 * Equation: F(x) = Σ w·∫ G((x − m)·√(γ/β); v, N)·p(γ) dγ with γ ~ gamma(α, 1) and σ² = β/γ.
 * @param expected what is expected of the next opening
 * @param about which of them
 * @returns function from ln R, any number, to a probability
 * @example expectedProbability({ shape: 500, parts: [{ weight: 1, centre: 0, level: 1, scale: 500 }] }, { kind: 'one bolt' })(0) // 0.5
 * @source posterior predictive distribution; A. Gelman and others, Bayesian Data Analysis, 3rd ed. (2013), 3.3 (from memory)
 */
export function expectedProbability(expected: Expected, about: About): (logRatio: number) => number {
  const { nodes, weights } = scaleRule(expected.shape);
  const bolts = about.kind === 'worst' ? about.bolts : 1;
  const table = bolts > 1 ? tableFor(bolts) : NO_TABLE;
  const parts = expected.parts.map((part) => ({ ...part, root: 1 / Math.sqrt(part.scale) }));
  return (x) => {
    let sum = 0;
    for (const { weight, centre, level, root } of parts) {
      const apart = (x - centre) * root;
      for (let k = 0; k < nodes.length; k++) {
        const u = apart * (nodes[k] ?? 0);
        const score = about.kind === 'middle' ? u / Math.sqrt(level) : worstScore(u, level, bolts, table);
        sum += weight * (weights[k] ?? 0) * normalProbability(score);
      }
    }
    return sum;
  };
}

const scaleRules = new Map<number, { nodes: readonly number[]; weights: readonly number[] }>();
const MOST_RULES = 2000;

/** √γ at equal steps of probability, by Gauss–Legendre. */
function scaleRule(shape: number) {
  const known = scaleRules.get(shape);
  if (known !== undefined) return known;
  const { nodes, weights } = legendreRule(scaleNodes(shape), 0, 1);
  const rule = { nodes: nodes.map((p) => Math.sqrt(gammaQuantile(p, shape))), weights };
  if (scaleRules.size >= MOST_RULES) scaleRules.clear();
  scaleRules.set(shape, rule);
  return rule;
}

/**
 * Finds the ln R that what happens stays under with a probability.
 *
 * Equation: F(x) = p.
 * @param probability F, of `expectedProbability`
 * @param expected the same expectation, for where to look
 * @param p 1, above 0 and below 1
 * @returns x, ln R
 * @example expectedQuantile(normalProbability, { shape: 1, parts: [{ weight: 1, centre: 0, level: 0, scale: 1 }] }, 0.975) // 1.95996
 * @source inversion of a distribution by regula falsi after Illinois
 */
export function expectedQuantile(
  probability: (logRatio: number) => number,
  { shape, parts }: Expected,
  p: number,
): number {
  const centre = parts.reduce((sum, part) => sum + part.weight * part.centre, 0);
  const wide = Math.sqrt(
    parts.reduce((sum, part) => sum + (part.weight * part.scale * (1 + part.level)) / shape, 0),
  );
  let low = centre - 2 * wide;
  let high = centre + 3 * wide;
  let atLow = probability(low) - p;
  let atHigh = probability(high) - p;
  for (let tries = 0; tries < 60 && atLow > 0; tries++) {
    [high, atHigh] = [low, atLow];
    low -= 2 * wide;
    atLow = probability(low) - p;
  }
  for (let tries = 0; tries < 60 && atHigh < 0; tries++) {
    [low, atLow] = [high, atHigh];
    high += 2 * wide;
    atHigh = probability(high) - p;
  }
  let side = 0;
  for (let tries = 0; tries < 60 && high - low > 1e-5; tries++) {
    const next = (low * atHigh - high * atLow) / (atHigh - atLow);
    const at = probability(next) - p;
    if (Math.abs(at) < 1e-7) return next;
    if (at < 0) {
      [low, atLow] = [next, at];
      if (side === -1) atHigh /= 2;
      side = -1;
    } else {
      [high, atHigh] = [next, at];
      if (side === 1) atLow /= 2;
      side = 1;
    }
  }
  return (low + high) / 2;
}
