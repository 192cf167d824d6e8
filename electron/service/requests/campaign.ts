import { isDeepStrictEqual } from 'node:util';
import type { CampaignData } from '../../../core/contract/campaign.ts';
import { setToolIds } from '../../../core/tools/set-ids.ts';
import { append } from '../chain/append.ts';
import type { WriteContext } from '../context.ts';
import { invalidField, notFound } from '../failure.ts';
import { nameKey } from '../fold.ts';
import { checkDistinct } from '../operations/distinct.ts';
import { duplicateOf, nextVersion, saved } from '../operations/edit.ts';
import { campaignPage, campaignRows, findCampaign } from '../repositories/campaign.ts';
import { jobsOf } from '../repositories/job.ts';
import type { Read, Write } from './handler.ts';

export const listCampaigns: Read<'campaign.list'> = ({ db }, input) => campaignPage(db, input);

export const getCampaign: Read<'campaign.get'> = async ({ db }, { id }) => {
  const campaign = await findCampaign(db, id);
  const [row] = campaign === null ? [] : await campaignRows(db, [campaign]);
  if (row === undefined) throw notFound('campaign', 'id', id);
  return row;
};

export const saveCampaign: Write<'campaign.save'> = async (context, { id, version, data }) => {
  const { db, newId } = context;
  const current = id === null ? null : await findCampaign(db, id);
  const next = nextVersion('campaign', id, version, current);
  checkTimes(data);
  checkDistinct(
    'data.crews',
    data.crews.map(({ name }) => nameKey(name)),
  );
  checkDistinct(
    'data.sets',
    data.sets.map(({ name }) => nameKey(name)),
  );
  checkDistinct('data.testPacks', data.testPacks.map(nameKey));
  await checkPeople(context, data);
  await checkTools(context, data);
  if (current !== null) await checkNamed(context, current.id, data);
  const namesake = data.closed
    ? undefined
    : await db
        .selectFrom('campaign')
        .select('id')
        .where('name_key', '=', nameKey(data.name))
        .where('closed', '=', 0)
        .where('id', '!=', id ?? '')
        .executeTakeFirst();
  if (namesake) throw duplicateOf('campaign', 'data.name', data.name);
  if (current && isDeepStrictEqual(current.data, data)) return saved(current.id, current.version);
  const campaignId = id ?? newId();
  await append(context, [
    { kind: 'campaign saved', id: newId(), data: { id: campaignId, version: next, data } },
  ]);
  return saved(campaignId, next);
};

/** A campaign of more than this is a mistyped year; its plan would have no use. */
const LONGEST_DAYS = 400;

function checkTimes({ startsAt, endsAt, crews, sets }: CampaignData): void {
  const length = Date.parse(endsAt) - Date.parse(startsAt);
  if (length <= 0) throw invalidField('data.endsAt', endsAt, `later than the start, ${startsAt}`);
  if (length > LONGEST_DAYS * 86_400_000) {
    throw invalidField('data.endsAt', endsAt, `at most ${LONGEST_DAYS} days after the start, ${startsAt}`);
  }
  crews.forEach(({ from, to }, index) => {
    if (to < from) throw invalidField(`data.crews.${index}.to`, to, `${from} (first day) or later`);
  });
  sets.forEach(({ from, to }, index) => {
    if (from !== null && to !== null && to < from)
      throw invalidField(`data.sets.${index}.to`, to, `${from} (first day) or later`);
  });
}

async function checkPeople({ db }: WriteContext, { crews }: CampaignData): Promise<void> {
  const ids = [...new Set(crews.flatMap(({ personIds }) => personIds))];
  const people = await db.selectFrom('person').select('id').where('id', 'in', ids).execute();
  const known = new Set(people.map(({ id }) => id));
  crews.forEach(({ personIds }, index) => {
    checkDistinct(`data.crews.${index}.personIds`, personIds);
    personIds.forEach((personId, at) => {
      if (!known.has(personId)) throw notFound('person', `data.crews.${index}.personIds.${at}`, personId);
    });
  });
}

/** Every part of a set is a tool of the register. Whether the parts suit each other and a joint is for the plan. */
async function checkTools({ db }: WriteContext, { sets }: CampaignData): Promise<void> {
  const idsOf = (set: CampaignData['sets'][number]) => setToolIds(set.tools);
  const tools = await db
    .selectFrom('tool')
    .select('id')
    .where('id', 'in', [...new Set(sets.flatMap(idsOf))])
    .execute();
  const known = new Set(tools.map(({ id }) => id));
  sets.forEach((set, index) => {
    const unknown = idsOf(set).find((id) => !known.has(id));
    if (unknown !== undefined) throw notFound('tool', `data.sets.${index}.tools`, unknown);
    checkDistinct(`data.sets.${index}.tools`, idsOf(set));
  });
}

/** What jobs name stays there: a crew or set that a job rests on is not taken away from under it. */
async function checkNamed({ db }: WriteContext, id: string, data: CampaignData): Promise<void> {
  const crews = new Set(data.crews.map(({ name }) => nameKey(name)));
  const sets = new Set(data.sets.map(({ name }) => nameKey(name)));
  for (const job of await jobsOf(db, id)) {
    if (job.data.dropped) continue;
    const crew = [...job.data.crews, ...job.data.locked.map((lock) => lock.crew)].find(
      (name) => !crews.has(nameKey(name)),
    );
    if (crew !== undefined) {
      throw invalidField('data.crews', crew, `kept: job ${job.data.number} names it; change that job first`);
    }
    const set = job.data.locked.find((lock) => !sets.has(nameKey(lock.set)))?.set;
    if (set !== undefined) {
      throw invalidField(
        'data.sets',
        set,
        `kept: job ${job.data.number} is fixed to it; change that job first`,
      );
    }
  }
}
