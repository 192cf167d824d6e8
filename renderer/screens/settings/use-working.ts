import { useState } from 'react';
import type { SettingCard, Working } from '../../../core/contract/setting.ts';

export type NumberName = Working['of'];

/** Tells workings of the same kind apart, as those of one limit in several pressure cases. */
export const keyOf = (working: Working): string => `${working.of}: ${working.title}`;

/** Working of a number; `about` are words of its title where a card has several of the kind. */
export function findWorking(
  card: SettingCard,
  of: NumberName,
  about: readonly string[] = [],
): Working | undefined {
  return card.workings.find(
    (working) => working.of === of && about.every((words) => working.title.includes(words)),
  );
}

/** Which number's working is open in the margin; the dialled one until another is chosen. */
export function useWorking(card: SettingCard | null) {
  const [chosen, choose] = useState<string>('dial');
  const working =
    card?.workings.find((each) => keyOf(each) === chosen) ??
    card?.workings.find((each) => each.of === chosen) ??
    null;
  return { chosen, choose, working };
}

/** A number rests on an assumption when any input of its working does. */
export function restsOnAssumed(working: Working | undefined): boolean {
  if (working === undefined) return false;
  return working.result.origin === 'assumed' || working.inputs.some((input) => input.origin === 'assumed');
}
