import { certificateStanding } from '../calibration/validity.ts';
import type { ToolRuleData } from '../contract/check.ts';
import type { AnyTool } from '../setting/input.ts';
import { laterBy } from './calendar.ts';
import { CERTIFIED } from './certified.ts';
import { checkDues } from './due-checks.ts';
import { hoseDues } from './due-hose.ts';
import { type Due, type DueDay, dueStateOf } from './due-state.ts';
import type { ToolFacts, ToolRules } from './facts.ts';

/** Days ahead in which a thing counts as due soon where the site has no rule for the class. */
export const NOTICE_DAYS = 30;

/**
 * Everything about a tool that lapses: certificate, checks, hose, overload and the day it goes back to its hirer. What
 * the site has no rule for is not asked; what a rule asks and nobody knows is "not known".
 *
 * Equation: overdue when day > last good day or uses left ≤ 0, whichever comes first.
 * @param tool tool of the register with its certificates
 * @param facts what is recorded of its past; null when nothing is
 * @param rules the site’s rules and lists of checks
 * @param on day it is asked for, YYYY-MM-DD
 * @returns what lapses, each with its last good day, uses left and the rule behind it
 * @example duesOf(input.set.drive, null, { rules: [], checklists: [] }, '2026-03-16')[0].on // '2027-01-09'
 * @source ILAC-G24:2022, from memory: by calendar or by use, whichever comes first; the site’s own rules
 */
export function duesOf(tool: AnyTool, facts: ToolFacts | null, rules: ToolRules, on: string): Due[] {
  const { properties } = tool.data;
  const rule = rules.rules.find((each) => each.class === properties.class) ?? null;
  const day: DueDay = { on, noticeDays: rule?.noticeDays ?? NOTICE_DAYS };
  return [
    ...certificateDues(tool, facts, rule, day),
    ...checkDues(tool, facts, rules.checklists, rule, day),
    ...(properties.class === 'hose' ? hoseDues(properties, facts, rule, day) : []),
    ...overloadDues(facts),
    ...hireDues(tool, day),
  ];
}

function certificateDues(
  { data, certificates }: AnyTool,
  facts: ToolFacts | null,
  rule: ToolRuleData | null,
  day: DueDay,
): Due[] {
  const asked =
    CERTIFIED.includes(data.properties.class) ||
    (rule !== null && (rule.certificateDays !== null || rule.certificateUses !== null));
  const standing = certificateStanding(certificates, day.on);
  const what = 'Certificate';
  if (standing.state === 'none' || standing.state === 'later') {
    if (!asked) return [];
    const reason =
      standing.state === 'none'
        ? 'no certificate on the register'
        : `first calibrated on ${standing.certificate.data.calibratedOn}, after that day`;
    return [{ what, state: 'overdue', on: null, usesLeft: null, reason, refuses: true }];
  }
  const { number, calibratedOn, validUntil, validityBasis } = standing.certificate.data;
  const days = rule?.certificateDays ?? null;
  const byRule = rule === null || days === null ? null : laterBy(calibratedOn, { days }, rule.dueAt);
  const shorter = byRule !== null && byRule < validUntil;
  const uses = rule?.certificateUses ?? null;
  const used = facts?.uses.sinceCertificate ?? null;
  const counted = {
    lastDay: shorter ? byRule : validUntil,
    usesLeft: uses === null || used === null ? null : uses - used,
    uses,
  };
  const reasons = [
    shorter
      ? `${days} days from ${calibratedOn}, certificate ${number} (${rule?.source})`
      : `certificate ${number} (${validityBasis})`,
    ...(uses === null ? [] : [`${used ?? 'not known how many'} of ${uses} uses since it (${rule?.source})`]),
  ];
  return [
    {
      what,
      state: dueStateOf(counted, day),
      on: counted.lastDay,
      usesLeft: counted.usesLeft,
      reason: reasons.join('; '),
      refuses: true,
    },
  ];
}

function overloadDues(facts: ToolFacts | null): Due[] {
  if (facts === null || facts.overload === null) return [];
  const { on, text } = facts.overload;
  return [
    {
      what: 'Overload',
      state: 'overdue',
      on: null,
      usesLeft: null,
      reason: `${text} on ${on}; no calibration or passed check since`,
      refuses: true,
    },
  ];
}

function hireDues({ data: { owner } }: AnyTool, day: DueDay): Due[] {
  if (owner.kind !== 'hired') return [];
  const lastDay = owner.returnBy;
  return [
    {
      what: 'Return to the hirer',
      state: dueStateOf({ lastDay, usesLeft: null, uses: null }, day),
      on: lastDay,
      usesLeft: null,
      reason:
        lastDay === null ? `hired from ${owner.from}; no day to return entered` : `hired from ${owner.from}`,
      refuses: false,
    },
  ];
}
