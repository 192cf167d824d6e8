import type { ToolRuleData } from '../contract/check.ts';
import type { ToolProperties } from '../contract/tool.ts';
import { laterBy } from './calendar.ts';
import { type Due, type DueDay, dueStateOf } from './due-state.ts';
import type { ToolFacts } from './facts.ts';
import { HOSE_LIFE_YEARS, hoseLifeEnds } from './hose.ts';

type Hose = Extract<ToolProperties, { class: 'hose' }>;

/** Where the hose life comes from while the site has no rule of its own. */
export const HOSE_LIFE_SOURCE = 'DIN 20066:2002-10 (second-hand)';

/**
 * Age, time in use and pressure test of a hose by the site's rule. Where the site has none for the age, the common
 * limit stands as a warning.
 *
 * Equation: last good day = date + months of the rule.
 * @param hose hose as it stands on the register
 * @param facts what is recorded of its past; null when nothing is
 * @param rule the site’s rule for hoses, or null
 * @param day day it is asked for and days of notice
 * @returns one line for each thing the rule asks, and always one for the age
 * @example hoseDues({ class: 'hose', madeOn: '2020-03-16', firstUsedOn: null }, null, null,
 * { on: '2026-03-17', noticeDays: 30 })[0].state // 'overdue'
 * @source the site’s rule; DIN 20066:2002-10 (second-hand)
 */
export function hoseDues(
  { madeOn, firstUsedOn }: Hose,
  facts: ToolFacts | null,
  rule: ToolRuleData | null,
  day: DueDay,
): Due[] {
  const {
    hoseAgeMonths = null,
    hoseUseMonths = null,
    hoseTestMonths = null,
    hoseTestFactor = null,
  } = rule ?? {};
  const tested = lastTest(facts);
  const at = hoseTestFactor === null ? '' : ` at ${hoseTestFactor} times the rating`;
  return [
    hoseAgeMonths === null
      ? byDefault(madeOn, day)
      : byMonths('Hose, age', 'made', madeOn, hoseAgeMonths, rule, day),
    ...(hoseUseMonths === null
      ? []
      : [byMonths('Hose, time in use', 'first used', firstUsedOn, hoseUseMonths, rule, day)]),
    ...(hoseTestMonths === null
      ? []
      : [byMonths(`Hose, pressure test${at}`, 'last tested', tested, hoseTestMonths, rule, day)]),
  ];
}

function lastTest(facts: ToolFacts | null): string | null {
  const tests =
    facts?.checks.filter(({ kind, result }) => kind === 'pressure test' && result === 'passed') ?? [];
  return tests.reduce<string | null>((last, { on }) => (last === null || on > last ? on : last), null);
}

function byDefault(madeOn: string | null, day: DueDay): Due {
  const lastDay = madeOn === null ? null : hoseLifeEnds(madeOn);
  const made = madeOn === null ? 'the day it was made is not known' : `made on ${madeOn}`;
  return {
    what: 'Hose, age',
    state: dueStateOf({ lastDay, usesLeft: null, uses: null }, day),
    on: lastDay,
    usesLeft: null,
    reason: `${made}; no rule of the site, ${HOSE_LIFE_YEARS} years by ${HOSE_LIFE_SOURCE}`,
    refuses: false,
  };
}

function byMonths(
  what: string,
  since: string,
  from: string | null,
  months: number,
  rule: ToolRuleData | null,
  day: DueDay,
): Due {
  const lastDay = from === null ? null : laterBy(from, { months }, rule?.dueAt);
  const begun = from === null ? `the day it was ${since} is not known` : `${since} on ${from}`;
  return {
    what,
    state: dueStateOf({ lastDay, usesLeft: null, uses: null }, day),
    on: lastDay,
    usesLeft: null,
    reason: `${begun}; ${months} months (${rule?.source ?? ''})`,
    refuses: true,
  };
}
