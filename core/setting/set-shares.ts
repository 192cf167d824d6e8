import type { InputGap } from '../findings/outcome.ts';
import { jointOfSet } from '../joint/bolt-set.ts';
import { startsFromGasket } from '../joint/target.ts';
import { basisOf } from './basis.ts';
import type { CardInput } from './input.ts';
import type { SetShare } from './set-share.ts';

/** Name of the set that stands in the joint’s own bolting, where there are several. */
export const OWN_BOLTING = 'bolting of the joint';

/**
 * The bolt sets that load the gasket beside the one a card is for, each at its own target.
 *
 * @param given input of the card, the joint as stored
 * @returns one share per further set, with what is missing of it; none where the joint has one set
 * @example otherSets(complete).length // 0
 * @source equilibrium: bolts of several sets load one gasket together
 */
export function otherSets({
  joint,
  site,
  boltSet,
}: Pick<CardInput, 'joint' | 'site' | 'boltSet'>): readonly SetShare[] {
  const { boltSets } = joint.data;
  if (boltSets.length === 0) return NO_OTHERS;
  const chosen = boltSet <= boltSets.length ? boltSet : 0;
  const names = [OWN_BOLTING, ...boltSets.map(({ name }) => name)];
  return names.flatMap((name, index) => {
    const data = index === chosen ? null : jointOfSet(joint.data, index);
    return data === null ? [] : [shareOf(name, { joint: { ...joint, data }, site })];
  });
}

const NO_OTHERS: readonly SetShare[] = [];

function shareOf(name: string, seen: Pick<CardInput, 'joint' | 'site'>): SetShare {
  const { joint, targetLoad } = basisOf(seen);
  const missing: InputGap[] = [];
  if (joint.boltCount === null) missing.push(gap(`number of studs of the set “${name}”`, 'count them'));
  if (targetLoad === null) missing.push(gap(`load of the set “${name}”`, remedyOf(seen.joint.data.target)));
  return { name, count: joint.boltCount, load: targetLoad, missing };
}

function remedyOf(target: CardInput['joint']['data']['target']): string {
  if (target === null) return 'enter its target';
  return startsFromGasket(target)
    ? 'give it a bolt stress, load or torque as target: what the gasket needs does not say which set gives it'
    : 'enter what its target rests on: thread, strength or friction';
}

function gap(name: string, remedy: string): InputGap {
  return { symbol: '', name, reason: 'missing', given: null, allowed: '', remedy };
}

/**
 * Load the other sets put on the gasket.
 *
 * Equation: Wo = Σ nb·F.
 * @param others the other sets, each with count and load, N
 * @returns Wo, N; null while one of them is not known
 * @example loadOfSets([]) // 0
 * @source equilibrium
 */
export function loadOfSets(others: readonly SetShare[]): number | null {
  return others.reduce<number | null>(
    (sum, { count, load }) => (sum === null || count === null || load === null ? null : sum + count * load),
    0,
  );
}
