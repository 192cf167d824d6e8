/** What one opening adds: ln R of its bolts that turned, as they are summed up. */
export interface OpeningSummary {
  readonly joint: string;
  readonly count: number;
  readonly mean: number;
  /** Sum of squares about the mean. */
  readonly squares: number;
}

/** μ | σ² ~ N(mean, ratio·σ²); σ² ~ inverse gamma(shape, scale). */
export interface Prior {
  readonly mean: number;
  readonly ratio: number;
  readonly shape: number;
  readonly scale: number;
  /** Where it comes from, for a reader. */
  readonly basis: string;
}

/** Variances over that between bolts: between joints λa, and between openings of one joint λo. */
export interface VarianceRatios {
  readonly joints: number;
  readonly openings: number;
}

/** Posterior for one pair of variance ratios, with its weight among the pairs. */
export interface FitPart extends VarianceRatios {
  readonly weight: number;
  /** Posterior of the class's mean: its centre, and its precision in units of 1/σ². */
  readonly mean: number;
  readonly precision: number;
  /** β of σ². */
  readonly scale: number;
}

/** A class as its openings leave it. */
export interface ClassFit {
  /** α of σ², the same for every part. */
  readonly shape: number;
  readonly parts: readonly FitPart[];
  readonly jointCount: number;
  readonly openingCount: number;
  readonly readingCount: number;
}

/** Ratios that are tried; half an order apart, they leave the shape of what comes out alone. */
const RATIOS = [0.02, 0.08, 0.3, 1, 3, 9] as const;
/** Ratios are about so much before anything is known, within about a factor of four and a half. */
const USUAL_RATIO = 0.5;
const RATIO_SPREAD = 1.5;
/** Parts that weigh less than this change nothing that is shown. */
const LEAST_WEIGHT = 2e-3;

const PAIRS = RATIOS.flatMap((joints) =>
  RATIOS.map((openings) => ({
    ratios: { joints, openings },
    logPrior: logPrior(joints) + logPrior(openings),
  })),
);

function logPrior(ratio: number): number {
  return -((Math.log(ratio / USUAL_RATIO) / RATIO_SPREAD) ** 2) / 2;
}

/**
 * Sums one opening up.
 *
 * Equation: n, x̄ = Σ ln R/n and Σ(ln R − x̄)².
 * @param joint joint it is of
 * @param ratios R of the bolts that turned, 1, above 0
 * @returns the summary; null without a bolt that turned
 * @example openingSummary('J', [1, Math.E])?.mean // 0.5
 * @source sufficient statistics of a normal sample
 */
export function openingSummary(joint: string, ratios: readonly number[]): OpeningSummary | null {
  const logs = ratios.filter((ratio) => ratio > 0 && Number.isFinite(ratio)).map(Math.log);
  if (logs.length === 0) return null;
  const mean = logs.reduce((sum, x) => sum + x, 0) / logs.length;
  return {
    joint,
    count: logs.length,
    mean,
    squares: logs.reduce((sum, x) => sum + (x - mean) ** 2, 0),
  };
}

/**
 * Posterior of a class of openings: ln R = μ + joint + opening + bolt, all normal, the variances of joints and openings
 * in ratio to that of bolts. For each pair of ratios the normal–inverse-gamma prior is conjugate; the pairs are weighed
 * by how well they explain the openings.
 *
 * Equation: y ~ N(μ, σ²·(I + λo·openings + λa·joints)); p(λ | y) ∝ p(λ)·p(y | λ).
 * @param openings openings of the class, in any order
 * @param prior of the class's mean and of σ²
 * @returns weighted posteriors; the prior itself, spread over the ratios, without an opening
 * @example fitClass([], { mean: 0, ratio: 1, shape: 3, scale: 0.1, basis: '' }).shape // 3
 * @source A. Gelman and others, Bayesian Data Analysis, 3rd ed. (2013), 3.3 and 5.4 (from memory); variance ratios integrated on a grid
 */
export function fitClass(openings: readonly OpeningSummary[], prior: Prior): ClassFit {
  const joints = Map.groupBy(openings, ({ joint }) => joint);
  const readingCount = openings.reduce((sum, { count }) => sum + count, 0);
  const shape = prior.shape + readingCount / 2;
  const byJoint = [...joints.values()];
  const fitted = PAIRS.map((pair) => {
    const { log, part } = posteriorPart(byJoint, prior, pair.ratios);
    return { log: log + pair.logPrior, part };
  });
  const top = Math.max(...fitted.map(({ log }) => log));
  const weighed = fitted.map(({ log, part }) => ({ ...part, weight: Math.exp(log - top) }));
  const all = weighed.reduce((sum, { weight }) => sum + weight, 0);
  const kept = weighed.filter(({ weight }) => weight / all >= LEAST_WEIGHT);
  const sum = kept.reduce((total, { weight }) => total + weight, 0);
  return {
    shape,
    parts: kept.map((part) => ({ ...part, weight: part.weight / sum })),
    jointCount: joints.size,
    openingCount: openings.length,
    readingCount,
  };
}

/**
 * Conjugate posterior for given ratios of variances.
 *
 * Equation: μ | σ², y ~ N(m, σ²/(1/κ0 + V)); σ² | y ~ inverse gamma(α0 + n/2, β0 + Q/2); log p(y) up to a constant beside it.
 * @param joints openings of each joint
 * @param prior of the class's mean and of σ²
 * @param ratios λa and λo; both 0 for bolts without anything in common
 * @returns posterior and the logarithm of its marginal likelihood, up to a constant
 * @example posteriorPart([], { mean: 0, ratio: 1, shape: 3, scale: 0.1, basis: '' }, { joints: 1, openings: 1 }).part.scale // 0.1
 * @source P. D. Hoff, A First Course in Bayesian Statistical Methods (2009), 5.3 (from memory), with correlated readings
 */
export function posteriorPart(
  joints: readonly (readonly OpeningSummary[])[],
  prior: Prior,
  ratios: VarianceRatios,
): { readonly log: number; readonly part: Omit<FitPart, 'weight'> } {
  let precision = 0;
  let sum = 0;
  let square = 0;
  let readings = 0;
  let determinant = 0;
  for (const openings of joints) {
    const own = jointOwn(openings, ratios.openings);
    const weight = own.weight / (1 + ratios.joints * own.weight);
    precision += weight;
    sum += weight * own.mean;
    square += own.squares + weight * own.mean * own.mean;
    determinant += own.determinant + Math.log1p(ratios.joints * own.weight);
    for (const { count, squares } of openings) {
      readings += count;
      square += squares;
    }
  }
  const first = 1 / prior.ratio;
  const total = precision + first;
  const mean = (sum + first * prior.mean) / total;
  // Written so that rounding can't turn it negative.
  const level = precision > 0 ? sum / precision : 0;
  const spread = Math.max(0, square - precision * level * level);
  const shift = ((precision * first) / total) * (level - prior.mean) ** 2;
  const scale = prior.scale + (spread + shift) / 2;
  determinant += Math.log1p(prior.ratio * precision);
  return {
    log: -determinant / 2 - (prior.shape + readings / 2) * Math.log(scale),
    part: { ...ratios, mean, precision: total, scale },
  };
}

/** Openings of one joint put together: precision of its level, the level, and what is left over. */
function jointOwn(openings: readonly OpeningSummary[], ratio: number) {
  let weight = 0;
  let sum = 0;
  let determinant = 0;
  for (const { count, mean } of openings) {
    const own = count / (1 + count * ratio);
    weight += own;
    sum += own * mean;
    determinant += Math.log1p(count * ratio);
  }
  const mean = weight > 0 ? sum / weight : 0;
  let squares = 0;
  for (const one of openings) {
    squares += (one.count / (1 + one.count * ratio)) * (one.mean - mean) ** 2;
  }
  return { weight, mean, squares, determinant };
}

/** One part of what is expected of a joint's next opening: its level is normal about `centre`, given σ². */
export interface ExpectedPart {
  readonly weight: number;
  readonly centre: number;
  /** Variance of the next opening's middle over σ². */
  readonly level: number;
  readonly scale: number;
}

export interface Expected {
  readonly shape: number;
  readonly parts: readonly ExpectedPart[];
}

/**
 * What is expected of the next opening of a joint: its class, and its own openings where it had any. They are among the
 * openings the class was fitted to.
 *
 * Equation: θ = μ + a; s = λa·W/(1 + λa·W); centre (1 − s)·m + s·ȳ; level/σ² = (1 − s)²/precision + λa·(1 − s) + λo.
 * @param fit class of the joint
 * @param own earlier openings of the joint in this class
 * @returns weighted parts of the level of the next opening
 * @example expectedOpening(fitClass([], { mean: 0, ratio: 1, shape: 3, scale: 0.1, basis: '' }), []).parts[0]?.centre // 0
 * @source A. Gelman and others, Bayesian Data Analysis, 3rd ed. (2013), 5.4 (from memory)
 */
export function expectedOpening(fit: ClassFit, own: readonly OpeningSummary[]): Expected {
  return {
    shape: fit.shape,
    parts: fit.parts.map((part) => {
      const { weight: precision, mean } = jointOwn(own, part.openings);
      const shrink = (part.joints * precision) / (1 + part.joints * precision);
      const rest = 1 - shrink;
      return {
        weight: part.weight,
        centre: rest * part.mean + shrink * mean,
        level: (rest * rest) / part.precision + part.joints * rest + part.openings,
        scale: part.scale,
      };
    }),
  };
}

/** Deviation from bolt to bolt and how much bolts of one joint go together, as the class shows them. */
export interface BoltScatter {
  readonly deviation: number;
  readonly correlation: number;
  /** Readings one opening after another would have to give if they were independent. */
  readonly effective: number;
}

/**
 * Bolt-to-bolt deviation, correlation within a joint, and what the readings of a class are worth as independent ones.
 *
 * Equation: σ² = β/(α − 1); ρ = (λa + λo)/(1 + λa + λo); n_eff = Σ n/(1 + (n − 1)·ρ) over openings.
 * @param fit class
 * @param openings the openings it was fitted to
 * @returns deviation of ln R, correlation and effective number
 * @example boltScatter(fitClass([], { mean: 0, ratio: 1, shape: 3, scale: 0.08, basis: '' }), []).deviation // 0.2
 * @source L. Kish, Survey Sampling (1965), design effect of clusters (from memory)
 */
export function boltScatter(fit: ClassFit, openings: readonly OpeningSummary[]): BoltScatter {
  let variance = 0;
  let correlation = 0;
  for (const { weight, scale, joints, openings: ratio } of fit.parts) {
    variance += (weight * scale) / (fit.shape - 1);
    correlation += (weight * (joints + ratio)) / (1 + joints + ratio);
  }
  return {
    deviation: Math.sqrt(variance),
    correlation,
    effective: effectiveCount(
      openings.map(({ count }) => count),
      correlation,
    ),
  };
}

/**
 * Independent readings that correlated ones are worth.
 *
 * Equation: n_eff = Σ n/(1 + (n − 1)·ρ).
 * @param counts n, readings of each opening, whole, at least 0
 * @param correlation ρ between readings of one opening, 1, 0 to 1
 * @returns effective number
 * @example effectiveCount([24], 0.5) // 1.92
 * @source L. Kish, Survey Sampling (1965), design effect of clusters (from memory)
 */
export function effectiveCount(counts: readonly number[], correlation: number): number {
  return counts.reduce((sum, n) => (n === 0 ? sum : sum + n / (1 + (n - 1) * correlation)), 0);
}
