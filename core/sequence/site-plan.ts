import type { PassPlanData } from '../contract/site.ts';
import { type PassPlan, SNUG } from './plans.ts';

/**
 * A site's plan as the calculations follow it. Every plan begins with the nuts snug by hand, which a site doesn't have
 * to write down.
 *
 * @param id id of the plan on the register
 * @param data plan as stored
 * @returns the plan with the step by hand before its own
 * @example sitePassPlan('a', { name: 'Two rounds', source: 'site', steps: [], groupSize: null, checks: []
 * }).steps.length // 1: the step by hand
 * @source rule of this program; snug first is common practice
 */
export function sitePassPlan(
  id: string,
  { name, source, steps, groupSize, checks }: Omit<PassPlanData, 'retired'>,
): PassPlan {
  return {
    id,
    name,
    source,
    groupSize,
    checks,
    steps: [SNUG, ...steps.map(({ fraction, ...step }) => ({ ...step, fraction: fraction.si }))],
  };
}
