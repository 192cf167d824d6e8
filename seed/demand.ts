import type { Nut } from '../core/bolting/nut.ts';
import { meanBearingDiameter, nutFactorOf, torqueByNutFactor } from '../core/bolting/torque.ts';
import { jointData } from '../core/contract/joint.ts';
import { resolveJoint } from '../core/joint/resolve.ts';
import { startsFromGasket, targetLoad } from '../core/joint/target.ts';
import type { DemoJoint } from './types.ts';

/** What a joint asks of a tool set. */
export interface Demand {
  /** N·m and N. */
  readonly torque: number;
  readonly load: number;
  readonly studs: number;
  readonly nut: Nut;
}

const ANY_UNIT = '00000000-0000-0000-0000-000000000000';

/** Torque, studs and nut of a joint by the program's own core; null when its data don't give them. */
export function demandOf({ unit: _, ...joint }: DemoJoint): Demand | null {
  const data = jointData.parse({ ...joint, unitId: ANY_UNIT });
  const { count, thread, yieldStrength, nut } = resolveJoint(data);
  if (count === null || thread === null || nut === null || data.target === null || data.lubricant === null) {
    return null;
  }
  if (startsFromGasket(data.target)) return null;
  const { nutFactor, frictionThread, frictionBearing } = data.lubricant;
  const bearing = meanBearingDiameter(nut.value.bearingOutside, thread.value.diameter);
  const byFriction =
    frictionThread && frictionBearing
      ? nutFactorOf(thread.value, bearing, frictionThread.si, frictionBearing.si)
      : null;
  const factor = nutFactor?.si ?? byFriction;
  if (factor === null) return null;
  const { load } = targetLoad(data.target, thread.value, yieldStrength?.value ?? null, factor);
  if (load === null) return null;
  return {
    torque: torqueByNutFactor(factor, load, thread.value.diameter),
    load,
    studs: count.value,
    nut: nut.value,
  };
}
