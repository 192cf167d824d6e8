import type { JointState } from '../../contract/life.ts';
import { entered, type Leak, type Standing } from './standing.ts';

/** So many leaks within two make-ups make a repeated leaker. */
const REPEATED = 2;
const MAKE_UPS = 2;

/**
 * Leaks that count against a joint now: of its present make-up and the one before.
 *
 * @param leaks leaks of the joint
 * @param makeUp number of its present make-up, whole, at least 0
 * @returns those that count
 * @example countedLeaks([{ eventId: 'a', at: '', makeUp: 1 }, { eventId: 'b', at: '', makeUp: 3 }], 3).length // 1
 * @source site practice for repeated leakers: common practice
 */
export function countedLeaks(leaks: readonly Leak[], makeUp: number): readonly Leak[] {
  return leaks.filter((leak) => leak.makeUp > makeUp - MAKE_UPS);
}

/**
 * Whether a joint waits for engineering because it keeps leaking.
 *
 * Equation: at least 2 leaks within 2 make-ups.
 * @param standing leaks and number of the make-up
 * @returns true from the second leak on
 * @example isRepeatedLeaker({ leaks: [{ eventId: 'a', at: '', makeUp: 1 }], makeUp: 1 }) // false
 * @source common practice
 */
export function isRepeatedLeaker({ leaks, makeUp }: Pick<Standing, 'leaks' | 'makeUp'>): boolean {
  return countedLeaks(leaks, makeUp).length >= REPEATED;
}

interface LeakTold {
  readonly id: string;
  readonly happenedAt: string;
}

/**
 * The standing after a leak that counts; a repeated leaker is held for engineering in the state the leak led to.
 *
 * @param standing standing before
 * @param state state the leak leads to
 * @param event record of the leak or of the failed test
 * @returns standing with the leak counted
 * @example leaked(UNASSESSED, 'leak watch', { id: 'a', happenedAt: '2026-03-16T07:00:00Z' }).state // 'leak watch'
 * @source rule of this program
 */
export function leaked<S extends Standing>(standing: S, state: JointState, event: LeakTold): S {
  const leak = { eventId: event.id, at: event.happenedAt, makeUp: standing.makeUp };
  const leaks = [...countedLeaks(standing.leaks, standing.makeUp), leak];
  const counted = { ...standing, leaks };
  if (!isRepeatedLeaker(counted)) return entered(counted, state, event.happenedAt);
  const heldBecause = `repeated leaker: ${leaks.length} leaks in ${MAKE_UPS} make-ups; engineering decides`;
  if (standing.state === 'held') return { ...counted, heldBecause };
  return entered(
    { ...entered(counted, state, event.happenedAt), heldFrom: state, heldBecause },
    'held',
    event.happenedAt,
  );
}
