import { type Kysely, sql } from 'kysely';
import type { DueRow, DueState } from '../../../core/contract/check.ts';
import type { ParsedInput } from '../../../core/contract/requests.ts';
import type { AnyTool } from '../../../core/setting/input.ts';
import { laterBy } from '../../../core/tools/calendar.ts';
import { duesOf } from '../../../core/tools/due.ts';
import type { Due } from '../../../core/tools/due-state.ts';
import type { ToolFacts, ToolRules } from '../../../core/tools/facts.ts';
import { likePatterns, sortKey } from '../fold.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { watched } from './dues.ts';

type DueInput = ParsedInput<'tool.due'>;

const URGENCY: readonly DueState[] = [
  'overdue',
  'due before it is needed',
  'due soon',
  'not known',
  'in date',
];

/**
 * What lapses of the tools of the register, the most urgent first, a page of it. Scrapped tools are left out. Every
 * tool is looked at, since what is due follows from rules and counts that no column holds.
 */
export async function dueList(
  db: Kysely<RegisterSchema>,
  input: DueInput,
  today: string,
): Promise<{ rows: DueRow[]; total: number }> {
  const on = input.on ?? today;
  const { rules, tools } = await watched(db, await toolIdsOf(db, input), on);
  const until = laterBy(on, { days: input.withinDays });
  const rows = tools
    .flatMap(({ tool, facts }) => duesOfTool(tool, facts, rules, on))
    .filter((row) => input.all || asked(row, until))
    .map((row) => ({ row, key: sortKey(row.number) }))
    .sort((a, b) => order(a.row, b.row) || compare(a.key, b.key) || compare(a.row.what, b.row.what))
    .map(({ row }) => row);
  const start = (input.page - 1) * input.pageSize;
  return { rows: rows.slice(start, start + input.pageSize), total: rows.length };
}

/** What is due of one tool on a day, with the first kit that would find it lapsed. */
export function duesOfTool(tool: AnyTool, facts: ToolFacts | null, rules: ToolRules, on: string): DueRow[] {
  const { number, status, properties } = tool.data;
  return duesOf(tool, facts, rules, on).map((due) => {
    const kit = neededFor(due, facts, on);
    const early = kit !== null && (due.state === 'due soon' || due.state === 'in date');
    return {
      toolId: tool.id,
      number,
      class: properties.class,
      status,
      what: due.what,
      state: early ? 'due before it is needed' : due.state,
      on: due.on,
      usesLeft: due.usesLeft,
      reason: due.reason,
      neededFor: kit,
    };
  });
}

/** A kit not over yet whose last day lies after the last good day; of something overdue any such kit. */
function neededFor({ state, on: lastDay }: Due, facts: ToolFacts | null, on: string): DueRow['neededFor'] {
  const kits = (facts?.kits ?? []).filter(({ to }) => to >= on);
  const kit = kits.find(({ to }) => state === 'overdue' || (lastDay !== null && to > lastDay));
  return kit === undefined ? null : { kitId: kit.id, kit: kit.name, from: kit.from, to: kit.to };
}

function asked({ state, on }: DueRow, until: string): boolean {
  if (state === 'in date') return on !== null && on <= until;
  return state !== 'due soon' || on === null || on <= until;
}

function order(a: DueRow, b: DueRow): number {
  const byState = URGENCY.indexOf(a.state) - URGENCY.indexOf(b.state);
  return byState === 0 ? compare(a.on ?? '9', b.on ?? '9') : byState;
}

function compare(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}

async function toolIdsOf(
  db: Kysely<RegisterSchema>,
  { text, class: toolClass }: DueInput,
): Promise<string[]> {
  let query = db.selectFrom('tool').select('id').where('status', '!=', 'scrapped');
  if (toolClass !== null) query = query.where('class', '=', toolClass);
  for (const pattern of likePatterns(text)) {
    query = query.where(sql<boolean>`tool.search like ${pattern} escape '\\'`);
  }
  return (await query.execute()).map(({ id }) => id);
}
