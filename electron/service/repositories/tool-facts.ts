import { type Kysely, sql } from 'kysely';
import type { ChecklistData, ToolRuleData } from '../../../core/contract/check.ts';
import type { KitData } from '../../../core/contract/custody.ts';
import type { ToolFacts, ToolRules } from '../../../core/tools/facts.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { dateAtSite, endOfDay, startOfDay } from '../time.ts';
import { openCases } from './open-cases.ts';
import { readSite } from './site.ts';

type Db = Kysely<RegisterSchema>;

/** The site's rules for tools, and its lists of checks without the retired ones. */
export async function toolRules(db: Db): Promise<ToolRules> {
  const rules = await db.selectFrom('tool_rule').select('data').orderBy('class').execute();
  const lists = await db
    .selectFrom('checklist')
    .select(['id', 'data'])
    .where('retired', '=', 0)
    .orderBy('name_key')
    .execute();
  return {
    rules: rules.map(({ data }) => JSON.parse(data) as ToolRuleData),
    checklists: lists.map(({ id, data }) => ({ id, data: JSON.parse(data) as ChecklistData })),
  };
}

/** What the register knows of tools up to the end of a day at the site, in as many queries for one as for thousands. */
export async function toolFacts(db: Db, toolIds: readonly string[], on: string): Promise<ToolFacts[]> {
  if (toolIds.length === 0) return [];
  const { timeZone } = await readSite(db);
  const until = endOfDay(on, timeZone);
  const totals = await totalUses(db, toolIds);
  const certified = await newestCalibrations(db, toolIds, on);
  const checks = await newestChecks(db, toolIds, until);
  const overloads = await newestOverloads(db, toolIds, until);
  const kits = await openKits(db, toolIds);
  const cases = await openCases(db, toolIds);
  const counted = await countUses(db, until, [
    ...[...certified].map(([toolId, day]) => ({
      key: `certificate ${toolId}`,
      toolId,
      since: startOfDay(day, timeZone),
    })),
    ...checks.map(({ id, toolId, happenedAtUtc }) => ({ key: id, toolId, since: happenedAtUtc })),
  ]);
  const checksOf = Map.groupBy(checks, ({ toolId }) => toolId);
  return toolIds.map((toolId): ToolFacts => {
    const total = totals.get(toolId) ?? 0;
    const own = checksOf.get(toolId) ?? [];
    const overload = overloads.get(toolId) ?? null;
    return {
      toolId,
      uses: {
        total,
        sinceCertificate: certified.has(toolId) ? (counted.get(`certificate ${toolId}`) ?? 0) : total,
      },
      checks: own.map(({ id, kind, checklistId, happenedAt, result }) => ({
        id,
        kind,
        checklistId,
        on: dateAtSite(happenedAt, timeZone),
        result,
        usesSince: counted.get(id) ?? 0,
      })),
      openCases: cases.get(toolId) ?? [],
      overload: overload === null ? null : standing(overload, certified.get(toolId), own, timeZone),
      kits: kits.get(toolId) ?? [],
    };
  });
}

/** One parameter however many there are, so that the statement stays the same. */
const each = (values: readonly unknown[]) =>
  sql<{ value: string }>`json_each(${JSON.stringify(values)})`.as('asked');

async function totalUses(db: Db, toolIds: readonly string[]): Promise<Map<string, number>> {
  const rows = await db
    .selectFrom(each(toolIds))
    .innerJoin('tool', 'tool.id', 'asked.value')
    .select(['tool.id', 'tool.uses'])
    .execute();
  return new Map(rows.map(({ id, uses }) => [id, uses]));
}

/** Day of the newest calibration on or before a day. */
async function newestCalibrations(
  db: Db,
  toolIds: readonly string[],
  on: string,
): Promise<Map<string, string>> {
  const rows = await db
    .selectFrom(each(toolIds))
    .innerJoin('certificate', 'certificate.tool_id', 'asked.value')
    .select(({ fn }) => ['certificate.tool_id as toolId', fn.max('certificate.calibrated_on').as('day')])
    .where('certificate.calibrated_on', '<=', on)
    .groupBy('certificate.tool_id')
    .execute();
  return new Map(rows.map(({ toolId, day }) => [toolId, day]));
}

/** Newest check of each kind and list. */
async function newestChecks(db: Db, toolIds: readonly string[], until: string) {
  return db
    .selectFrom((ranked) =>
      ranked
        .selectFrom(each(toolIds))
        .innerJoin('tool_check', 'tool_check.tool_id', 'asked.value')
        .select(({ fn }) => [
          'tool_check.id',
          'tool_check.tool_id as toolId',
          'tool_check.kind',
          'tool_check.checklist_id as checklistId',
          'tool_check.happened_at as happenedAt',
          'tool_check.happened_at_utc as happenedAtUtc',
          'tool_check.result',
          fn
            .agg<number>('row_number')
            .over((over) =>
              over
                .partitionBy(['tool_check.tool_id', 'tool_check.kind', 'tool_check.checklist_id'])
                .orderBy('tool_check.happened_at_utc', 'desc')
                .orderBy('tool_check.id', 'desc'),
            )
            .as('place'),
        ])
        .where('tool_check.happened_at_utc', '<', until)
        .as('ranked'),
    )
    .select(['id', 'toolId', 'kind', 'checklistId', 'happenedAt', 'happenedAtUtc', 'result'])
    .where('place', '=', 1)
    .orderBy('toolId')
    .orderBy('happenedAtUtc', 'desc')
    .orderBy('id', 'desc')
    .execute();
}

type Check = Awaited<ReturnType<typeof newestChecks>>[number];

async function newestOverloads(db: Db, toolIds: readonly string[], until: string) {
  const rows = await db
    .selectFrom(each(toolIds))
    .innerJoin('tool_overload', 'tool_overload.tool_id', 'asked.value')
    .select([
      'tool_overload.tool_id as toolId',
      'tool_overload.event_id as eventId',
      'tool_overload.happened_at as happenedAt',
      'tool_overload.happened_at_utc as happenedAtUtc',
      'tool_overload.text',
    ])
    .where('tool_overload.happened_at_utc', '<', until)
    .orderBy('tool_overload.happened_at_utc')
    .execute();
  return new Map(rows.map((row) => [row.toolId, row]));
}

type OverloadRow = NonNullable<ReturnType<Awaited<ReturnType<typeof newestOverloads>>['get']>>;

/** Null once the tool was calibrated on a later day, or passed a check; cleaning it tells nothing of its strength. */
function standing(
  { eventId, happenedAt, happenedAtUtc, text }: OverloadRow,
  calibratedOn: string | undefined,
  checks: readonly Check[],
  timeZone: string,
): ToolFacts['overload'] {
  const on = dateAtSite(happenedAt, timeZone);
  if (calibratedOn !== undefined && calibratedOn > on) return null;
  const passed = checks.some(
    (check) =>
      check.result === 'passed' &&
      check.kind !== 'cleaning and lubrication' &&
      check.happenedAtUtc >= happenedAtUtc,
  );
  return passed ? null : { eventId, on, text };
}

async function openKits(db: Db, toolIds: readonly string[]) {
  const rows = await db
    .selectFrom(each(toolIds))
    .innerJoin('kit_tool', 'kit_tool.tool_id', 'asked.value')
    .innerJoin('kit', 'kit.id', 'kit_tool.kit_id')
    .select([
      'kit_tool.tool_id as toolId',
      'kit.id',
      'kit.name',
      'kit.from_day as from',
      'kit.to_day as to',
      'kit.data',
    ])
    .where('kit.closed', '=', 0)
    .orderBy('kit.from_day')
    .orderBy('kit.name_key')
    .orderBy('kit.id')
    .execute();
  const kits = new Map<string, ToolFacts['kits'][number][]>();
  for (const { toolId, data, ...kit } of rows) {
    const { jointIds } = JSON.parse(data) as KitData;
    kits.set(toolId, [...(kits.get(toolId) ?? []), { ...kit, jointIds }]);
  }
  return kits;
}

interface Counted {
  readonly key: string;
  readonly toolId: string;
  /** Moment in UTC from which on uses count. */
  readonly since: string;
}

/** Recorded uses from each moment on, by key: a range of one index for each. */
async function countUses(db: Db, until: string, asked: readonly Counted[]): Promise<Map<string, number>> {
  if (asked.length === 0) return new Map();
  const rows = await db
    .selectFrom(each(asked))
    .select(({ selectFrom }) => [
      sql<string>`asked.value ->> 'key'`.as('key'),
      selectFrom('event_tool')
        .select(({ fn }) => fn.countAll<number>().as('uses'))
        .where('event_tool.tool_id', '=', sql<string>`asked.value ->> 'toolId'`)
        .where('event_tool.used_at', '>=', sql<string>`asked.value ->> 'since'`)
        .where('event_tool.used_at', '<', until)
        .as('uses'),
    ])
    .execute();
  return new Map(rows.map(({ key, uses }) => [key, uses ?? 0]));
}
