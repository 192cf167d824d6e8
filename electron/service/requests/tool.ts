import { isDeepStrictEqual } from 'node:util';
import type { ToolData } from '../../../core/contract/tool.ts';
import { append } from '../chain/append.ts';
import type { WriteContext } from '../context.ts';
import { invalidField, notFound, RequestFailure } from '../failure.ts';
import { nameKey } from '../fold.ts';
import { certificateDetails } from '../operations/certificate-details.ts';
import { dueList } from '../operations/due-list.ts';
import { duplicateOf, nextVersion, saved } from '../operations/edit.ts';
import { findTool, toolIdByNumber, toolPage, toolWithSerial, usesOf } from '../repositories/tool.ts';
import { usePage } from '../repositories/tool-uses.ts';
import { todayAt } from '../time.ts';
import type { Read, Write } from './handler.ts';

export const listTools: Read<'tool.list'> = ({ db }, input) => toolPage(db, input);

export const listDue: Read<'tool.due'> = (context, input) => dueList(context.db, input, todayAt(context));

export const listUses: Read<'tool.uses'> = async ({ db }, input) => {
  if ((await findTool(db, input.id)) === null) throw notFound('tool', 'id', input.id);
  return { rows: await usePage(db, input), total: await usesOf(db, input.id) };
};

export const getTool: Read<'tool.get'> = async (context, { id }) => {
  const { db } = context;
  const tool = await findTool(db, id);
  if (tool === null) throw notFound('tool', 'id', id);
  const certificates = await certificateDetails(db, id, tool.data.properties, todayAt(context));
  return {
    id,
    version: tool.version,
    data: tool.data,
    certificates: certificates.toReversed(),
    uses: await usesOf(db, id),
  };
};

export const saveTool: Write<'tool.save'> = async (context, { id, version, data }) => {
  const { db, newId } = context;
  const current = id === null ? null : await findTool(db, id);
  const next = nextVersion('tool', id, version, current);
  const namesake = await toolIdByNumber(db, nameKey(data.number));
  if (namesake !== null && namesake !== id) throw duplicateOf('tool', 'data.number', data.number);
  if (current && current.data.properties.class !== data.properties.class) {
    throw invalidField(
      'data.properties.class',
      data.properties.class,
      `${current.data.properties.class}: records already name this tool as one; enter another tool instead`,
    );
  }
  if (current) checkCustody(current.data, data);
  await checkSerial(context, data, id);
  if (current && isDeepStrictEqual(current.data, data)) return saved(current.id, current.version);
  const toolId = id ?? newId();
  await append(context, [
    { kind: 'tool saved', id: newId(), data: { id: toolId, version: next, data, importId: null } },
  ]);
  return saved(toolId, next);
};

/** Status changes by moves alone, and so does the place of a tool that is out. */
function checkCustody(current: ToolData, data: ToolData): void {
  if (data.status !== current.status) {
    throw invalidField(
      'data.status',
      data.status,
      `${current.status}, as it stands: a status changes at the custody desk, by a move with a person and a time`,
    );
  }
  const out = current.status === 'issued' || current.status === 'at the laboratory';
  if (out && data.place !== current.place) {
    throw invalidField(
      'data.place',
      data.place,
      `${current.place || 'left empty'}: it is ${current.status}, and its place changes with the next move at the custody desk`,
    );
  }
}

/** Two tools of a class with one serial number are one tool entered twice. */
async function checkSerial({ db }: WriteContext, data: ToolData, id: string | null): Promise<void> {
  const twin = await toolWithSerial(db, data.properties.class, nameKey(data.serial), id);
  if (twin === null) return;
  throw new RequestFailure(
    'duplicate',
    `${twin.number} is a ${data.properties.class} with the serial number "${twin.serial}" already`,
    [
      {
        field: 'data.serial',
        value: data.serial,
        allowed: `another serial number than ${twin.number} has, or none`,
      },
    ],
  );
}
