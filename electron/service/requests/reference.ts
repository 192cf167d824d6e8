import { referenceChoices } from '../../../core/reference/choices.ts';
import { sitePlans, siteRows } from '../repositories/site-tables.ts';
import type { Read } from './handler.ts';

export const choices: Read<'reference.choices'> = async ({ db }) =>
  referenceChoices(await siteRows(db, { kind: null, text: '' }), await sitePlans(db));
