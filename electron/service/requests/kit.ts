import { isDeepStrictEqual } from 'node:util';
import type { KitData } from '../../../core/contract/custody.ts';
import { append } from '../chain/append.ts';
import type { WriteContext } from '../context.ts';
import { invalidField, notFound } from '../failure.ts';
import { nameKey } from '../fold.ts';
import { checkDistinct } from '../operations/distinct.ts';
import { duplicateOf, nextVersion, saved } from '../operations/edit.ts';
import { findKit, kitPage, kitRows } from '../repositories/kit.ts';
import { todayAt } from '../time.ts';
import type { Read, Write } from './handler.ts';

export const listKits: Read<'kit.list'> = (context, input) => kitPage(context.db, input, todayAt(context));

export const getKit: Read<'kit.get'> = async (context, { id }) => {
  const kit = await findKit(context.db, id);
  const [row] = kit === null ? [] : await kitRows(context.db, [kit], todayAt(context));
  if (row === undefined) throw notFound('kit', 'id', id);
  return row;
};

/** Tools that another kit holds on the same days may be put in: the answer to `kit.get` names the clash. */
export const saveKit: Write<'kit.save'> = async (context, { id, version, data }) => {
  const { db, newId } = context;
  const current = id === null ? null : await findKit(db, id);
  const next = nextVersion('kit', id, version, current);
  if (data.to < data.from) throw invalidField('data.to', data.to, `${data.from} (first day) or later`);
  await checkParts(context, data);
  if (!data.closed) {
    const namesake = await db
      .selectFrom('kit')
      .select('id')
      .where('name_key', '=', nameKey(data.name))
      .where('closed', '=', 0)
      .where('id', '!=', id ?? '')
      .executeTakeFirst();
    if (namesake) throw duplicateOf('kit', 'data.name', data.name);
  }
  if (current && isDeepStrictEqual(current.data, data)) return saved(current.id, current.version);
  const kitId = id ?? newId();
  await append(context, [{ kind: 'kit saved', id: newId(), data: { id: kitId, version: next, data } }]);
  return saved(kitId, next);
};

async function checkParts({ db }: WriteContext, { toolIds, jointIds }: KitData): Promise<void> {
  checkDistinct('data.toolIds', toolIds);
  checkDistinct('data.jointIds', jointIds);
  const tools = await db
    .selectFrom('tool')
    .select('id')
    .where('id', 'in', [...toolIds])
    .execute();
  const joints = await db
    .selectFrom('joint')
    .select('id')
    .where('id', 'in', [...jointIds])
    .execute();
  checkAllKnown('tool', 'data.toolIds', toolIds, tools);
  checkAllKnown('joint', 'data.jointIds', jointIds, joints);
}

function checkAllKnown(
  what: string,
  field: string,
  ids: readonly string[],
  rows: readonly { readonly id: string }[],
): void {
  const known = new Set(rows.map((row) => row.id));
  ids.forEach((id, index) => {
    if (!known.has(id)) throw notFound(what, `${field}.${index}`, id);
  });
}
