import { compute, type Outcome, positive, type RelationInput, within } from '../findings/outcome.ts';

/**
 * Whether a contributor is the same for every bolt of the joint (the tool's calibration, the lubricant batch) or is
 * drawn anew for each (scatter of friction, repeatability of the tool).
 */
export type Scope = 'common' | 'per bolt';

/** One input quantity of a budget. */
export interface Contributor {
  readonly name: string;
  /** Standard uncertainty u(x) in the input's unit; null is not known. */
  readonly u: number | null;
  /** ∂y/∂x, result's unit per input's unit. */
  readonly sensitivity: number;
  readonly scope: Scope;
  /** Evaluation: certificate, repeated readings, class of the gauge … */
  readonly basis: string;
  /** Degrees of freedom of u; null counts as unlimited. */
  readonly degreesOfFreedom: number | null;
}

/** One line of a computed budget. */
export interface BudgetLine {
  readonly name: string;
  readonly scope: Scope;
  readonly basis: string;
  /** |∂y/∂x|·u(x), in the result's unit. */
  readonly contribution: number;
  /** Part of the variance, 0 to 1; the shares add up to 1 unless nothing varies. */
  readonly share: number;
}

/** Correlation of two contributors of the same scope, by their names. */
export interface Correlation {
  readonly first: string;
  readonly second: string;
  /** r, −1 to 1 */
  readonly r: number;
}

/** Standard uncertainty of a result, first order. */
export interface Budget {
  readonly lines: readonly BudgetLine[];
  /** Part of the variance from correlations; negative when they cancel. 0 for independent contributors. */
  readonly correlationShare: number;
  /** uc(y) of a single bolt. */
  readonly combined: number;
  /** Part common to all bolts. */
  readonly common: number;
  /** Part drawn anew for each bolt. */
  readonly perBolt: number;
  /** Effective degrees of freedom; null when unlimited, or when contributors are correlated. */
  readonly degreesOfFreedom: number | null;
}

/**
 * Uncertainty budget of a result, first order.
 *
 * Equation: uc² = Σ(ci·ui)² + 2·ΣΣ ci·cj·ui·uj·rij; share = (ci·ui)²/uc²; νeff = uc⁴/Σ((ci·ui)⁴/νi).
 * @param contributors every input quantity, u at least 0, degrees of freedom above 0
 * @param correlations pairs that are not independent; each within one scope
 * @returns lines with shares, common and per-bolt parts; missing u named with what to evaluate
 * @example budget([{ name: 'torque', u: 2, sensitivity: 1, scope: 'common', basis: 'certificate', degreesOfFreedom: null }]).value?.combined // 2
 * @source JCGM 100:2008 (GUM), equations (10), (13) and (G.2b)
 */
export function budget(
  contributors: readonly Contributor[],
  correlations: readonly Correlation[] = [],
): Outcome<Budget> {
  const inputs = [...inputsOf(contributors), ...pairsOf(contributors, correlations)];
  const relation = () => {
    const parts = contributors.map((one) => ({ ...one, part: one.sensitivity * (one.u ?? 0) }));
    const varianceOf = (scope: Scope | null) => {
      const chosen = parts.filter((one) => scope === null || one.scope === scope);
      const partOf = (name: string) => chosen.find((one) => one.name === name)?.part ?? 0;
      const squares = chosen.reduce((sum, { part }) => sum + part * part, 0);
      const products = correlations.reduce(
        (sum, { first, second, r }) => sum + 2 * r * partOf(first) * partOf(second),
        0,
      );
      // Parts that cancel leave rounding noise, which may lie below zero.
      const sum = squares + products;
      return { products, variance: Math.abs(sum) <= squares * 1e-14 ? 0 : sum };
    };
    const { products, variance } = varianceOf(null);
    const shareOf = (part: number) => (variance === 0 ? 0 : part / variance);
    return {
      lines: parts.map(({ name, scope, basis, part }) => ({
        name,
        scope,
        basis,
        contribution: Math.abs(part),
        share: shareOf(part * part),
      })),
      correlationShare: shareOf(products),
      combined: Math.sqrt(variance),
      common: Math.sqrt(varianceOf('common').variance),
      perBolt: Math.sqrt(varianceOf('per bolt').variance),
      degreesOfFreedom: correlations.length > 0 ? null : effectiveDegrees(parts, variance),
    };
  };
  return compute({}, relation, inputs);
}

function effectiveDegrees(
  parts: readonly { readonly part: number; readonly degreesOfFreedom: number | null }[],
  variance: number,
): number | null {
  const sum = parts.reduce(
    (total, { part, degreesOfFreedom }) =>
      total + (degreesOfFreedom === null ? 0 : part ** 4 / degreesOfFreedom),
    0,
  );
  return sum === 0 ? null : variance ** 2 / sum;
}

/** A pair has to name two contributors that exist and that are drawn together. */
function pairsOf(
  contributors: readonly Contributor[],
  correlations: readonly Correlation[],
): RelationInput[] {
  const scopeOf = (name: string) => contributors.find((one) => one.name === name)?.scope;
  return correlations.map(({ first, second, r }) => {
    const scope = scopeOf(first);
    const together = first !== second && scope !== undefined && scope === scopeOf(second);
    return within(
      'r',
      `correlation of ${first} and ${second}, two contributors of one scope`,
      together ? r : Number.NaN,
      [-1, 1],
      'name two contributors of one scope',
    );
  });
}

function inputsOf(contributors: readonly Contributor[]): RelationInput[] {
  const count = contributors.length;
  return [
    within('n', 'number of contributors', count, [1, 1000], 'name what the result depends on'),
    ...contributors.flatMap(({ name, u, sensitivity, basis, degreesOfFreedom }) => [
      within('u', `standard uncertainty of ${name}`, u, [0, Number.MAX_VALUE], `evaluate it: ${basis}`),
      within(
        'c',
        `sensitivity to ${name}`,
        sensitivity,
        [-Number.MAX_VALUE, Number.MAX_VALUE],
        'check the relation',
      ),
      positive('ν', `degrees of freedom of ${name}`, degreesOfFreedom ?? 1, 'count the readings behind it'),
    ]),
  ];
}

/** A relative contributor of the bolt load: of the torque (numerator) or of the nut factor (denominator). */
export interface LoadContributor {
  readonly name: string;
  readonly of: 'torque' | 'nut factor';
  /** Standard uncertainty over the value, at least 0; null is not known. */
  readonly relative: number | null;
  readonly scope: Scope;
  readonly basis: string;
  readonly degreesOfFreedom: number | null;
}

/**
 * Relative budget of the bolt load.
 *
 * Equation: F = T/(K·D): (u(F)/F)² = Σ(u(T)/T)² + Σ(u(K)/K)².
 * @param contributors relative uncertainties of torque and nut factor
 * @returns budget in parts of F; multiply by F for newtons
 * @example loadBudget([{ name: 'tool', of: 'torque', relative: 0.02, scope: 'common', basis: '', degreesOfFreedom: null
 * }, { name: 'K', of: 'nut factor', relative: 0.1, scope: 'per bolt', basis: '', degreesOfFreedom: null
 * }]).value?.combined // 0.1020
 * @source JCGM 100:2008 (GUM), equation (12)
 */
export function loadBudget(contributors: readonly LoadContributor[]): Outcome<Budget> {
  return budget(
    contributors.map(({ name, of, relative, scope, basis, degreesOfFreedom }) => ({
      name,
      u: relative,
      sensitivity: of === 'torque' ? 1 : -1,
      scope,
      basis,
      degreesOfFreedom,
    })),
  );
}

/**
 * Relative uncertainty of the mean load of a joint.
 *
 * Equation: u² = ucommon² + uper-bolt²/N.
 * @param parts common and per-bolt parts of a budget
 * @param boltCount N, whole, at least 1
 * @returns u of the mean, in the unit of the parts
 * @example meanUncertainty({ common: 0.02, perBolt: 0.1 }, 12).value // 0.0351
 * @source JCGM 100:2008 (GUM), equation (10), for a mean of N with a common part
 */
export function meanUncertainty(
  parts: Pick<Budget, 'common' | 'perBolt'>,
  boltCount: number | null,
): Outcome<number> {
  return compute(
    {
      common: within('ucommon', 'common part', parts.common, [0, Number.MAX_VALUE], 'compute the budget'),
      perBolt: within(
        'uper-bolt',
        'per-bolt part',
        parts.perBolt,
        [0, Number.MAX_VALUE],
        'compute the budget',
      ),
      count: within('N', 'number of bolts', boltCount, [1, 400], 'count the bolts'),
    },
    (v) => Math.sqrt(v.common ** 2 + v.perBolt ** 2 / v.count),
  );
}
