import { createContext, useContext } from 'react';
import type { SuitRow } from '../../core/contract/setting.ts';
import type { ToolClass } from '../../core/contract/tool.ts';
import type { Standing } from './standing-shape.tsx';

/** How every part of the register suits the work on the page; null where nothing is held against a joint. */
const Suits = createContext<readonly SuitRow[] | null>(null);

export const SuitsProvider = Suits.Provider;

/** Null also while no part of the class is known, so that the list of tools stands in for it. */
export function useSuits(toolClass: ToolClass | null): readonly SuitRow[] | null {
  const rows = useContext(Suits);
  return rows?.some((row) => row.class === toolClass) ? rows : null;
}

const ORDER: readonly SuitRow['state'][] = ['suits', 'not known', 'does not suit'];

/** Parts of a class that hold every typed word, those that suit first; otherwise in the order of their numbers. */
export function narrowed(rows: readonly SuitRow[], toolClass: ToolClass | null, typed: string): SuitRow[] {
  const words = typed.toLowerCase().split(/\s+/);
  const found = rows.filter(({ class: of, number, serial, place }) => {
    const text = `${number} ${serial} ${place}`.toLowerCase();
    return of === toolClass && words.every((word) => text.includes(word));
  });
  return ORDER.flatMap((state) => found.filter((row) => row.state === state));
}

export const SUIT_STANDING: Readonly<Record<SuitRow['state'], Standing>> = {
  suits: 'kept',
  'not known': 'not known',
  'does not suit': 'broken',
};

/** "suits, with reducer R-1", "does not suit: Barred from use: …, and 2 more". */
export function suitWords({ state, reasons, reducerIds }: SuitRow, rows: readonly SuitRow[]): string {
  const [first, ...more] = reasons;
  if (state !== 'suits' && first !== undefined)
    return `${state}: ${first}${more.length === 0 ? '' : ` And ${more.length} more.`}`;
  const reducers = rows.filter(({ toolId }) => reducerIds.includes(toolId)).map(({ number }) => number);
  return reducers.length === 0 ? state : `${state}, with reducer ${reducers.join(', ')}`;
}
