import { circulant, interaction, type RingJoint } from './bolts.ts';
import { boltField } from './contact.ts';
import type { TighteningStep } from './simulate.ts';

/** How a joint settles under passes clockwise from bolt 1 at one load. */
export interface Settling {
  /** Passes until no load moved by more than the tolerance; null when it had not come to rest. */
  readonly passes: number | null;
  /** Largest change of any load during each pass, as a part of the target; the last one is within the tolerance. */
  readonly moved: readonly number[];
  /** Loads at the end, N. */
  readonly loads: readonly number[];
}

const MOST_PASSES = 200;

/**
 * Clockwise passes until no load moves by more than a part of the target.
 *
 * Equation: max |F after the pass − F before it| ≤ x·F_target.
 * @param joint ring joint
 * @param steps what was done before, from hand-tight
 * @param target load the nuts are set to, N, above 0
 * @param tolerance x, 1, above 0
 * @returns passes with the largest change in each, and the loads at the end
 * @example passesUntilQuiet(ringJoint, [], 1e5, 0.01).moved.length > 1 // true
 * @source common practice: go round until no nut turns
 */
export function passesUntilQuiet(
  joint: RingJoint,
  steps: readonly TighteningStep[],
  target: number,
  tolerance: number,
): Settling {
  const field = boltField(circulant(interaction(joint)));
  for (const { bolts, load } of steps)
    field.turn(
      bolts.map((bolt) => bolt - 1),
      load,
    );
  const moved: number[] = [];
  while (moved.length < MOST_PASSES) {
    const before = Float64Array.from(field.loads);
    for (let bolt = 0; bolt < joint.boltCount; bolt++) field.turn([bolt], target);
    moved.push(
      field.loads.reduce((most, load, bolt) => Math.max(most, Math.abs(load - (before[bolt] ?? 0))), 0) /
        target,
    );
    if ((moved.at(-1) ?? 0) <= tolerance) {
      return { passes: moved.length, moved, loads: Array.from(field.loads) };
    }
  }
  return { passes: null, moved, loads: Array.from(field.loads) };
}
