import type { Dial, PassRow } from '../contract/setting.ts';
import { groupOrder } from './groups.ts';
import type { PassPlan } from './plans.ts';

/** What one pass comes to on the gauge; nulls are not known. */
export interface PassSetting {
  readonly dial: Dial | null;
  /** What to set on a tool without pressure. */
  readonly set: string | null;
  readonly torque: number | null;
  readonly load: number | null;
}

const BY_HAND: PassSetting = { dial: null, set: null, torque: null, load: null };

/**
 * Rows of the pass table. The snug pass is felt by hand and has no dial.
 *
 * @param plan pass plan
 * @param boltCount number of studs, whole; null when not known
 * @param settingFor dial, torque and load for a fraction of the target
 * @returns one row per step, in order
 * @example passRows(plan, 12, () => ({ dial: null, set: null, torque: null, load: null }))[0]?.name // 'Snug'
 * @source the plan's own source
 */
export function passRows(
  plan: PassPlan,
  boltCount: number | null,
  settingFor: (fraction: number) => PassSetting,
): PassRow[] {
  return plan.steps.map(({ name, order, fraction, tools, stopWhen }) => ({
    name,
    order,
    fraction,
    tools,
    groups: order === 'groups' ? groupsOf(boltCount, plan.groupSize ?? null) : null,
    ...(fraction === null ? BY_HAND : settingFor(fraction)),
    stopWhen,
  }));
}

/** A joint with fewer studs than a group is one group. */
function groupsOf(boltCount: number | null, size: number | null): number[][] | null {
  return boltCount === null || size === null ? null : groupOrder(boltCount, Math.min(size, boltCount));
}
