import type { CampaignInput, JobInput } from '../../core/contract/campaign.ts';
import { ask, key, type TestService } from './ask.ts';
import type { TestPlant } from './records.ts';

/** Two weeks with one crew by day and the plant's one set of tools. */
export function campaignOf(plant: TestPlant, changes: Partial<CampaignInput> = {}): CampaignInput {
  return {
    name: 'Spring',
    startsAt: '2026-04-01T06:00:00+02:00',
    endsAt: '2026-04-15T18:00:00+02:00',
    crews: [
      {
        name: 'Day',
        personIds: [plant.personId],
        from: '2026-04-01',
        to: '2026-04-15',
        shifts: [{ from: '06:00', to: '18:00' }],
      },
    ],
    sets: [{ name: 'Set 1', tools: plant.tools }],
    testPacks: ['TP-1', 'TP-2'],
    ...changes,
  };
}

export function saveCampaign(started: TestService, data: CampaignInput) {
  return ask(started, 'campaign.save', { key: key(), id: null, version: null, data });
}

/** A job of the plant's joint; with `before` a further version of one. */
export function saveJob(
  started: TestService,
  plant: TestPlant,
  data: Partial<JobInput> & Pick<JobInput, 'campaignId' | 'number'>,
  before: { readonly id: string; readonly version: number | null } | null = null,
  reason = 'on the list',
) {
  return ask(started, 'job.save', {
    key: key(),
    id: before?.id ?? null,
    version: before?.version ?? null,
    data: { jointId: plant.jointId, scope: 'break and make', ...data },
    personId: plant.personId,
    reason,
  });
}
