import type { CyclesData } from '../../../core/contract/leak-log.ts';
import { append } from '../chain/append.ts';
import type { WriteContext } from '../context.ts';
import { invalidField, notFound } from '../failure.ts';
import { checkDistinct } from '../operations/distinct.ts';
import { saved } from '../operations/edit.ts';
import { checkNotLater, checkPerson } from '../operations/who-and-when.ts';
import { findJoint } from '../repositories/joint.ts';
import { cycleCounts } from '../repositories/leak.ts';
import { todayAt } from '../time.ts';
import type { Write } from './handler.ts';

/** Records how many thermal cycles joints went through in a time. A day is counted once for a joint. */
export const recordCycles: Write<'cycles.record'> = async (context, { data, supersedes }) => {
  checkDistinct('data.jointIds', data.jointIds);
  checkNotLater(context, data.happenedAt);
  checkDays(context, data);
  await checkPerson(context, 'data.personId', data.personId);
  if (supersedes !== null) await checkCount(context, supersedes);
  for (const jointId of data.jointIds) await checkNotCounted(context, jointId, data, supersedes);
  const id = context.newId();
  await append(context, [
    {
      kind: 'cycles counted',
      id,
      happenedAt: data.happenedAt,
      // Days are days of the site: its time zone is kept with them, so that columns can be rebuilt from the body.
      data: { data, timeZone: context.site.timeZone },
      ...(supersedes === null ? {} : { supersedes }),
    },
  ]);
  return saved(id, null);
};

function checkDays(context: WriteContext, { from, until }: CyclesData): void {
  if (until < from) throw invalidField('data.until', until, `not before ${from}`);
  const today = todayAt(context);
  if (until > today) throw invalidField('data.until', until, `not after today, ${today}`);
}

async function checkCount({ db }: WriteContext, supersedes: string): Promise<void> {
  const event = await db
    .selectFrom('event')
    .leftJoin('event as later', 'later.supersedes', 'event.id')
    .select('later.id as laterId')
    .where('event.id', '=', supersedes)
    .where('event.kind', '=', 'cycles counted')
    .executeTakeFirst();
  if (!event) throw notFound('count of cycles', 'supersedes', supersedes);
  if (event.laterId !== null) {
    throw invalidField('supersedes', supersedes, 'a count that no other has taken the place of');
  }
}

async function checkNotCounted(
  { db }: WriteContext,
  jointId: string,
  { from, until }: CyclesData,
  supersedes: string | null,
): Promise<void> {
  const joint = await findJoint(db, jointId);
  if (joint === null) throw notFound('joint', 'data.jointIds', jointId);
  const counted = (await cycleCounts(db, jointId)).find(
    ({ eventId, startsOn, endsOn }) => eventId !== supersedes && startsOn <= until && endsOn >= from,
  );
  if (counted === undefined) return;
  throw invalidField(
    'data.from',
    from,
    `days that are not counted yet: ${joint.data.tag} is counted from ${counted.startsOn} to ${counted.endsOn}`,
  );
}
