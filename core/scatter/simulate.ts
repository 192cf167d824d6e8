import { circulant, interaction, type RingJoint } from './bolts.ts';
import { boltField } from './contact.ts';

/** Nuts turned at the same moment to one load. Bolts count from 1, as on the drawing. */
export interface TighteningStep {
  readonly bolts: readonly number[];
  /** Load each is set to, N, at least 0. */
  readonly load: number;
  /** Pass it belongs to, counted from 0. */
  readonly pass: number;
}

export interface StepResult {
  readonly step: TighteningStep;
  /** Load of every bolt after the step, N; bolt 1 first. */
  readonly loads: readonly number[];
  /** False where every nut stood at its load already. */
  readonly turned: boolean;
}

/** Largest load one bolt had at any moment. */
export interface Peak {
  readonly load: number;
  /** Step after which it stood so, counted from 0; null when it never carried. */
  readonly step: number | null;
}

export interface Simulation {
  readonly results: readonly StepResult[];
  /** Loads at the end, N. */
  readonly loads: readonly number[];
  readonly peaks: readonly Peak[];
}

/**
 * Load in every bolt after every step of tightening, from hand-tight: every nut just touches and no bolt carries. A bolt
 * that carries more than its set value already is not turned. A model with stated inputs, not a measurement.
 *
 * Equation: 0 ≤ F ⊥ A·F − δ ≥ 0 after each step; see `interaction` and `boltField`.
 * @param joint ring joint
 * @param steps in order; numbers of bolts 1 … N
 * @returns loads after each step, at the end, and the largest of each bolt on the way
 * @example simulate(ringJoint, [{ bolts: [1], load: 1e5, pass: 0 }]).loads[0] // 1e5
 * @source ring on an elastic foundation with one-sided contact; elastic interaction as in ASME PCC-1-2022, Appendix I (named from memory)
 */
export function simulate(joint: RingJoint, steps: readonly TighteningStep[]): Simulation {
  return simulateOn(circulant(interaction(joint)), steps);
}

/**
 * As `simulate`, on an interaction matrix that is already known.
 *
 * Equation: as of `simulate`.
 * @param matrix A, m/N, symmetric and positive definite
 * @param steps in order; numbers of bolts 1 … N
 * @returns loads after each step, at the end, and the largest of each bolt on the way
 * @example simulateOn([[1, 0], [0, 1]], [{ bolts: [2], load: 5, pass: 0 }]).loads // [0, 5]
 * @source as of `simulate`
 */
export function simulateOn(
  matrix: readonly (readonly number[])[],
  steps: readonly TighteningStep[],
): Simulation {
  const field = boltField(matrix);
  const highest = new Float64Array(matrix.length);
  const when = new Int32Array(matrix.length).fill(-1);
  const results = steps.map((step, index): StepResult => {
    const turned = field.turn(
      step.bolts.map((bolt) => bolt - 1),
      step.load,
    );
    const loads = Array.from(field.loads);
    if (turned) {
      loads.forEach((load, bolt) => {
        if (load > (highest[bolt] ?? 0)) {
          highest[bolt] = load;
          when[bolt] = index;
        }
      });
    }
    return { step, loads, turned };
  });
  return {
    results,
    loads: Array.from(field.loads),
    peaks: Array.from(highest, (load, bolt) => {
      const step = when[bolt] ?? -1;
      return { load, step: step < 0 ? null : step };
    }),
  };
}

/** How even the loads of a joint are. */
export interface Evenness {
  readonly mean: number;
  readonly least: number;
  readonly most: number;
  /** Standard deviation over the mean, 1; null when nothing carries. */
  readonly variation: number | null;
}

/**
 * How even a set of bolt loads is.
 *
 * Equation: F̄ = ΣF/N; v = √(Σ(F − F̄)²/N)/F̄, over all bolts of the joint.
 * @param loads F, N, at least one
 * @returns mean, least, most and relative deviation
 * @example evenness([90, 110]).variation // 0.1
 * @source definition of the standard deviation of a whole population
 */
export function evenness(loads: readonly number[]): Evenness {
  const mean = loads.reduce((sum, load) => sum + load, 0) / loads.length;
  const square = loads.reduce((sum, load) => sum + (load - mean) ** 2, 0) / loads.length;
  return {
    mean,
    least: Math.min(...loads),
    most: Math.max(...loads),
    variation: mean > 0 ? Math.sqrt(square) / mean : null,
  };
}
