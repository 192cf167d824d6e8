import { notFound } from '../failure.ts';
import { findCampaign } from '../repositories/campaign.ts';
import { materialsOf } from '../repositories/materials.ts';
import type { Read } from './handler.ts';

export const getMaterials: Read<'campaign.materials'> = async (context, { id }) => {
  const campaign = await findCampaign(context.db, id);
  if (campaign === null) throw notFound('campaign', 'id', id);
  return materialsOf(context, campaign);
};
