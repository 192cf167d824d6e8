import { type Kysely, type OrderByItemBuilder, sql } from 'kysely';
import type { ParsedInput } from '../../../core/contract/requests.ts';
import type { CertificateData, ToolClass, ToolData, ToolSummary } from '../../../core/contract/tool.ts';
import type { ToolOnRegister } from '../../../core/setting/input.ts';
import { CERTIFIED } from '../../../core/tools/certified.ts';
import { likePatterns } from '../fold.ts';
import type { RegisterSchema } from '../register/schema.ts';

/** Any number of ids as one parameter, so that the statement stays the same however many there are. */
const idList = (ids: readonly string[]) => sql<string>`(select value from json_each(${JSON.stringify(ids)}))`;

/** What was asked for later is missing in what was stored before. */
export function storedTool(text: string): ToolData {
  return { owner: { kind: 'own' }, weight: null, ...(JSON.parse(text) as Partial<ToolData>) } as ToolData;
}

export function storedCertificate(text: string): CertificateData {
  const later = { asFound: null, method: '', environment: null, decisionRule: null, confirmed: [] };
  return { ...later, ...(JSON.parse(text) as Partial<CertificateData>) } as CertificateData;
}

export async function findTool(db: Kysely<RegisterSchema>, id: string) {
  const row = await db
    .selectFrom('tool')
    .select(['id', 'version', 'data'])
    .where('id', '=', id)
    .executeTakeFirst();
  return row ? { ...row, data: storedTool(row.data) } : null;
}

export async function toolIdByNumber(db: Kysely<RegisterSchema>, numberKey: string): Promise<string | null> {
  const row = await db.selectFrom('tool').select('id').where('number_key', '=', numberKey).executeTakeFirst();
  return row?.id ?? null;
}

/** Another tool of the class with a serial number; tools without one are no twins. */
export async function toolWithSerial(
  db: Kysely<RegisterSchema>,
  toolClass: ToolClass,
  serialKey: string,
  exceptId: string | null,
): Promise<{ number: string; serial: string } | null> {
  if (serialKey === '') return null;
  const row = await db
    .selectFrom('tool')
    .select(['number', 'serial'])
    .where('serial_key', '=', serialKey)
    .where('serial_key', '!=', '')
    .where('class', '=', toolClass)
    .where('id', '!=', exceptId ?? '')
    .limit(1)
    .executeTakeFirst();
  return row ?? null;
}

/** A tool's certificates with the moment they were recorded, newest calibration last. */
export async function certificatesOf(db: Kysely<RegisterSchema>, toolIds: readonly string[]) {
  if (toolIds.length === 0) return [];
  const rows = await db
    .selectFrom('certificate')
    .innerJoin('event', 'event.id', 'certificate.id')
    .select([
      'certificate.id',
      'certificate.tool_id as toolId',
      'certificate.data',
      'event.recorded_at as recordedAt',
    ])
    .where('certificate.tool_id', 'in', idList(toolIds))
    .orderBy('certificate.calibrated_on')
    .orderBy('event.recorded_at')
    .orderBy('event.sequence')
    .execute();
  return rows.map((row) => ({ ...row, data: storedCertificate(row.data) }));
}

export type AnyTool = Omit<ToolOnRegister, 'data'> & { readonly data: ToolData };

export async function toolsWithCertificates(
  db: Kysely<RegisterSchema>,
  which: { readonly ids: readonly string[] } | { readonly classes: readonly ToolClass[] },
): Promise<AnyTool[]> {
  if ('ids' in which && which.ids.length === 0) return [];
  const tools = await db
    .selectFrom('tool')
    .select(['id', 'data'])
    .$if('ids' in which, (query) => query.where('id', 'in', idList('ids' in which ? which.ids : [])))
    .$if('classes' in which, (query) =>
      query.where('class', 'in', 'classes' in which ? [...which.classes] : []),
    )
    .orderBy('number_sort')
    .orderBy('id')
    .execute();
  const certificates = await certificatesOf(
    db,
    tools.map(({ id }) => id),
  );
  const byTool = Map.groupBy(certificates, ({ toolId }) => toolId);
  return tools.map(({ id, data }) => ({
    id,
    data: storedTool(data),
    certificates: (byTool.get(id) ?? []).map((certificate) => ({
      id: certificate.id,
      data: certificate.data,
    })),
  }));
}

/** Events in which the tool was really used; settings and certificates don't count. */
export async function usesOf(db: Kysely<RegisterSchema>, toolId: string): Promise<number> {
  const { uses } = await db
    .selectFrom('tool')
    .select('uses')
    .where('id', '=', toolId)
    .executeTakeFirstOrThrow();
  return uses;
}

/** Tools stored before owners were asked for are the site's own. */
const OWNER = sql<ToolSummary['owner']>`coalesce(json_extract(tool.data, '$.owner.kind'), 'own')`;

export async function toolPage(
  db: Kysely<RegisterSchema>,
  input: ParsedInput<'tool.list'>,
): Promise<{ rows: ToolSummary[]; total: number }> {
  const matching = matchingTools(db, input);
  const { total } = await matching
    .select(({ fn }) => fn.countAll<number>().as('total'))
    .executeTakeFirstOrThrow();
  const direction = (item: OrderByItemBuilder) =>
    input.direction === 'asc' ? item.asc().nullsLast() : item.desc().nullsLast();
  const rows = await matching
    .select(['id', 'number', 'serial', 'class', 'status', 'place', 'ratings', 'valid_until as validUntil'])
    .select((builder) => [
      builder
        .selectFrom('person')
        .select('person.name')
        .whereRef('person.id', '=', 'tool.holder_id')
        .as('holder'),
      OWNER.as('owner'),
    ])
    .$if(input.sort === 'class', (query) => query.orderBy('class', direction))
    .$if(input.sort === 'status', (query) => query.orderBy('status', direction))
    .$if(input.sort === 'validUntil', (query) => query.orderBy('valid_until', direction))
    .orderBy('number_sort', input.sort === 'number' ? input.direction : 'asc')
    .orderBy('id')
    .limit(input.pageSize)
    .offset((input.page - 1) * input.pageSize)
    .execute();
  return {
    rows: rows.map((row) => ({ ...row, needsCertificate: CERTIFIED.includes(row.class) })),
    total,
  };
}

function matchingTools(db: Kysely<RegisterSchema>, input: ParsedInput<'tool.list'>) {
  const { text, class: toolClass, status, owner } = input;
  let query = db.selectFrom('tool');
  if (toolClass !== null) query = query.where('class', '=', toolClass);
  if (status !== null) query = query.where('status', '=', status);
  if (owner !== null) query = query.where(OWNER, '=', owner);
  for (const pattern of likePatterns(text)) {
    query = query.where(sql<boolean>`tool.search like ${pattern} escape '\\'`);
  }
  return query;
}
