import { FEWEST_STUDS, MOST_STUDS } from './star.ts';

/** Tools that turn at the same time, evenly around the joint. */
export type ToolCount = 1 | 2 | 4;

/** Bolts turned at the same moment, one per tool; null where a tool has to wait. */
export interface ToolStep {
  readonly bolts: readonly (number | null)[];
}

/** Order for several tools with how well the tools face each other. */
export interface ToolOrder {
  readonly tools: ToolCount;
  readonly steps: readonly ToolStep[];
  /** True when the tools stand exactly 180° or 90° apart in every step. */
  readonly exact: boolean;
  readonly origin: 'own rule';
  readonly source: string;
}

/**
 * Order for one tool, two at 180° or four at 90°, for any number of bolts.
 *
 * Each tool has a sector of neighbouring bolts, as equal as the count allows, and all tools turn the bolt with the same
 * place in their sectors. Places are taken farthest from those already turned. A count that can't be divided leaves
 * tools up to one bolt off the exact angle, and a tool without a bolt waits.
 *
 * Equation: sector j holds bolts ⌊j·N/t⌋ + 1 … ⌊(j + 1)·N/t⌋.
 * @param count N, whole, 1 to 400
 * @param tools 1, 2 or 4
 * @returns steps that turn every bolt once; null when `count` is outside or below the number of tools
 * @example multiToolOrder(8, 2)?.steps.map((step) => step.bolts) // [[1, 5], [3, 7], [2, 6], [4, 8]]
 * @source rule of this program; its properties are tested for every N from 4 to 100
 */
export function multiToolOrder(count: number, tools: ToolCount): ToolOrder | null {
  if (!Number.isInteger(count) || count < Math.max(FEWEST_STUDS, tools) || count > MOST_STUDS) return null;
  const starts = Array.from({ length: tools + 1 }, (_, index) => Math.floor((index * count) / tools));
  const sectors = starts.slice(0, -1).map((start, index) => ({
    start,
    size: (starts[index + 1] ?? count) - start,
  }));
  const longest = Math.max(...sectors.map(({ size }) => size));
  const steps = farthestFirst(longest).map((place) => ({
    bolts: sectors.map(({ start, size }) => (place < size ? start + place + 1 : null)),
  }));
  return {
    tools,
    steps,
    exact: count % tools === 0,
    origin: 'own rule',
    source: 'rule of this program: equal sectors, the same place in each, farthest place first',
  };
}

/**
 * Places on a closed ring, each as far as can be from those already taken.
 *
 * @param size number of places, at least 1
 * @returns permutation of 0 … size − 1 that begins at 0
 * @example farthestFirst(4) // [0, 2, 1, 3]
 * @source rule of this program
 */
export function farthestFirst(size: number): number[] {
  const taken: number[] = [];
  const gap = new Array<number>(size).fill(Number.POSITIVE_INFINITY);
  for (let round = 0; round < size; round++) {
    const next = gap.indexOf(Math.max(...gap));
    taken.push(next);
    for (let place = 0; place < size; place++) {
      const apart = Math.abs(place - next);
      gap[place] = Math.min(gap[place] ?? 0, Math.min(apart, size - apart));
    }
    // Below every distance, so that a taken place never comes up again.
    gap[next] = -1;
  }
  return taken;
}
