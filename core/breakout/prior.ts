import { boltScatter, type ClassFit, fitClass, type OpeningSummary, type Prior } from './model.ts';

/** Middle breakout ratio while nothing is known; a stated value, no published source is known. */
export const USUAL_RATIO = 1.2;

/**
 * While a plant has no openings: the worst of 24 bolts of a joint stays at or under 2.5 times the installed torque in 95
 * of 100 openings (common practice), about a middle of 1.2. `scale` is what gives that 2.5; a test holds it there.
 */
export const COMMON_PRIOR: Prior = {
  mean: Math.log(USUAL_RATIO),
  ratio: 1,
  shape: 3,
  scale: 0.0380426379,
  basis:
    'common practice: the worst of 24 bolts takes up to 2.5 times the installed torque in 95 of 100 openings',
};

/** Joints a class needs before it says anything about the other classes of the plant. */
const TELLING_JOINTS = 2;
/** Classes without which a plant says nothing about the spread between its classes. */
const TELLING_CLASSES = 2;
/** The common prior counts as so many classes among the plant's own. */
const COMMON_WEIGHT = 2;
const MOST_SHAPE = 6;

/**
 * Prior of a class from the other classes of the same plant, the common one counted among them.
 *
 * Equation: m0 = mean of the classes' means; κ0 = (ν·ω² + Σ(m − m0)²)/(ν + k)/σ̄²; σ̄² = exp of the mean of ln σ²; α from its spread.
 * @param classes openings of each class
 * @returns prior; the common one while fewer than two classes have two joints
 * @example plantPrior([]).shape // 3
 * @source empirical Bayes; B. P. Carlin and T. A. Louis, Bayesian Methods for Data Analysis, 3rd ed. (2009), chapter 5 (from memory)
 */
export function plantPrior(classes: readonly (readonly OpeningSummary[])[]): Prior {
  const telling = classes.flatMap((openings) => {
    const fit = fitClass(openings, COMMON_PRIOR);
    return fit.jointCount < TELLING_JOINTS ? [] : [summaryOf(fit, openings)];
  });
  if (telling.length < TELLING_CLASSES) return COMMON_PRIOR;
  const common = COMMON_PRIOR.scale / (COMMON_PRIOR.shape - 1);
  const count = telling.length;
  const logs = telling.map(({ variance }) => Math.log(variance));
  const meanLog = average([...logs, Math.log(common)]);
  const variance = Math.exp(meanLog);
  const mean = average([...telling.map((one) => one.mean), COMMON_PRIOR.mean]);
  const between =
    (COMMON_WEIGHT * COMMON_PRIOR.ratio * common +
      telling.reduce((sum, one) => sum + (one.mean - mean) ** 2, 0)) /
    (COMMON_WEIGHT + count);
  const spread =
    (COMMON_WEIGHT / COMMON_PRIOR.shape + logs.reduce((sum, log) => sum + (log - meanLog) ** 2, 0)) /
    (COMMON_WEIGHT + count);
  // ln σ² of an inverse gamma variable has a variance of about 1/α.
  const shape = Math.min(MOST_SHAPE, Math.max(COMMON_PRIOR.shape - 1, 1 / spread));
  return {
    mean,
    ratio: between / variance,
    shape,
    scale: variance * shape,
    basis: `${count} classes of this plant with at least ${TELLING_JOINTS} opened joints each, beside common practice`,
  };
}

function summaryOf(fit: ClassFit, openings: readonly OpeningSummary[]) {
  return {
    mean: fit.parts.reduce((sum, part) => sum + part.weight * part.mean, 0),
    variance: boltScatter(fit, openings).deviation ** 2,
  };
}

const average = (values: readonly number[]) => values.reduce((sum, x) => sum + x, 0) / values.length;
