import { circulant, interaction, type RingJoint } from './bolts.ts';
import { boltField } from './contact.ts';
import { type Simulation, simulateOn, type TighteningStep } from './simulate.ts';

/** Loads to set so that a joint ends even. */
export interface EvenPlan {
  /** One nut a step, each with the load it is set to; a nut that stands right already is left out. */
  readonly steps: readonly TighteningStep[];
  /** What the model makes of them. */
  readonly simulation: Simulation;
  /** Largest difference from the target at the end, as a part of it. */
  readonly deviation: number;
  /** True when the deviation keeps the tolerance and no load on the way was above the limit. */
  readonly reached: boolean;
}

/** A load above its limit by less than this part is rounding. */
const ROUNDING = 1e-9;
const MOST_TRIES = 25;

/**
 * Loads to set, nut by nut, so that all end at the target and none is above the limit on the way: each nut is brought to
 * the position it has in the evenly loaded joint, or to the limit where that comes first; what the limit kept back is
 * made up in further trips.
 *
 * Equation: δ* = A·(F·1); set value = load of the bolt with its nut at min(δ*, δ(F_limit)).
 * @param joint ring joint
 * @param order numbers of the bolts in the order of one trip, each once, 1 to 400
 * @param target F, N, above 0
 * @param limit largest load of one bolt at any moment, N, at least the target
 * @param options trips allowed (whole, at least 1) and largest deviation at the end (1, above 0)
 * @returns steps, what they come to, and whether that keeps tolerance and limit
 * @example evenPlan(ringJoint, [1, 7, 4, 10, 2, 8, 5, 11, 3, 9, 6, 12], 1e5, 2.5e5, { trips: 6, tolerance: 0.01 }).reached // true
 * @source inverse of `simulate`
 */
export function evenPlan(
  joint: RingJoint,
  order: readonly number[],
  target: number,
  limit: number,
  { trips, tolerance }: { readonly trips: number; readonly tolerance: number },
): EvenPlan {
  const row = interaction(joint);
  const matrix = circulant(row);
  const position = row.reduce((sum, part) => sum + part, 0) * target;
  let most = limit;
  let plan = attempt(matrix, { order, target, limit, position, most, trips, tolerance });
  // A bolt across the joint may rise above the limit while another is set to it: less is then allowed to each.
  for (let tries = 0; tries < MOST_TRIES && !plan.reached && peakOf(plan) > limit; tries++) {
    most = Math.max(target, (most * limit) / peakOf(plan));
    const next = attempt(matrix, { order, target, limit, position, most, trips, tolerance });
    if (most === target && peakOf(next) >= peakOf(plan)) break;
    plan = next;
  }
  return plan;
}

interface Attempt {
  readonly order: readonly number[];
  readonly target: number;
  readonly limit: number;
  readonly position: number;
  /** Load at which a nut is stopped, N. */
  readonly most: number;
  readonly trips: number;
  readonly tolerance: number;
}

function attempt(
  matrix: readonly (readonly number[])[],
  { order, target, limit, position, most, trips, tolerance }: Attempt,
): EvenPlan {
  const field = boltField(matrix);
  const steps: TighteningStep[] = [];
  const off = () => field.loads.reduce((worst, load) => Math.max(worst, Math.abs(load - target)), 0) / target;
  for (let pass = 0; pass < trips && off() > tolerance; pass++) {
    for (const bolt of order) {
      const before = field.loads[bolt - 1] ?? 0;
      const load = field.place(bolt - 1, position, most);
      if (load > before * (1 + ROUNDING)) steps.push({ bolts: [bolt], load, pass });
    }
  }
  const simulation = simulateOn(matrix, steps);
  const deviation =
    simulation.loads.reduce((worst, load) => Math.max(worst, Math.abs(load - target)), 0) / target;
  const peak = Math.max(...simulation.peaks.map(({ load }) => load));
  return { steps, simulation, deviation, reached: deviation <= tolerance && peak <= limit * (1 + ROUNDING) };
}

const peakOf = ({ simulation }: EvenPlan) => Math.max(...simulation.peaks.map(({ load }) => load));
