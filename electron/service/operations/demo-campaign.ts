import { campaignData, jobData } from '../../../core/contract/campaign.ts';
import type { DemoCampaign, DemoToolSet } from '../../../seed/types.ts';
import { append } from '../chain/append.ts';
import { saveCampaign } from '../requests/campaign.ts';
import { type DemoStep, idOf, type Keys } from './demo-keys.ts';

/** The invented shutdown with its jobs, as a list would bring them. */
export function campaignStep(
  { at, jobs, crews, sets, ...rest }: DemoCampaign,
  toolSet: (keys: Keys, set: DemoToolSet) => unknown,
): DemoStep {
  return {
    at: Date.parse(at),
    replay: async (context, keys) => {
      const { newId } = context;
      const data = campaignData.parse({
        ...rest,
        crews: crews.map(({ people, ...crew }) => ({
          ...crew,
          personIds: people.map((name) => idOf(keys.people, name)),
        })),
        sets: sets.map(({ name, tools }) => ({ name, tools: toolSet(keys, tools) })),
      });
      const { id: campaignId } = await saveCampaign(context, { key: newId(), id: null, version: null, data });
      await append(
        context,
        jobs.map(({ joint, ...job }) => ({
          kind: 'job saved' as const,
          id: newId(),
          data: {
            id: newId(),
            version: 1,
            data: jobData.parse({ ...job, campaignId, jointId: idOf(keys.joints, joint) }),
            importId: null,
            personId: null,
            reason: 'scope of the shutdown (invented)',
          },
        })),
      );
    },
  };
}
