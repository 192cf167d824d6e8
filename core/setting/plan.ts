import type { Raised } from '../findings/finding.ts';
import { atSettings, raise } from '../findings/raise.ts';
import { findPlan, type PassPlan } from '../sequence/plans.ts';
import { sitePassPlan } from '../sequence/site-plan.ts';
import type { CardInput } from './input.ts';

/**
 * Chooses the plan: one of the program’s, or the site’s own that came with the input.
 *
 * @param input id of the plan and site tables
 * @returns the plan, or null when there is no such plan
 * @example planOf(input)?.name // 'Staged thirds'
 * @source each plan names its own
 */
export function planOf({ planId, site }: Pick<CardInput, 'planId' | 'site'>): PassPlan | null {
  return site.plan?.id === planId ? sitePassPlan(planId, site.plan.data) : findPlan(planId);
}

/**
 * Asks for a plan that is known, and a site’s own one approved in the version that is used.
 *
 * @param input input of the card
 * @param plan plan chosen, or null
 * @returns findings; none when nothing stands against it
 * @example checkPlan(input, null)[0]?.severity // 'refusal'
 * @source rule of this program
 */
export function checkPlan({ joint, planId, site }: CardInput, plan: PassPlan | null): Raised[] {
  const about = { severity: 'refusal' as const, subject: joint.data.tag, place: atSettings('planId') };
  if (plan === null) {
    const source = 'pass plans of this program and of the site';
    return [raise('plan_unknown', () => ({ plan: planId }), { ...about, source, value: planId })];
  }
  if (site.plan?.id !== planId || site.plan.approved !== null) return [];
  const { name, version, source } = site.plan;
  return [raise('plan_not_approved', () => ({ plan: name, version }), { ...about, source, value: name })];
}
