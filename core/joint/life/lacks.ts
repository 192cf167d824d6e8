import type { Method } from '../../contract/setting.ts';

interface Tightened {
  readonly boltsTightened: number;
  readonly finalPassNoTurn: boolean;
  readonly method: Method;
}

/**
 * What a tightening of one bolt set lacks to be complete.
 *
 * @param data studs tightened, and whether no nut turned in the last round; a tensioned set has no such round
 * @param boltCount studs of the set, whole; null when not known
 * @returns what it lacks; none where it is complete
 * @example lacksOf({ boltsTightened: 6, finalPassNoTurn: true, method: 'hydraulic wrench' }, 12) // ['6 of 12 studs']
 * @source rule of this program
 */
export function lacksOf(
  { boltsTightened, finalPassNoTurn, method }: Tightened,
  boltCount: number | null,
): string[] {
  return [
    ...(boltCount === null ? ['number of studs not known'] : []),
    ...(boltCount !== null && boltsTightened < boltCount ? [`${boltsTightened} of ${boltCount} studs`] : []),
    ...(finalPassNoTurn || method === 'tensioner' ? [] : ['last round without turning']),
  ];
}
