import type { SettingCard } from '../contract/setting.ts';
import type { Finding } from '../findings/finding.ts';
import { atSettings, raise } from '../findings/raise.ts';
import type { CardInput } from './input.ts';

/** Set of bolts the card is for; null where the joint has only one. */
export function boltSetView({ joint: { data }, boltSet }: CardInput): SettingCard['boltSet'] {
  if (data.boltSets.length === 0) return null;
  const name = boltSet === 0 ? 'bolting of the joint' : data.boltSets[boltSet - 1]?.name;
  return name === undefined ? null : { index: boltSet, name };
}

/** A set that is not there; the card then shows the joint’s own bolting. */
export function checkBoltSet({ joint: { data }, boltSet }: CardInput): Finding[] {
  const sets = data.boltSets.length;
  if (boltSet <= sets) return [];
  return [
    raise(
      'bolt_set_unknown',
      { index: boltSet, sets },
      {
        severity: 'refusal',
        subject: data.tag,
        place: atSettings('boltSet'),
        source: 'joint data',
        value: boltSet,
        limit: sets,
        unit: 'one',
      },
    ),
  ];
}
