import type { SettingCard } from '../contract/setting.ts';

/** Bolts turned at the same moment, one per tool; null where a tool waits. */
export type Step = readonly (number | null)[];

/**
 * Steps of each pass of a card in their order.
 *
 * @param card passes with the orders they follow
 * @returns steps pass by pass; empty for a pass without an order that is known
 * @example passSteps(card)[1]?.length // 12
 * @source the plan's own source
 */
export function passSteps(
  card: Pick<SettingCard, 'order' | 'boltCount' | 'passes' | 'toolOrder'>,
): readonly (readonly Step[])[] {
  const star = card.order?.groups.flat().map((bolt) => [bolt]) ?? [];
  const round = Array.from({ length: card.boltCount ?? 0 }, (_, index) => [index + 1]);
  return card.passes.map((pass) => {
    if (pass.order === 'circular') return round;
    if (pass.order === 'groups') return (pass.groups?.flat() ?? []).map((bolt) => [bolt]);
    return pass.tools > 1 && pass.tools === card.toolOrder?.tools ? card.toolOrder.steps : star;
  });
}

/**
 * Bolts to be turned now: those of the first step that is not done. A step that a stop cut in half is finished first.
 *
 * @param steps steps of a pass in order
 * @param open numbers of the bolts of the pass still to be turned, 1 to 400
 * @returns bolts of one step, one per tool that still has work; empty when nothing is open
 * @example nextBolts([[1, 4], [2, 5]], [4, 2, 5]) // [4]
 * @source rule of this program
 */
export function nextBolts(steps: readonly Step[], open: readonly number[]): number[] {
  const left = new Set(open);
  for (const step of steps) {
    const bolts = step.filter((bolt) => bolt !== null && left.has(bolt));
    if (bolts.length > 0) return bolts as number[];
  }
  return [];
}
