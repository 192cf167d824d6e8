import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto';
import type { Kysely } from 'kysely';
import type { WriteContext } from '../context.ts';
import type { RegisterSchema } from '../register/schema.ts';
import type { SecretCost } from './secret-cost.ts';

/** 128 MiB and about half a second for each guess. */
export const SECRET_COST: SecretCost = { cost: 2 ** 17, blockSize: 8, parallelization: 1 };

const SALT_BYTES = 16;
const HASH_BYTES = 32;

export interface KeptSecret {
  readonly personId: string;
  readonly salt: Uint8Array;
  readonly hash: Uint8Array;
  readonly cost: SecretCost;
}

function hashOf(secret: string, salt: Uint8Array, { cost, blockSize, parallelization }: SecretCost) {
  const options = { cost, blockSize, parallelization, maxmem: 2 * 128 * cost * blockSize };
  // One spelling for what looks the same from another keyboard.
  const text = secret.normalize('NFKC');
  return new Promise<Buffer>((resolve, reject) => {
    scrypt(text, salt, HASH_BYTES, options, (error, hash) =>
      error === null ? resolve(hash) : reject(error),
    );
  });
}

/** Whether a secret is the one that is kept. Takes as long where there is nothing to compare it with. */
export async function isSecret(kept: KeptSecret | null, secret: string, usual: SecretCost): Promise<boolean> {
  const { salt, hash, cost } = kept ?? {
    salt: new Uint8Array(SALT_BYTES),
    hash: new Uint8Array(HASH_BYTES),
    cost: usual,
  };
  const same = timingSafeEqual(await hashOf(secret, salt, cost), hash);
  return kept !== null && same;
}

/** Keeps a secret's hash under a fresh salt. Sessions that began with the one before it end by the new version. */
export async function keepSecret(
  { db, clock, secretCost }: WriteContext,
  personId: string,
  secret: string,
  toBeChanged: boolean,
): Promise<void> {
  const salt = randomBytes(SALT_BYTES);
  const row = {
    function: 'scrypt' as const,
    cost: secretCost.cost,
    block_size: secretCost.blockSize,
    parallelization: secretCost.parallelization,
    salt,
    hash: await hashOf(secret, salt, secretCost),
    to_be_changed: toBeChanged ? 1 : 0,
    changed_at: clock().toISOString(),
  };
  await db
    .insertInto('person_secret')
    .values({ person_id: personId, version: 1, ...row })
    .onConflict((conflict) =>
      conflict
        .column('person_id')
        .doUpdateSet(({ eb }) => ({ ...row, version: eb('person_secret.version', '+', 1) })),
    )
    .execute();
}

type Whose = { readonly personId: string } | { readonly nameKey: string };

/** The secret of a person, or of the one person with a secret who bears a name. */
export async function keptSecret(db: Kysely<RegisterSchema>, whose: Whose): Promise<KeptSecret | null> {
  const row = await db
    .selectFrom('person_secret')
    .innerJoin('person', 'person.id', 'person_secret.person_id')
    .select(['person.id', 'salt', 'hash', 'cost', 'block_size', 'parallelization'])
    .$call((query) =>
      'personId' in whose
        ? query.where('person.id', '=', whose.personId)
        : query.where('person.name_key', '=', whose.nameKey),
    )
    .executeTakeFirst();
  if (!row) return null;
  const { id, salt, hash, cost, block_size: blockSize, parallelization } = row;
  return { personId: id, salt, hash, cost: { cost, blockSize, parallelization } };
}
