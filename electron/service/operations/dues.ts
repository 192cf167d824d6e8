import type { Kysely } from 'kysely';
import type { AnyTool } from '../../../core/setting/input.ts';
import { duesOf } from '../../../core/tools/due.ts';
import type { Due } from '../../../core/tools/due-state.ts';
import type { ToolFacts, ToolRules } from '../../../core/tools/facts.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { toolsWithCertificates } from '../repositories/tool.ts';
import { toolFacts, toolRules } from '../repositories/tool-facts.ts';

/** Tools with what is known of them, ready to be asked what is due on any day. */
export interface Watched {
  readonly rules: ToolRules;
  readonly tools: readonly { readonly tool: AnyTool; readonly facts: ToolFacts | null }[];
}

/** Gathers tools with their facts up to a day; the number of queries does not grow with the number of tools. */
export async function watched(
  db: Kysely<RegisterSchema>,
  toolIds: readonly string[],
  on: string,
): Promise<Watched> {
  const tools = await toolsWithCertificates(db, { ids: toolIds });
  const facts = new Map((await toolFacts(db, toolIds, on)).map((each) => [each.toolId, each]));
  return {
    rules: await toolRules(db),
    // A stored tool's properties are those of one class, which the type of a row can't say.
    tools: tools.map((tool) => ({ tool: tool as AnyTool, facts: facts.get(tool.id) ?? null })),
  };
}

/** What of a tool is due on a day, in words, beginning with what it is. */
export function dueWords(tool: AnyTool, facts: ToolFacts | null, rules: ToolRules, on: string): string[] {
  return duesOf(tool, facts, rules, on)
    .filter(({ state }) => state === 'overdue' || state === 'not known')
    .map((due) => `${due.what}, ${due.state}${lastDay(due)}: ${due.reason}`);
}

function lastDay({ on }: Due): string {
  return on === null ? '' : ` after ${on}`;
}
