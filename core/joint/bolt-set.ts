import type { JointData } from '../contract/joint.ts';
import { describeFlange } from '../text/describe.ts';

/**
 * The joint as one of its bolt sets sees it. A further set's blanks are not filled from the flange standard: the
 * standard knows only one set of bolts.
 *
 * @param data joint as stored
 * @param index whole, 0 for the joint’s own bolting, 1 and up for its further sets
 * @returns joint with bolting, lubricant, target, limits and space of that set; null when there is no such set
 * @example jointOfSet(data, 0) === data // true
 * @source rule of this program
 */
export function jointOfSet(data: JointData, index: number): JointData | null {
  if (index === 0) return data;
  const set = data.boltSets[index - 1];
  if (set === undefined) return null;
  return {
    ...data,
    flange: { kind: 'custom', description: `${describeFlange(data.flange)}, ${set.name}`, siteRow: null },
    bolting: set.bolting,
    lubricant: set.lubricant ?? data.lubricant,
    target: set.target,
    limits: set.limits,
    space: set.space,
  };
}
