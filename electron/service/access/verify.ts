import type { SecretUse } from '../chain/events.ts';
import type { WriteContext } from '../context.ts';
import { KeptFailure, notFound } from '../failure.ts';
import { isSecret, keptSecret } from './secret.ts';
import { checkWait, countWrong, forgetWrong } from './wrong-secrets.ts';

/**
 * Makes sure that a secret is this person's, before anything else is written: a wrong one is counted and told in the
 * history although the request is refused, and what was written before it would stay as well.
 */
export async function verifySecret(
  context: WriteContext,
  personId: string,
  secret: string,
  use: SecretUse = 'signature',
  field = 'secret',
): Promise<void> {
  const person = await context.db
    .selectFrom('person')
    .select('name_key')
    .where('id', '=', personId)
    .executeTakeFirst();
  if (!person) throw notFound('person', 'personId', personId);
  const { name_key: nameKey } = person;
  await checkWait(context, nameKey);
  const kept = await keptSecret(context.db, { personId });
  if (await isSecret(kept, secret, context.secretCost)) return forgetWrong(context, nameKey);
  await countWrong(context, nameKey, personId, use);
  throw new KeptFailure('refused', 'The secret is not right; nothing was written', [
    { field, value: '', allowed: 'the secret of the person who signs' },
  ]);
}
