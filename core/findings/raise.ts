import type { TableCells } from '../contract/site.ts';
import type { AnyTool } from '../setting/input.ts';
import type { FindingFacts } from '../text/finding-facts.ts';
import { wordFinding } from '../text/findings.ts';
import type { Unit } from '../units/units.ts';
import type { FindingCode } from './codes.ts';
import type { Finding, FindingPlace, Severity } from './finding.ts';

/** What a finding is about, and the numbers behind it. */
export interface About {
  readonly severity: Severity;
  readonly subject: string;
  readonly place: FindingPlace;
  readonly source: string;
  readonly value?: number | string | null;
  readonly limit?: number | string | null;
  readonly unit?: Unit;
  readonly confirm?: TableCells;
}

/** Builds a finding with its words. */
export function raise<C extends FindingCode>(code: C, facts: FindingFacts[C], about: About): Finding {
  const { severity, subject, place, source, value = null, limit = null, unit = null, confirm = null } = about;
  return { code, severity, subject, value, limit, unit, source, ...wordFinding(code, facts), place, confirm };
}

/** The page of a joint, at a field. */
export function atJoint(id: string, field: string): FindingPlace {
  return { screen: 'joint', id, field };
}

/** The page of a tool, at a field. */
export function atTool(tool: Pick<AnyTool, 'id'>, field: string): FindingPlace {
  return { screen: 'tool', id: tool.id, field };
}

/** The choice of tools, dates and plan. */
export function atSettings(field: string): FindingPlace {
  return { screen: 'settings', id: null, field };
}
