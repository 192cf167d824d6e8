import type { TableCells } from '../contract/site.ts';
import type { AnyTool } from '../setting/input.ts';
import type { FindingFacts } from '../text/finding-facts.ts';
import { wordFinding } from '../text/findings.ts';
import type { Unit } from '../units/units.ts';
import type { FindingCode } from './codes.ts';
import type { Finding, FindingPlace, Raised, Severity } from './finding.ts';

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

/**
 * Builds a finding; its words are written when they are asked for.
 *
 * @param code code of the closed list
 * @param facts gives what its words speak of
 * @param about severity, subject, place, source and the numbers behind it
 * @returns finding without its words
 * @example raise('bolt_set_unknown', () => ({ index: 3, sets: 1 }), { severity: 'refusal', subject: 'A', place:
 * atSettings('boltSet'), source: 'joint data' }).severity // 'refusal'
 * @source rule of this program
 */
export function raise<C extends FindingCode>(code: C, facts: () => FindingFacts[C], about: About): Raised {
  const { severity, subject, place, source, value = null, limit = null, unit = null, confirm = null } = about;
  const words = () => wordFinding(code, facts());
  return { code, severity, subject, value, limit, unit, source, place, confirm, words };
}

/**
 * Writes a finding out for a person.
 *
 * @param raised finding without its words
 * @returns the same with title, detail and remedy
 * @example worded(raise('bolt_set_unknown', () => ({ index: 3, sets: 1 }), { severity: 'refusal', subject: 'A', place:
 * atSettings('boltSet'), source: 'joint data' })).title // 'No such bolt set'
 * @source rule of this program
 */
export function worded({ words, place, confirm, ...numbers }: Raised): Finding {
  return { ...numbers, ...words(), place, confirm };
}

/**
 * The page of a joint, at a field.
 *
 * @param id the joint’s id
 * @param field field of its form
 * @returns place for a finding
 * @example atJoint('a', 'grip').screen // 'joint'
 * @source rule of this program
 */
export function atJoint(id: string, field: string): FindingPlace {
  return { screen: 'joint', id, field };
}

/**
 * The page of a tool, at a field.
 *
 * @param tool tool of the register
 * @param field field of its form
 * @returns place for a finding
 * @example atTool({ id: 'a' }, 'ratedTorque').screen // 'tool'
 * @source rule of this program
 */
export function atTool(tool: Pick<AnyTool, 'id'>, field: string): FindingPlace {
  return { screen: 'tool', id: tool.id, field };
}

/**
 * The choice of tools, dates and plan.
 *
 * @param field field of the choices
 * @returns place for a finding
 * @example atSettings('planId').id // null
 * @source rule of this program
 */
export function atSettings(field: string): FindingPlace {
  return { screen: 'settings', id: null, field };
}
