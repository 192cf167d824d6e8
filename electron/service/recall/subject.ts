import type { Kysely } from 'kysely';
import type { CaseSubject } from '../../../core/contract/recall.ts';
import type { BatchKind } from '../chain/events.ts';
import { notFound } from '../failure.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { toolsWithCertificates } from '../repositories/tool.ts';

export type AnyTool = Awaited<ReturnType<typeof toolsWithCertificates>>[number];

/** What a case is about, as the register knows it. `name` is "drive unit W-03" or "lubricant graphite paste, batch 7". */
export type Subject =
  | { readonly kind: 'tool'; readonly id: string; readonly name: string; readonly tool: AnyTool }
  | { readonly kind: 'batch'; readonly id: string; readonly name: string; readonly batch: BatchKind };

export async function subjectOf(db: Kysely<RegisterSchema>, subject: CaseSubject): Promise<Subject> {
  if (subject.kind === 'tool') {
    const [tool] = await toolsWithCertificates(db, { ids: [subject.toolId] });
    if (!tool) throw notFound('tool', 'data.subject.toolId', subject.toolId);
    const { number, properties } = tool.data;
    return { kind: 'tool', id: tool.id, name: `${properties.class} ${number}`, tool };
  }
  const batch = await db
    .selectFrom('batch')
    .select(['id', 'kind', 'name', 'number'])
    .where('id', '=', subject.batchId)
    .executeTakeFirst();
  if (!batch) throw notFound('batch', 'data.subject.batchId', subject.batchId);
  return {
    kind: 'batch',
    id: batch.id,
    name: `${batch.kind} ${batch.name}, batch ${batch.number}`,
    batch: batch.kind,
  };
}
