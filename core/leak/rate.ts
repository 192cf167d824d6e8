/** What one joint has shown: leaks, and the years in which one would have been recorded. */
export interface Shown {
  readonly leaks: number;
  readonly years: number;
}

/** How often joints of a group leak, and how much they differ from one another. */
export interface GroupRate {
  /** Leaks per joint and year. */
  readonly mean: number;
  /** Gamma distribution of the rates of single joints; null where the joints do not differ more than chance makes them. */
  readonly spread: { readonly shape: number; readonly years: number } | null;
  readonly joints: number;
  readonly leaks: number;
  readonly years: number;
}

/** Joint-years below which a group's rate is not stated. Assumption of this program. */
export const LEAST_YEARS = 10;

/** Leaks put in where none is on record yet: the mean of Jeffreys' prior of a rate, so that a rate is never zero. */
const NONE_YET = 0.5;

/**
 * Rate at which joints of a group leak, with the spread of the single joints about it, from their own records.
 *
 * Equation: m = Σn/Σt, s² = Σt(n/t − m)²/Σt, A = s² − m·J/Σt; shape m²/A and years m/A where A > 0.
 * @param joints leaks and years of each joint, years at least 0; those without years are left out
 * @returns rate in leaks per joint and year; null with fewer than 10 joint-years on record
 * @example groupRate([{ leaks: 1, years: 10 }, { leaks: 0, years: 10 }]).mean // 0.05
 * @source R. J. Marshall, Mapping disease and mortality rates using empirical Bayes estimators, Applied Statistics 40
 * (1991) 283–294 (from memory); 1/2 where no leak is on record: Jeffreys' prior, Gelman and others, Bayesian Data
 * Analysis, 3rd ed., section 2.8 (from memory)
 */
export function groupRate(joints: readonly Shown[]): GroupRate | null {
  const followed = joints.filter(({ years }) => years > 0);
  const years = sum(followed.map((joint) => joint.years));
  if (!(years >= LEAST_YEARS)) return null;
  const leaks = sum(followed.map((joint) => joint.leaks));
  const counts = { joints: followed.length, leaks, years };
  if (leaks === 0) return { ...counts, mean: NONE_YET / years, spread: null };
  const mean = leaks / years;
  const scatter = sum(followed.map((joint) => joint.years * (joint.leaks / joint.years - mean) ** 2)) / years;
  // What chance alone scatters is taken off; the rest is how the joints differ.
  const between = scatter - (mean * followed.length) / years;
  if (!(between > mean * mean * 1e-9)) return { ...counts, mean, spread: null };
  return { ...counts, mean, spread: { shape: (mean * mean) / between, years: mean / between } };
}

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

/**
 * A rate after what one joint has shown.
 *
 * Equation: Gamma(a, b) and n leaks in t years give Gamma(a + n, b + t).
 * @param prior shape, above 0, and years, above 0
 * @param own leaks and years of the joint, both at least 0
 * @returns shape and years; their quotient is the mean rate per year
 * @example afterShown({ shape: 3, years: 5 }, { leaks: 3, years: 2 }).shape // 6
 * @source Gelman and others, Bayesian Data Analysis, 3rd ed., section 2.6, conjugate Poisson model (from memory)
 */
export function afterShown(
  prior: { readonly shape: number; readonly years: number },
  own: Shown,
): { readonly shape: number; readonly years: number } {
  return { shape: prior.shape + own.leaks, years: prior.years + own.years };
}

/**
 * Probability that a joint leaks at least once within a time.
 *
 * Equation: P = 1 − (b/(b + f·h))^a with Gamma(a, b) after the joint's own record; 1 − e^(−m·f·h) where joints do not
 * differ.
 * @param group rate of the joint's group
 * @param own leaks and years of the joint
 * @param years time ahead, in the unit of the group's years, at least 0
 * @param factor of unit 1, above 0, by which what is known of the joint now multiplies its rate
 * @returns probability, 0 to 1
 * @example leakProbability({ mean: 0.1, spread: null }, { leaks: 0, years: 5 }, 1, 1) // 0.0952
 * @source Poisson model with a gamma rate: Gelman and others, Bayesian Data Analysis, 3rd ed., section 2.6 (from memory)
 */
export function leakProbability(
  group: Pick<GroupRate, 'mean' | 'spread'>,
  own: Shown,
  years: number,
  factor: number,
): number {
  const exposed = factor * years;
  if (group.spread === null) return -Math.expm1(-group.mean * exposed);
  const { shape, years: weight } = afterShown(group.spread, own);
  return -Math.expm1(-shape * Math.log1p(exposed / weight));
}
