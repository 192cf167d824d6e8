import type { Kysely } from 'kysely';
import type { ToolRecord } from '../../../core/contract/tool-record.ts';
import { registerHead } from '../chain/head.ts';
import type { ReadContext } from '../context.ts';
import { notFound } from '../failure.ts';
import { attachmentsWithState } from '../operations/attachment-states.ts';
import { calibrationHistory } from '../operations/calibration-history.ts';
import { certificateDetails } from '../operations/certificate-details.ts';
import { duesOfTool } from '../operations/due-list.ts';
import { watched } from '../operations/dues.ts';
import { caseSummary, casesOfTool } from '../recall/cases.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { checksOf } from '../repositories/checklist.ts';
import { movesOf } from '../repositories/custody.ts';
import { findTool } from '../repositories/tool.ts';
import { firstAndLastUse, studsTurnedSince, usePage } from '../repositories/tool-uses.ts';
import { atSite, startOfDay, todayAt } from '../time.ts';
import type { Read } from './handler.ts';

const SHOWN_USES = 50;

/** Everything an auditor asks of one tool, read in one go. */
export const toolRecord: Read<'tool.record'> = async (context, { id }) => {
  const { db, site, clock } = context;
  const tool = await findTool(db, id);
  if (tool === null) throw notFound('tool', 'id', id);
  const today = todayAt(context);
  const { rules, tools } = await watched(db, [id], today);
  const certificates = await certificateDetails(db, id, tool.data.properties, today);
  const newest = certificates.at(-1)?.data.calibratedOn ?? null;
  const uses = tools[0]?.facts?.uses ?? { total: 0, sinceCertificate: 0 };
  const { first, last } = await firstAndLastUse(db, id);
  return {
    id,
    version: tool.version,
    data: tool.data,
    holder: await holderOf(db, id),
    due: tools.flatMap((each) => duesOfTool(each.tool, each.facts, rules, today)),
    certificates: certificates.toReversed(),
    history: calibrationHistory(certificates.map(({ data }) => data)),
    moves: await movesOf(db, id),
    checks: await checksOf(db, id),
    cases: await casesFor(context, id),
    attachments: await attachmentsWithState(context, { kind: 'tool', id }),
    counters: {
      uses: uses.total,
      sinceCertificate: newest === null ? null : uses.sinceCertificate,
      turnsSinceCertificate:
        newest === null ? null : await studsTurnedSince(db, id, startOfDay(newest, site.timeZone)),
      firstUse: first,
      lastUse: last,
    },
    uses: await usePage(db, { id, page: 1, pageSize: SHOWN_USES }),
    head: await registerHead(db),
    readAt: atSite(clock(), site.timeZone),
  };
};

async function holderOf(db: Kysely<RegisterSchema>, id: string): Promise<string | null> {
  const row = await db
    .selectFrom('tool')
    .innerJoin('person', 'person.id', 'tool.holder_id')
    .select('person.name')
    .where('tool.id', '=', id)
    .executeTakeFirst();
  return row?.name ?? null;
}

async function casesFor(context: ReadContext, id: string): Promise<ToolRecord['cases']> {
  const cases: ToolRecord['cases'] = [];
  for (const one of await casesOfTool(context.db, id)) cases.push(await caseSummary(context, one));
  return cases;
}
