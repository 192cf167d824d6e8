import type { SetTightened, Standing } from './standing.ts';

/**
 * Whether a set's tightening stands: with tools in calibration, or with what stood against them set aside with a reason.
 *
 * @param set complete tightening of a bolt set
 * @returns true when it stands
 * @example setProven({ calibration: 'not known', setAside: null }) // false
 * @source rule of this program
 */
export function setProven({
  calibration,
  setAside,
}: Pick<SetTightened, 'calibration' | 'setAside'>): boolean {
  return calibration === 'in calibration' || setAside !== null;
}

/**
 * Whether a joint may be taken for tightened: every set that is recorded stands, or an engineer gave a reason for work
 * that was out of order.
 *
 * @param standing standing of the joint
 * @returns true when it may
 * @example provenTight(UNASSESSED) // false
 * @source rule of this program
 */
export function provenTight({ tightened, override }: Pick<Standing, 'tightened' | 'override'>): boolean {
  return override !== null || (tightened.length > 0 && tightened.every(setProven));
}
