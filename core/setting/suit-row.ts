import type { SuitRow } from '../contract/setting.ts';
import type { Raised } from '../findings/finding.ts';
import { describeTool } from '../text/describe.ts';
import { CERTIFIED } from '../tools/certified.ts';
import type { Basis } from './basis.ts';
import type { AnyTool, CardInput, ToolOnRegister } from './input.ts';

/** What every candidate is held against. */
export interface Job {
  readonly input: CardInput;
  readonly basis: Basis;
  /** Torque that has to pass, N·m; null while it is not known. */
  readonly torque: number | null;
  /** Pressure on the gauge of the chosen drive unit, Pa; null while it is not known. */
  readonly pressure: number | null;
}

/** What stands against a candidate, what is not known, and the reducers it needs. */
export interface Suits {
  readonly against: readonly string[];
  readonly unknown: readonly string[];
  readonly reducers?: readonly ToolOnRegister<'reducer'>[];
}

/**
 * One candidate with how it suits; what is not known is never a pass.
 *
 * @param tool tool of the register
 * @param suits what stands against it and what is not known
 * @returns the row, with what the tool is told by
 * @example suitRow(complete.set.pump, { against: [], unknown: ['pressure not known'] }).state // 'not known'
 * @source rule of this program
 */
export function suitRow(tool: AnyTool, { against, unknown, reducers = [] }: Suits): SuitRow {
  const { number, serial, place, status, properties } = tool.data;
  return {
    toolId: tool.id,
    number,
    class: properties.class,
    serial,
    place,
    status,
    ratings: describeTool(properties),
    validUntil: tool.certificates.at(-1)?.data.validUntil ?? null,
    needsCertificate: CERTIFIED.includes(properties.class),
    state: against.length > 0 ? 'does not suit' : unknown.length > 0 ? 'not known' : 'suits',
    reducerIds: reducers.map((reducer) => reducer.id),
    reasons: [...new Set([...against, ...unknown])],
  };
}

/**
 * What refuses a setting among findings, in words.
 *
 * @param findings what the checks of a set say
 * @returns one text for each refusal
 * @example refusals([]).length // 0
 * @source rule of this program
 */
export function refusals(findings: readonly Raised[]): string[] {
  return findings
    .filter(({ severity }) => severity === 'refusal')
    .map(({ words }) => {
      const { title, detail } = words();
      return `${title}: ${detail}`;
    });
}
