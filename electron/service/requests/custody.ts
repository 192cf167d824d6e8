import { scannedName } from '../../../core/text/scan-code.ts';
import { nameKey } from '../fold.ts';
import { moveTools as move } from '../operations/custody.ts';
import { saved } from '../operations/edit.ts';
import type { Read, Write } from './handler.ts';

export const findByLabel: Read<'tool.find'> = async ({ db }, { text }) => {
  const number = nameKey(scannedName('T', text));
  const tool = await db
    .selectFrom('tool')
    .select(['id', 'number'])
    .where('number_key', '=', number)
    .executeTakeFirst();
  return tool ?? null;
};

export const moveTools: Write<'tool.move'> = async (context, { data }) =>
  saved(await move(context, data), null);
