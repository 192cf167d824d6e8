import { scannedName } from '../../../core/text/scan-code.ts';
import { nameKey } from '../fold.ts';
import type { Read } from './handler.ts';

export const findJointByTag: Read<'joint.find'> = async ({ db }, { text }) => {
  const joint = await db
    .selectFrom('joint')
    .select(['id', 'tag'])
    .where('tag_key', '=', nameKey(scannedName('J', text)))
    .executeTakeFirst();
  return joint ?? null;
};
