import { canonicalText } from '../../../core/audit/canonical.ts';
import { toHex } from '../../../core/audit/hash.ts';
import type { ImportDone } from '../../../core/contract/import.ts';
import type { JointData } from '../../../core/contract/joint.ts';
import type { ParsedInput } from '../../../core/contract/requests.ts';
import type { ToolData } from '../../../core/contract/tool.ts';
import { append } from '../chain/append.ts';
import type { EventDraft } from '../chain/events.ts';
import { sha256 } from '../chain/sha256.ts';
import type { ReadContext, WriteContext } from '../context.ts';
import { invalidField, notFound, RequestFailure } from '../failure.ts';
import { nameKey } from '../fold.ts';
import { COLUMNS_OF_KIND } from '../import/columns.ts';
import type { JobLookup, OnRegister, RegisterLookup } from '../import/lookup.ts';
import { readImport } from '../import/read.ts';
import type { ImportResult } from '../import/result.ts';
import { recordCertificate } from '../operations/certificate.ts';
import { findCampaign } from '../repositories/campaign.ts';
import { jobsOf } from '../repositories/job.ts';
import { storedCertificate, storedTool } from '../repositories/tool.ts';
import { todayAt } from '../time.ts';
import type { Read, Write } from './handler.ts';

type ImportRequest = ParsedInput<'import.preview'>;

export const importColumns: Read<'import.columns'> = async (_, { kind }) => {
  const rows = COLUMNS_OF_KIND[kind].map(({ heading, needed, meaning, example }) => ({
    heading,
    needed,
    meaning,
    example,
  }));
  return { rows, total: rows.length };
};

export const previewImport: Read<'import.preview'> = async (context, input) => {
  const { report } = readImport(input, await registerLookup(context, input));
  return { fingerprint: fingerprintOf(input), ...report };
};

/** Stands for the file's bytes and how they were read: what was seen is what is written. */
function fingerprintOf({ kind, content, options, campaignId }: ImportRequest): string {
  const bytes = Buffer.from(content, 'base64');
  return toHex(sha256(canonicalText({ kind, options, campaignId }), bytes));
}

export const confirmImport: Write<'import.confirm'> = async (context, { data }) => {
  const { fingerprint, leaveOutFaulty, ...file } = data;
  if (fingerprint !== fingerprintOf(file)) {
    throw new RequestFailure(
      'conflict',
      'The file or how it is read has changed since the preview; nothing was written',
      [{ field: 'data.fingerprint', value: fingerprint, allowed: 'the fingerprint of the preview' }],
    );
  }
  const result = readImport(file, await registerLookup(context, file));
  const { report } = result;
  if (report.fileFault !== null) throw invalidField('data.content', file.fileName, report.fileFault);
  if (report.faultyRows > 0 && !leaveOutFaulty) {
    throw new RequestFailure(
      'invalid_input',
      `${report.faultyRows} of ${report.rows} rows have faults; nothing was written`,
      report.faults.map(({ line, column, value, allowed }) => ({
        field: `line ${line}, ${column}`,
        value,
        allowed,
      })),
    );
  }
  const done: ImportDone = {
    eventId: context.newId(),
    added: report.added,
    changed: report.changed,
    unchanged: report.unchanged,
    leftOut: report.faultyRows,
  };
  const { eventId, ...counts } = done;
  await append(context, [
    {
      kind: 'import confirmed',
      id: eventId,
      data: { kind: file.kind, fileName: file.fileName, fingerprint, ...counts },
    },
  ]);
  await writeRecords(context, result, { id: eventId, fileName: file.fileName });
  return done;
};

async function writeRecords(
  context: WriteContext,
  result: ImportResult,
  { id: importId, fileName }: { readonly id: string; readonly fileName: string },
): Promise<void> {
  if (result.kind === 'certificate') {
    if (result.record !== null && result.state === 'added')
      await recordCertificate(context, result.record, importId);
    return;
  }
  if (result.kind === 'tools') {
    await append(
      context,
      result.records
        .filter(({ state }) => state !== 'unchanged')
        .map(({ existing, data }) => savedDraft(context, 'tool saved', existing, data, importId)),
    );
    return;
  }
  if (result.kind === 'jobs') {
    const reason = `list ${fileName}`;
    await append(
      context,
      result.records
        .filter(({ state }) => state !== 'unchanged')
        .map(({ existing, data }) => ({
          kind: 'job saved' as const,
          id: context.newId(),
          data: {
            id: existing?.id ?? context.newId(),
            version: (existing?.version ?? 0) + 1,
            data,
            importId,
            personId: context.actor?.personId ?? null,
            reason,
          },
        })),
    );
    return;
  }
  const unitIds = await unitsFor(context, result.newUnits, importId);
  await append(
    context,
    result.records
      .filter(({ state }) => state !== 'unchanged')
      .map(({ existing, unitName, data }) => {
        const unitId = unitIds.get(nameKey(unitName));
        if (unitId === undefined) throw new Error(`no unit for ${unitName}`);
        return savedDraft(context, 'joint saved', existing, { ...data, unitId }, importId);
      }),
  );
}

function savedDraft<K extends 'joint saved' | 'tool saved'>(
  { newId }: WriteContext,
  kind: K,
  existing: { readonly id: string; readonly version: number } | null,
  data: K extends 'joint saved' ? JointData : ToolData,
  importId: string,
): EventDraft {
  return {
    kind,
    id: newId(),
    data: { id: existing?.id ?? newId(), version: (existing?.version ?? 0) + 1, data, importId },
  } as EventDraft;
}

/** All units by folded name, the new ones created first. */
async function unitsFor(
  context: WriteContext,
  newUnits: readonly string[],
  importId: string,
): Promise<Map<string, string>> {
  const { db, site, newId } = context;
  // One unit for all spellings of its name; the first in the file is kept.
  const byKey = new Map(newUnits.toReversed().map((name) => [nameKey(name), name]));
  await append(
    context,
    [...byKey.values()].toReversed().map((name) => ({
      kind: 'unit saved' as const,
      id: newId(),
      data: { id: newId(), version: 1, siteId: site.id, data: { name }, importId },
    })),
  );
  const units = await db.selectFrom('plant_unit').select(['id', 'name_key']).execute();
  return new Map(units.map((unit) => [unit.name_key, unit.id]));
}

/** What the import must know of the register, read once; records are parsed when a row names them. */
async function registerLookup(
  context: ReadContext,
  { kind, campaignId }: ImportRequest,
): Promise<RegisterLookup> {
  const { db } = context;
  const units = await db.selectFrom('plant_unit').select(['id', 'name_key as key']).execute();
  const joints =
    kind === 'joints' || kind === 'jobs'
      ? await db.selectFrom('joint').select(['id', 'version', 'tag_key as key', 'data']).execute()
      : [];
  const tools = await db
    .selectFrom('tool')
    .select(['id', 'version', 'number_key as key', 'serial_key', 'class', 'data'])
    .execute();
  const certificates =
    kind === 'certificate'
      ? await db.selectFrom('certificate').select(['tool_id', 'number_key', 'data']).execute()
      : [];
  const unitByName = new Map(units.map((unit) => [unit.key, unit.id]));
  const jointByTag = new Map(joints.map((joint) => [joint.key, joint]));
  const toolByNumber = new Map(tools.map((tool) => [tool.key, tool]));
  const toolBySerial = new Map(
    tools.filter((tool) => tool.serial_key !== '').map((tool) => [`${tool.class} ${tool.serial_key}`, tool]),
  );
  const certificateByNumber = new Map(
    certificates.map((certificate) => [`${certificate.tool_id} ${certificate.number_key}`, certificate.data]),
  );
  return {
    today: todayAt(context),
    jobs: kind === 'jobs' && campaignId !== null ? await jobLookup(context, campaignId) : null,
    unitId: (name) => unitByName.get(nameKey(name)) ?? null,
    joint: (tag) => onRegister(jointByTag.get(nameKey(tag)), (text) => JSON.parse(text) as JointData),
    tool: (number) => onRegister(toolByNumber.get(nameKey(number)), storedTool),
    toolWithSerial: (toolClass, serial) =>
      onRegister(serial === '' ? undefined : toolBySerial.get(`${toolClass} ${nameKey(serial)}`), storedTool),
    certificate: (toolId, number) => {
      const text = certificateByNumber.get(`${toolId} ${nameKey(number)}`);
      return text === undefined ? null : storedCertificate(text);
    },
  };
}

async function jobLookup({ db, site }: ReadContext, campaignId: string): Promise<JobLookup> {
  const campaign = await findCampaign(db, campaignId);
  if (campaign === null) throw notFound('campaign', 'campaignId', campaignId);
  if (campaign.data.closed) {
    throw invalidField('campaignId', campaign.data.name, 'a campaign that is not closed');
  }
  return { campaign, existing: await jobsOf(db, campaignId), timeZone: site.timeZone };
}

function onRegister<T>(
  row: { readonly id: string; readonly version: number; readonly data: string } | undefined,
  read: (text: string) => T,
): OnRegister<T> | null {
  return row ? { id: row.id, version: row.version, data: read(row.data) } : null;
}
