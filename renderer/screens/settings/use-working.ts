import { useState } from 'react';
import type { SettingCard, Working } from '../../../core/contract/setting.ts';

export type NumberName = Working['of'];

/** Which number's working is open in the margin; the dialled one until another is chosen. */
export function useWorking(card: SettingCard | null) {
  const [chosen, choose] = useState<NumberName>('dial');
  const working = card?.workings.find((each) => each.of === chosen) ?? null;
  return { chosen, choose, working };
}

/** A number rests on an assumption when any input of its working does. */
export function restsOnAssumed(card: SettingCard, of: NumberName): boolean {
  const working = card.workings.find((each) => each.of === of);
  if (working === undefined) return false;
  return working.result.origin === 'assumed' || working.inputs.some((input) => input.origin === 'assumed');
}
