import type { SettingCard } from '../contract/setting.ts';
import type { Raised } from '../findings/finding.ts';
import { atSettings, raise } from '../findings/raise.ts';
import type { CardInput } from './input.ts';
import { OWN_BOLTING } from './set-shares.ts';

/**
 * Names the set of bolts the card is for.
 *
 * @param input input of the card
 * @returns index and name of the set, or null where the joint has only one
 * @example boltSetView(input) // null
 * @source rule of this program
 */
export function boltSetView({ joint: { data }, boltSet }: CardInput): SettingCard['boltSet'] {
  if (data.boltSets.length === 0) return null;
  const name = boltSet === 0 ? OWN_BOLTING : data.boltSets[boltSet - 1]?.name;
  return name === undefined ? null : { index: boltSet, name };
}

/**
 * Says when the set asked for is not there; the card then shows the joint’s own bolting.
 *
 * @param input input of the card
 * @returns findings; none when nothing stands against it
 * @example checkBoltSet({ ...input, boltSet: 3 })[0]?.severity // 'refusal'
 * @source rule of this program
 */
export function checkBoltSet({ joint: { data }, boltSet }: CardInput): Raised[] {
  const sets = data.boltSets.length;
  if (boltSet <= sets) return [];
  return [
    raise('bolt_set_unknown', () => ({ index: boltSet, sets }), {
      severity: 'refusal',
      subject: data.tag,
      place: atSettings('boltSet'),
      source: 'joint data',
      value: boltSet,
      limit: sets,
      unit: 'one',
    }),
  ];
}
