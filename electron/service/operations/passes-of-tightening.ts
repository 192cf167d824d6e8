import type { TighteningData } from '../../../core/contract/event.ts';
import { runStanding } from '../../../core/sequence/run.ts';
import type { PassTool } from '../chain/events.ts';
import type { WriteContext } from '../context.ts';
import { notFound } from '../failure.ts';
import { toolLinks } from '../projections/tool-links.ts';
import { issuedBody, passesById, plannedPasses, type RecordedPass } from '../repositories/pass.ts';
import { checkDistinct } from './distinct.ts';

/** What the passes of a tightening say against it, and the tools they were done with beside those it names itself. */
export async function passesOfTightening(
  { db }: Pick<WriteContext, 'db'>,
  data: TighteningData,
): Promise<{ readonly flags: string[]; readonly tools: PassTool[] }> {
  const { passIds, jointId } = data;
  if (passIds.length === 0) return { flags: [], tools: [] };
  checkDistinct('data.passIds', passIds);
  const found = await passesById(db, passIds);
  const passes = passIds.map((id) => {
    const pass = found.get(id);
    if (pass === undefined || pass.data.jointId !== jointId)
      throw notFound('pass of this joint', 'data.passIds', id);
    return pass;
  });
  const taken = await db
    .selectFrom('tightening_pass')
    .select('pass_id')
    .where('pass_id', 'in', [...passIds])
    .execute();
  return {
    flags: [
      ...(taken.length > 0 ? ['its passes belong to an earlier record of a tightening too'] : []),
      ...(new Set(passes.map((pass) => pass.data.runId)).size > 1
        ? ['passes of more than one tightening']
        : await standingFlags(db, passes)),
    ],
    tools: await otherTools(db, data, passes),
  };
}

async function standingFlags(db: WriteContext['db'], passes: readonly RecordedPass[]): Promise<string[]> {
  const settingId = passes[0]?.data.settingId ?? null;
  const issued = settingId === null ? null : await issuedBody(db, settingId);
  if (issued === null) return [];
  const { state, passName, remaining, leftOut, problems } = runStanding(
    plannedPasses(issued),
    passes.map(({ data }) => data),
  );
  return [
    ...problems.map((problem) => `passes unclear: ${problem}`),
    ...(state === 'go on' ? [`passes not complete: ${passName} lacks ${remaining.length} studs`] : []),
    ...(leftOut.length > 0 ? [`left out: ${leftOut.join(', ')}`] : []),
  ];
}

async function otherTools(
  db: WriteContext['db'],
  data: TighteningData,
  passes: readonly RecordedPass[],
): Promise<PassTool[]> {
  const named = new Set((await toolLinks(db, '', data, null)).map(keyOf));
  const others: PassTool[] = [];
  for (const pass of passes) {
    for (const link of await toolLinks(db, '', pass.data, null)) {
      if (named.has(keyOf(link))) continue;
      named.add(keyOf(link));
      others.push({ toolId: link.tool_id, role: link.role });
    }
  }
  return others;
}

const keyOf = ({ tool_id: toolId, role }: { tool_id: string; role: string }) => `${toolId} ${role}`;
