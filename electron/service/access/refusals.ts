import type { Kysely } from 'kysely';
import { SIGNERS } from '../../../core/access/signers.ts';
import { valueAt } from '../../../core/access/value-at.ts';
import { canonicalText } from '../../../core/audit/canonical.ts';
import { eventHash, NO_PREVIOUS } from '../../../core/audit/chain.ts';
import { SECRET_FIELDS } from '../../../core/contract/access.ts';
import type { RequestName } from '../../../core/contract/names.ts';
import { sha256 } from '../chain/sha256.ts';
import type { WriteContext } from '../context.ts';
import { KeptFailure, type RequestFailure } from '../failure.ts';
import type { RegisterSchema } from '../register/schema.ts';

/** The same refusal of the same person is told once in so many seconds: a key that is pressed again is no new act. */
const SAME_SECONDS = 60;

/** What is kept of a refused request. Values that were typed are left out but for ids: they are no part of the record. */
export interface Refused {
  readonly request: RequestName;
  /** Who was signed in, or in whose name it was asked where nobody is. */
  readonly personId: string | null;
  readonly signedIn: boolean;
  readonly jointId: string | null;
  readonly message: string;
  /** Fields or findings that stood against it, with what would have been allowed. */
  readonly against: readonly { readonly field: string; readonly allowed: string }[];
}

export interface RefusalBody {
  readonly bodyVersion: 1;
  readonly id: string;
  readonly originId: string;
  readonly sequence: number;
  readonly refusedAt: string;
  readonly refused: Refused;
}

/** A wrong secret is an event already; what could not be read or found is a mistake, no refusal. */
export const isKeptRefusal = (failure: RequestFailure): boolean =>
  failure.code === 'refused' && !(failure instanceof KeptFailure);

/** Notes that a request was refused, in a chain of its own. */
export async function keepRefusal(
  context: WriteContext,
  request: RequestName,
  input: unknown,
  failure: RequestFailure,
): Promise<void> {
  const { db, originId, clock, actor, newId } = context;
  const last = await db
    .selectFrom('refusal')
    .select(['sequence', 'hash', 'body', 'refused_at'])
    .where('origin_id', '=', originId)
    .orderBy('sequence', 'desc')
    .limit(1)
    .executeTakeFirst();
  const now = clock();
  const personId = actor?.personId ?? (await knownPerson(db, claimedBy(request, input)));
  const refused: Refused = {
    request,
    personId,
    signedIn: actor !== null,
    jointId: jointOf(input),
    message: failure.message,
    against: failure.details
      .filter(({ field }) => !SECRET_FIELDS.includes(field))
      .map(({ field, allowed }) => ({ field, allowed })),
  };
  if (last && now.getTime() - Date.parse(last.refused_at) < SAME_SECONDS * 1000) {
    const before = JSON.parse(last.body) as RefusalBody;
    if (canonicalText(before.refused) === canonicalText(refused)) return;
  }
  const body: RefusalBody = {
    bodyVersion: 1,
    id: newId(),
    originId,
    sequence: (last?.sequence ?? 0) + 1,
    refusedAt: now.toISOString(),
    refused,
  };
  const text = canonicalText(body);
  const previousHash = last?.hash ?? NO_PREVIOUS;
  await db
    .insertInto('refusal')
    .values({
      id: body.id,
      origin_id: originId,
      sequence: body.sequence,
      previous_hash: previousHash,
      hash: eventHash(sha256, previousHash, text),
      body: text,
      request,
      person_id: personId,
      refused_at: body.refusedAt,
    })
    .execute();
}

function claimedBy(request: RequestName, input: unknown): string | null {
  const named = (SIGNERS[request] ?? []).map((field) => valueAt(input, field));
  return named.find((value): value is string => typeof value === 'string') ?? null;
}

async function knownPerson(db: Kysely<RegisterSchema>, id: string | null): Promise<string | null> {
  if (id === null) return null;
  const row = await db.selectFrom('person').select('id').where('id', '=', id).executeTakeFirst();
  return row?.id ?? null;
}

function jointOf(input: unknown): string | null {
  const named = ['data.jointId', 'jointId'].map((path) => valueAt(input, path));
  return named.find((value): value is string => typeof value === 'string') ?? null;
}
