import type { RingJoint } from './bolts.ts';
import { simulate, type TighteningStep } from './simulate.ts';

/** Loads measured on the bolts after a step, by stretch or ultrasound; null for a bolt that was not measured. */
export interface MeasuredLoads {
  /** Step after which they were measured, counted from 0. */
  readonly afterStep: number;
  /** N, bolt 1 first. */
  readonly loads: readonly (number | null)[];
}

/** Gasket stiffness that makes the model fit what was measured. */
export interface FittedGasket {
  /** k, N/m per m. */
  readonly foundation: number;
  /** Range of k whose misfit is not significantly larger, 95 %; an end at the edge of the search is open. */
  readonly interval: readonly [number, number];
  readonly open: readonly [boolean, boolean];
  /** Standard deviation of measured less modelled, N. */
  readonly residual: number;
  readonly measurements: number;
}

/** Search reaches so many times below and above the stiffness that was stated. */
const REACH = 30;
const PLACES = 61;
/** Four measurements are the least a spread can be told from. */
const NEEDED = 4;
/** 95 % of chi-square with one degree of freedom. */
const CHI_SQUARE = 3.841;

/**
 * Gasket stiffness that fits measured loads best, all else as stated.
 *
 * Equation: k = arg min S(k), S = Σ(F_measured − F_model(k))²; interval: S(k) ≤ S(1 + χ²₀.₉₅(1)/(n − 1)).
 * @param joint ring joint with the stiffness stated so far, above 0
 * @param steps what was done, from hand-tight
 * @param measured loads after one or more of the steps
 * @returns stiffness with its range; null below four measurements
 * @example fitGasket(ringJoint, [], []) // null
 * @source profile likelihood of normal errors; Seber and Wild, Nonlinear Regression (1989), 5.2 (from memory)
 */
export function fitGasket(
  joint: RingJoint,
  steps: readonly TighteningStep[],
  measured: readonly MeasuredLoads[],
): FittedGasket | null {
  const count = measured.reduce((sum, { loads }) => sum + loads.filter((load) => load !== null).length, 0);
  if (count < NEEDED) return null;
  const misfit = (foundation: number) =>
    misfitOf(simulate({ ...joint, gasket: { ...joint.gasket, foundation } }, steps), measured);
  const scan = Array.from({ length: PLACES }, (_, place) => {
    const foundation = joint.gasket.foundation * REACH ** ((2 * place) / (PLACES - 1) - 1);
    return { foundation, misfit: misfit(foundation) };
  });
  const place = scan.reduce(
    (best, point, index) => (point.misfit < (scan[best]?.misfit ?? 0) ? index : best),
    0,
  );
  const foundation = goldenSection(
    misfit,
    scan[Math.max(0, place - 1)]?.foundation ?? joint.gasket.foundation,
    scan[Math.min(PLACES - 1, place + 1)]?.foundation ?? joint.gasket.foundation,
  );
  const least = misfit(foundation);
  const allowed = least * (1 + CHI_SQUARE / (count - 1));
  const edge = (outwards: readonly { readonly foundation: number; readonly misfit: number }[]) => {
    const outside = outwards.find((point) => point.misfit > allowed);
    return outside === undefined ? null : crossing(misfit, allowed, foundation, outside.foundation);
  };
  const from = edge(scan.filter((point) => point.foundation < foundation).toReversed());
  const to = edge(scan.filter((point) => point.foundation > foundation));
  return {
    foundation,
    interval: [from ?? joint.gasket.foundation / REACH, to ?? joint.gasket.foundation * REACH],
    open: [from === null, to === null],
    residual: Math.sqrt(least / (count - 1)),
    measurements: count,
  };
}

function misfitOf({ results }: ReturnType<typeof simulate>, measured: readonly MeasuredLoads[]): number {
  let sum = 0;
  for (const { afterStep, loads } of measured) {
    const modelled = results[afterStep]?.loads ?? [];
    loads.forEach((load, bolt) => {
      if (load !== null) sum += (load - (modelled[bolt] ?? 0)) ** 2;
    });
  }
  return sum;
}

/** Stiffness between one inside and one outside at which the misfit reaches what is allowed. */
function crossing(value: (x: number) => number, allowed: number, inside: number, outside: number): number {
  let near = Math.log(inside);
  let far = Math.log(outside);
  while (Math.abs(far - near) > PRECISION) {
    const middle = (near + far) / 2;
    if (value(Math.exp(middle)) <= allowed) near = middle;
    else far = middle;
  }
  return Math.exp((near + far) / 2);
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;
const PRECISION = 1e-5;

/** Least value between two stiffnesses, on their logarithm. */
function goldenSection(value: (x: number) => number, from: number, to: number): number {
  let low = Math.log(from);
  let high = Math.log(to);
  let left = high - GOLDEN * (high - low);
  let right = low + GOLDEN * (high - low);
  let atLeft = value(Math.exp(left));
  let atRight = value(Math.exp(right));
  while (high - low > PRECISION) {
    if (atLeft <= atRight) {
      high = right;
      right = left;
      atRight = atLeft;
      left = high - GOLDEN * (high - low);
      atLeft = value(Math.exp(left));
    } else {
      low = left;
      left = right;
      atLeft = atRight;
      right = low + GOLDEN * (high - low);
      atRight = value(Math.exp(right));
    }
  }
  return Math.exp((low + high) / 2);
}
