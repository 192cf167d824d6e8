import { canonicalText } from '../../core/audit/canonical.ts';
import { toHex } from '../../core/audit/hash.ts';
import { SECRET_FIELDS } from '../../core/contract/access.ts';
import { sha256 } from './chain/sha256.ts';
import type { WriteContext } from './context.ts';
import { RequestFailure } from './failure.ts';

/**
 * What was asked for, without the key: the same key with another input is a mistake, not a retry. A secret is left out,
 * because the hash of an input that is otherwise known would let it be guessed.
 */
function inputHash(request: string, input: { readonly key: string }): string {
  const { key: _, ...rest } = input;
  return toHex(sha256(canonicalText({ request, input: withoutSecrets(rest) })));
}

function withoutSecrets(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutSecrets);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([name]) => !SECRET_FIELDS.includes(name))
      .map(([name, inner]) => [name, withoutSecrets(inner)]),
  );
}

/** Runs a write once: a repeated key gives the first answer, a key used for something else is refused. */
export async function once<T>(
  context: Pick<WriteContext, 'db' | 'clock'>,
  request: string,
  input: { readonly key: string },
  write: () => Promise<T>,
): Promise<T> {
  const { db, clock } = context;
  const hash = inputHash(request, input);
  const receipt = await db
    .selectFrom('request_receipt')
    .select(['request', 'input_hash', 'answer'])
    .where('key', '=', input.key)
    .executeTakeFirst();
  if (receipt) {
    if (receipt.request !== request || receipt.input_hash !== hash) throw keyConflict(input.key);
    return repeated(JSON.parse(receipt.answer) as T);
  }
  const answer = await write();
  await db
    .insertInto('request_receipt')
    .values({
      key: input.key,
      request,
      input_hash: hash,
      answer: JSON.stringify(answer),
      recorded_at: clock().toISOString(),
    })
    .execute();
  return answer;
}

function keyConflict(key: string): RequestFailure {
  return new RequestFailure('conflict', 'This key was used for another entry; nothing was written', [
    { field: 'key', value: key, allowed: 'a new key for each entry' },
  ]);
}

function repeated<T>(answer: T): T {
  const marked = typeof answer === 'object' && answer !== null && 'alreadyRecorded' in answer;
  return marked ? { ...answer, alreadyRecorded: true } : answer;
}
