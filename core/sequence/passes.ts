import type { Dial, PassRow } from '../contract/setting.ts';
import type { PassPlan } from './plans.ts';

/** What one pass comes to on the gauge; nulls are not known. */
export interface PassSetting {
  readonly dial: Dial | null;
  readonly torque: number | null;
  readonly load: number | null;
}

const BY_HAND: PassSetting = { dial: null, torque: null, load: null };

/**
 * Rows of the pass table. The snug pass is felt by hand and has no dial.
 *
 * @param plan pass plan
 * @param settingFor dial, torque and load for a fraction of the target
 * @returns one row per step, in order
 * @example passRows(plan, (fraction) => dialFor(fraction * 383.4))
 * @source the plan's own source
 */
export function passRows(plan: PassPlan, settingFor: (fraction: number) => PassSetting): PassRow[] {
  return plan.steps.map(({ name, order, fraction, stopWhen }) => ({
    name,
    order,
    fraction,
    ...(fraction === null ? BY_HAND : settingFor(fraction)),
    stopWhen,
  }));
}
