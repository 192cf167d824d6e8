import { groupOrder } from '../sequence/groups.ts';
import { multiToolOrder } from '../sequence/multi-tool.ts';
import type { PassPlan, PassStep } from '../sequence/plans.ts';
import { starOrder } from '../sequence/star.ts';
import type { TighteningStep } from './simulate.ts';

/**
 * Steps of a pass plan for the simulation: every nut of every pass that is set to a load. The snug pass sets none.
 *
 * Equation: load = fraction·F.
 * @param plan pass plan
 * @param boltCount N, whole, 4 to 400
 * @param target F, N, above 0
 * @returns steps in order; null where the plan has an order that this count of bolts does not allow
 * @example planSteps(findPlan('staged-thirds'), 12, 1e5)?.length // 48
 * @source the plan's own source
 */
export function planSteps(plan: PassPlan, boltCount: number, target: number): TighteningStep[] | null {
  const steps: TighteningStep[] = [];
  let pass = 0;
  for (const step of plan.steps) {
    if (step.fraction === null) continue;
    const trip = tripOf(step, boltCount, plan.groupSize ?? null);
    if (trip === null) return null;
    const load = step.fraction * target;
    const own = pass;
    steps.push(...trip.map((bolts) => ({ bolts, load, pass: own })));
    pass += 1;
  }
  return steps;
}

/** Bolts turned together, one trip around the joint. */
function tripOf({ order, tools }: PassStep, boltCount: number, groupSize: number | null): number[][] | null {
  if (tools > 1) {
    const several = multiToolOrder(boltCount, tools);
    if (several === null) return null;
    const together = several.steps.map(({ bolts }) => bolts.filter((bolt) => bolt !== null));
    return order === 'circular' ? together.toSorted((a, b) => (a[0] ?? 0) - (b[0] ?? 0)) : together;
  }
  if (order === 'star')
    return (
      starOrder(boltCount)
        ?.groups.flat()
        .map((bolt) => [bolt]) ?? null
    );
  if (order === 'groups') {
    if (groupSize === null) return null;
    return (
      groupOrder(boltCount, Math.min(groupSize, boltCount))
        ?.flat()
        .map((bolt) => [bolt]) ?? null
    );
  }
  return Array.from({ length: boltCount }, (_, index) => [index + 1]);
}
