import type { Finding } from '../findings/finding.ts';
import { atSettings, raise } from '../findings/raise.ts';
import { findPlan, type PassPlan } from '../sequence/plans.ts';
import { sitePassPlan } from '../sequence/site-plan.ts';
import type { CardInput } from './input.ts';

/** The plan chosen: one of the program's, or the site's own that came with the input; null when there is no such plan. */
export function planOf({ planId, site }: Pick<CardInput, 'planId' | 'site'>): PassPlan | null {
  return site.plan?.id === planId ? sitePassPlan(planId, site.plan.data) : findPlan(planId);
}

/** A plan has to be known, and a site's own one approved in the version that is used. */
export function checkPlan({ joint, planId, site }: CardInput, plan: PassPlan | null): Finding[] {
  const about = { severity: 'refusal' as const, subject: joint.data.tag, place: atSettings('planId') };
  if (plan === null) {
    const source = 'pass plans of this program and of the site';
    return [raise('plan_unknown', { plan: planId }, { ...about, source, value: planId })];
  }
  if (site.plan?.id !== planId || site.plan.approved !== null) return [];
  const { name, version, source } = site.plan;
  return [raise('plan_not_approved', { plan: name, version }, { ...about, source, value: name })];
}
