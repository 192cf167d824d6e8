import type { Kysely } from 'kysely';
import type { CampaignData, CampaignRow } from '../../../core/contract/campaign.ts';
import type { RegisterSchema } from '../register/schema.ts';

type Db = Kysely<RegisterSchema>;

export interface Campaign {
  readonly id: string;
  readonly version: number;
  readonly data: CampaignData;
}

export async function findCampaign(db: Db, id: string): Promise<Campaign | null> {
  const row = await db
    .selectFrom('campaign')
    .select(['id', 'version', 'data'])
    .where('id', '=', id)
    .executeTakeFirst();
  return row ? { ...row, data: JSON.parse(row.data) as CampaignData } : null;
}

interface Page {
  /** With those that are over. */
  readonly closed: boolean;
  readonly page: number;
  readonly pageSize: number;
}

/** Campaigns by their start, the latest first. */
export async function campaignPage(
  db: Db,
  { closed, page, pageSize }: Page,
): Promise<{ rows: CampaignRow[]; total: number }> {
  const matching = closed ? db.selectFrom('campaign') : db.selectFrom('campaign').where('closed', '=', 0);
  const { total } = await matching
    .select(({ fn }) => fn.countAll<number>().as('total'))
    .executeTakeFirstOrThrow();
  const found = await matching
    .select(['id', 'version', 'data'])
    .orderBy('starts_at_utc', 'desc')
    .orderBy('id')
    .limit(pageSize)
    .offset((page - 1) * pageSize)
    .execute();
  const rows = await campaignRows(
    db,
    found.map((row) => ({ ...row, data: JSON.parse(row.data) as CampaignData })),
  );
  return { rows, total };
}

export async function campaignRows(db: Db, campaigns: readonly Campaign[]): Promise<CampaignRow[]> {
  const counts = await db
    .selectFrom('job')
    .select(({ fn }) => ['campaign_id', 'dropped', fn.countAll<number>().as('count')])
    .where(
      'campaign_id',
      'in',
      campaigns.map(({ id }) => id),
    )
    .groupBy(['campaign_id', 'dropped'])
    .execute();
  const countOf = (id: string, dropped: number) =>
    counts.find((row) => row.campaign_id === id && row.dropped === dropped)?.count ?? 0;
  return campaigns.map((campaign) => ({
    ...campaign,
    jobs: countOf(campaign.id, 0),
    dropped: countOf(campaign.id, 1),
  }));
}
