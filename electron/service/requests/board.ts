import { notFound } from '../failure.ts';
import { boardOf } from '../repositories/board.ts';
import { findCampaign } from '../repositories/campaign.ts';
import type { Read } from './handler.ts';

export const getBoard: Read<'board.get'> = async (context, { campaignId }) => {
  const campaign = await findCampaign(context.db, campaignId);
  if (campaign === null) throw notFound('campaign', 'campaignId', campaignId);
  return boardOf(context, campaign);
};
