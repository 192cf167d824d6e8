import type { WriteContext } from '../context.ts';
import { invalidField, notFound } from '../failure.ts';
import { atSite, toUtc } from '../time.ts';

/** Clocks of two machines may differ by so much. */
const CLOCK_TOLERANCE_MS = 5 * 60_000;

/** Refuses a record of what has not happened yet. */
export function checkNotLater(
  { clock, site }: WriteContext,
  happenedAt: string,
  field = 'data.happenedAt',
): void {
  const now = clock();
  if (Date.parse(toUtc(happenedAt)) > now.getTime() + CLOCK_TOLERANCE_MS) {
    throw invalidField(field, happenedAt, `not later than now (${atSite(now, site.timeZone)})`);
  }
}

export async function checkPerson(
  { db }: Pick<WriteContext, 'db'>,
  field: string,
  personId: string,
): Promise<void> {
  const person = await db.selectFrom('person').select('id').where('id', '=', personId).executeTakeFirst();
  if (!person) throw notFound('person', field, personId);
}
