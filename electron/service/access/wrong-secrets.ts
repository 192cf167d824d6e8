import type { Kysely } from 'kysely';
import {
  afterWrong,
  afterWrongOfAll,
  nextTry,
  nextTryOfAll,
  type WrongSecrets,
} from '../../../core/access/waits.ts';
import { toHex } from '../../../core/audit/hash.ts';
import { append } from '../chain/append.ts';
import type { EventDraft, SecretUse } from '../chain/events.ts';
import { sha256 } from '../chain/sha256.ts';
import type { WriteContext } from '../context.ts';
import { KeptFailure } from '../failure.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { atSite } from '../time.ts';

const OF_ALL = 'all names';

/**
 * Under what the wrong secrets of a name are counted, whether anybody has that name or not. Only 16 bits of a hash:
 * a secret typed into the field of the name leaves nothing behind that it could be guessed from, and made-up names
 * can't fill the table. Two names that share a count wait for each other, no more.
 */
function aboutName({ originId }: WriteContext, nameKey: string): string {
  return `name ${toHex(sha256(`${originId}\n${nameKey}`)).slice(0, 4)}`;
}

async function kept(db: Kysely<RegisterSchema>, about: string): Promise<WrongSecrets | null> {
  const row = await db
    .selectFrom('wrong_secret')
    .select(['count', 'moment'])
    .where('about', '=', about)
    .executeTakeFirst();
  return row ? { count: row.count, last: Date.parse(row.moment) / 1000 } : null;
}

async function keep(db: Kysely<RegisterSchema>, about: string, { count, last }: WrongSecrets): Promise<void> {
  const row = { count, moment: new Date(last * 1000).toISOString() };
  await db
    .insertInto('wrong_secret')
    .values({ about, ...row })
    .onConflict((conflict) => conflict.column('about').doUpdateSet(row))
    .execute();
}

const secondsOf = ({ clock }: WriteContext) => clock().getTime() / 1000;

/** Refuses a try that comes too soon; the secret is not even looked at. */
export async function checkWait(context: WriteContext, nameKey: string): Promise<void> {
  const { db, site } = context;
  const now = secondsOf(context);
  const about = aboutName(context, nameKey);
  const ofName = await kept(db, about);
  const waits = [nextTry(ofName, now), nextTryOfAll(await kept(db, OF_ALL), now)];
  const from = Math.max(...waits.map((until) => until ?? 0));
  if (from === 0) return;
  // The clock was set back since: without this the wait would begin anew with every try.
  if (ofName !== null && ofName.last > now) await keep(db, about, { ...ofName, last: now });
  const seconds = Math.ceil(from - now);
  const time = atSite(new Date(from * 1000), site.timeZone).slice(11, 19);
  throw new KeptFailure(
    'refused',
    `Too many wrong secrets. The next try is looked at in ${inWords(seconds)}, from ${time} on`,
    [{ field: 'secret', value: '', allowed: `a try from ${time} on` }],
  );
}

function inWords(seconds: number): string {
  if (seconds < 120) return `${seconds} s`;
  return `${Math.ceil(seconds / 60)} minutes`;
}

/** Counts a wrong secret and tells the history of it. Null: nobody with a secret has that name. */
export async function countWrong(
  context: WriteContext,
  nameKey: string,
  personId: string | null,
  use: SecretUse,
): Promise<void> {
  const { db, newId } = context;
  const now = secondsOf(context);
  const about = aboutName(context, nameKey);
  const ofName = afterWrong(await kept(db, about), now);
  const ofAll = afterWrongOfAll(await kept(db, OF_ALL), now);
  await keep(db, about, ofName);
  await keep(db, OF_ALL, ofAll);
  const until = nextTry(ofName, now);
  const events: EventDraft[] = [{ kind: 'sign-in failed', id: newId(), data: { personId, use } }];
  if (until !== null) {
    const data = { personId, until: new Date(until * 1000).toISOString() };
    events.push({ kind: 'locked out', id: newId(), data });
  }
  await append(context, events);
}

export async function forgetWrong(context: WriteContext, nameKey: string): Promise<void> {
  await context.db.deleteFrom('wrong_secret').where('about', '=', aboutName(context, nameKey)).execute();
}
