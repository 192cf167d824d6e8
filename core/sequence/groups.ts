import { ownOrder } from './star.ts';

/**
 * Star order of groups of neighbouring bolts, for joints with many bolts.
 *
 * Equation: groups of g neighbours, the last one shorter when N is no multiple of g, in star order by group number.
 * @param count N, whole, 1 to 400
 * @param size bolts in a group g, whole, 1 to N
 * @returns groups in the order they are turned, bolts clockwise within each; null when a number is outside
 * @example groupOrder(12, 3) // [[1, 2, 3], [7, 8, 9], [4, 5, 6], [10, 11, 12]]
 * @source rule of this program; groups for large joints are ASME PCC-1 practice (from memory)
 */
export function groupOrder(count: number, size: number): number[][] | null {
  const whole = Number.isInteger(count) && Number.isInteger(size);
  if (!whole || count < 1 || count > 400 || size < 1 || size > count) return null;
  return ownOrder(Math.ceil(count / size)).map((group) => {
    const first = (group - 1) * size + 1;
    const last = Math.min(group * size, count);
    return Array.from({ length: last - first + 1 }, (_, index) => first + index);
  });
}
