import type { JointState } from '../../contract/life.ts';

export type Containment = 'open' | 'closed' | 'not followed';

/** States in which the joint must not see pressure. */
const OPEN: readonly JointState[] = ['broken', 'inspected', 'made up', 'tightening'];

/**
 * Whether a joint in this state may see pressure. A held joint is what it was when it was held.
 *
 * @param state state of the joint
 * @param heldFrom state it was held in; null where it is not held
 * @returns open, closed, or not followed where nobody has assessed it
 * @example containmentOf('held', 'broken') // 'open'
 * @source rule of this program; common practice counts open joints per system
 */
export function containmentOf(state: JointState, heldFrom: JointState | null): Containment {
  const real = state === 'held' ? heldFrom : state;
  if (real === 'unassessed') return 'not followed';
  // Held without a place to go back to: nothing is known in its favour.
  return real === null || OPEN.includes(real) ? 'open' : 'closed';
}
