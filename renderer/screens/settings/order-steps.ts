import type { SettingCard } from '../../../core/contract/setting.ts';

export interface Place {
  readonly pass: number;
  readonly step: number;
}

/** Bolts turned at the same moment, one per tool; null where a tool waits. */
export type Step = readonly (number | null)[];
type Steps = readonly (readonly Step[])[];
/** Walking needs only how many steps each pass has. */
type Walk = readonly (readonly unknown[])[];

/** Steps of each pass in their order; empty for a pass without an order that is known. */
export function stepsOf(card: Pick<SettingCard, 'order' | 'boltCount' | 'passes' | 'toolOrder'>): Steps {
  const star = card.order?.groups.flat().map((bolt) => [bolt]) ?? [];
  const round = Array.from({ length: card.boltCount ?? 0 }, (_, index) => [index + 1]);
  return card.passes.map((pass) => {
    if (pass.order === 'circular') return round;
    if (pass.order === 'groups') return (pass.groups?.flat() ?? []).map((bolt) => [bolt]);
    return pass.tools > 1 && pass.tools === card.toolOrder?.tools ? card.toolOrder.steps : star;
  });
}

/** "bolt 3", "bolts 3 and 9", "bolts 1, 4, 7 and 10". */
export function boltWords(step: Step): string {
  const bolts = step.filter((bolt) => bolt !== null);
  if (bolts.length < 2) return `bolt ${bolts[0] ?? ''}`;
  return `bolts ${bolts.slice(0, -1).join(', ')} and ${bolts.at(-1)}`;
}

export function forward(place: Place, steps: Walk): Place {
  const inPass = steps[place.pass]?.length ?? 0;
  if (place.step + 1 < inPass) return { ...place, step: place.step + 1 };
  return place.pass + 1 < steps.length ? { pass: place.pass + 1, step: 0 } : place;
}

export function back(place: Place, steps: Walk): Place {
  if (place.step > 0) return { ...place, step: place.step - 1 };
  if (place.pass === 0) return place;
  const before = place.pass - 1;
  return { pass: before, step: Math.max(0, (steps[before]?.length ?? 1) - 1) };
}
