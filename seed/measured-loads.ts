import { demandOf } from './demand.ts';
import { randomStream } from './random.ts';
import type { DemoEvent, DemoJoint } from './types.ts';

/** One in so many tightenings with a hydraulic set was measured, on so many of its studs. */
const ONE_IN = 11;
const STUDS = 4;
/** Spread of ln K from tightening to tightening and from stud to stud. */
const BETWEEN = 0.04;
const WITHIN = 0.08;
/** A lubricant whose friction is higher than its data say, planted for the evidence page. */
const UNDERRATED = 'molybdenum';
const UNDERRATED_BY = 1.13;

/** Loads measured by ultrasound on some studs of some joints; the same for the same seed. */
export function withMeasuredLoads(
  events: readonly DemoEvent[],
  joints: readonly DemoJoint[],
  seed: number,
): DemoEvent[] {
  const byTag = new Map(joints.map((joint) => [joint.tag, joint]));
  return events.map((event) => {
    const joint = byTag.get(event.joint);
    if (event.kind !== 'tightening' || event.tools.drive === null || joint === undefined) return event;
    const random = randomStream(seed, `loads ${event.joint} ${event.happenedAt}`);
    if (!random.chance(1 / ONE_IN)) return event;
    const demand = demandOf(joint);
    if (demand === null) return event;
    const off = joint.lubricant?.name.startsWith(UNDERRATED) ? UNDERRATED_BY : 1;
    const shared = off * Math.exp(BETWEEN * random.normal());
    const step = Math.max(1, Math.floor(demand.studs / STUDS));
    const readings = Array.from({ length: Math.min(STUDS, demand.studs) }, (_, index) => {
      const newtons = demand.load / (shared * Math.exp(WITHIN * random.normal()));
      return { bolt: 1 + index * step, load: { text: (newtons / 1000).toFixed(1), unit: 'kN' as const } };
    });
    return {
      ...event,
      loads: { method: 'ultrasonic' as const, instrument: 'invented instrument US-1', readings },
    };
  });
}
