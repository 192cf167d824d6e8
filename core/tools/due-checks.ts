import type { CheckKind, ToolRuleData } from '../contract/check.ts';
import type { AnyTool } from '../setting/input.ts';
import { laterBy } from './calendar.ts';
import { type Due, type DueDay, dueStateOf } from './due-state.ts';
import type { ToolFacts, ToolRules } from './facts.ts';

type Check = ToolFacts['checks'][number];
type Checklist = ToolRules['checklists'][number];

/** A calibration answers what these found; it says nothing of a leak or a worn hexagon. */
const ANSWERED_BY_CALIBRATION: readonly CheckKind[] = ['comparison', 'zero of the gauge'];

/**
 * Checks of a tool by the site's lists, and failed checks that still stand.
 *
 * @param tool tool of the register
 * @param facts what is recorded of its past; null when nothing is
 * @param checklists the site’s lists
 * @param rule the site’s rule for the class, or null
 * @param day day it is asked for and days of notice
 * @returns one line per list that counts days or uses, and one per failed check
 * @example checkDues(input.set.drive, null, [], null, { on: '2026-03-16', noticeDays: 30 }).length // 0
 * @source the site’s lists, each naming its own source
 */
export function checkDues(
  tool: AnyTool,
  facts: ToolFacts | null,
  checklists: readonly Checklist[],
  rule: ToolRuleData | null,
  day: DueDay,
): Due[] {
  const checks = facts?.checks ?? [];
  const failed = checks.filter((check) => stands(check, tool));
  return [
    ...failed.map((check) => failedDue(check, checklists)),
    ...checklists
      .filter(({ id, data }) => asks(data, tool) && !failed.some(({ checklistId }) => checklistId === id))
      .map((list) => listDue(list, newestOf(checks, list), rule, day)),
  ];
}

function asks({ retired, classes, everyDays, everyUses }: Checklist['data'], tool: AnyTool): boolean {
  return (
    !retired && (everyDays !== null || everyUses !== null) && classes.includes(tool.data.properties.class)
  );
}

function newestOf(checks: readonly Check[], { id }: Checklist): Check | null {
  return checks.reduce<Check | null>(
    (newest, check) =>
      check.checklistId === id && (newest === null || check.on >= newest.on) ? check : newest,
    null,
  );
}

function stands({ kind, on, result }: Check, { certificates }: AnyTool): boolean {
  if (result === 'passed') return false;
  const calibrated = ANSWERED_BY_CALIBRATION.includes(kind);
  return !(calibrated && certificates.some(({ data }) => data.calibratedOn > on));
}

function failedDue({ kind, on, checklistId }: Check, checklists: readonly Checklist[]): Due {
  const list = checklists.find(({ id }) => id === checklistId);
  const what = list?.data.name ?? kind;
  return {
    what: what.charAt(0).toUpperCase() + what.slice(1),
    state: 'overdue',
    on: null,
    usesLeft: null,
    reason: `failed on ${on}; no passed check of the kind since`,
    refuses: true,
  };
}

function listDue(
  { data: { name, everyDays, everyUses, overdue, source } }: Checklist,
  newest: Check | null,
  rule: ToolRuleData | null,
  day: DueDay,
): Due {
  const refuses = overdue === 'refuse';
  if (newest === null) {
    const reason = `no such check on record (${source})`;
    return { what: name, state: 'not known', on: null, usesLeft: null, reason, refuses };
  }
  const lastDay = everyDays === null ? null : laterBy(newest.on, { days: everyDays }, rule?.dueAt);
  const usesLeft = everyUses === null ? null : everyUses - newest.usesSince;
  const every = [
    ...(everyDays === null ? [] : [`every ${everyDays} days`]),
    ...(everyUses === null ? [] : [`every ${everyUses} uses`]),
  ];
  return {
    what: name,
    state: dueStateOf({ lastDay, usesLeft, uses: everyUses }, day),
    on: lastDay,
    usesLeft,
    reason: `${every.join(' or ')}, last on ${newest.on} (${source})`,
    refuses,
  };
}
