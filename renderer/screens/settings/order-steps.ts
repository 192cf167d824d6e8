import type { SettingCard } from '../../../core/contract/setting.ts';

export interface Place {
  readonly pass: number;
  readonly step: number;
}

/** Bolts of each pass in the order they are turned; empty for a pass without an order that is known. */
export function stepsOf(card: SettingCard): readonly (readonly number[])[] {
  const star = card.order?.groups.flat() ?? [];
  const round = Array.from({ length: card.boltCount ?? 0 }, (_, index) => index + 1);
  return card.passes.map((pass) => pass.groups?.flat() ?? (pass.order === 'circular' ? round : star));
}

export function forward(place: Place, steps: readonly (readonly number[])[]): Place {
  const inPass = steps[place.pass]?.length ?? 0;
  if (place.step + 1 < inPass) return { ...place, step: place.step + 1 };
  return place.pass + 1 < steps.length ? { pass: place.pass + 1, step: 0 } : place;
}

export function back(place: Place, steps: readonly (readonly number[])[]): Place {
  if (place.step > 0) return { ...place, step: place.step - 1 };
  if (place.pass === 0) return place;
  const before = place.pass - 1;
  return { pass: before, step: Math.max(0, (steps[before]?.length ?? 1) - 1) };
}
