import { breakoutData, personData, tighteningData, unitData } from '../../../core/contract/event.ts';
import { jointData } from '../../../core/contract/joint.ts';
import { settingInput, type ToolSetInput } from '../../../core/contract/setting.ts';
import { certificateData, toolData } from '../../../core/contract/tool.ts';
import { PASS_PLANS } from '../../../core/sequence/plans.ts';
import { DEMO_SITE, demoPlant } from '../../../seed/plant.ts';
import type { DemoCertificate, DemoEvent, DemoPlant, DemoToolSet } from '../../../seed/types.ts';
import { append } from '../chain/append.ts';
import type { EventDraft } from '../chain/events.ts';
import type { Site, WriteContext } from '../context.ts';
import { RequestFailure } from '../failure.ts';
import { issue } from '../requests/setting.ts';
import { confirmValues } from '../requests/site.ts';
import { dateAtSite } from '../time.ts';
import { recordCertificate } from './certificate.ts';
import { campaignStep } from './demo-campaign.ts';
import { type DemoStep, idOf, type Keys } from './demo-keys.ts';
import { lifeSteps } from './demo-life.ts';
import { roomSteps } from './demo-tool-room.ts';
import { recordBreakout, recordTightening } from './record.ts';

/** Writes the register's first event: the site. */
export type Begin = (site: Omit<Site, 'id'>, clock: () => Date) => Promise<WriteContext>;

/**
 * Replays the invented plant through what real requests go through, so that it holds nothing a person couldn't enter.
 * Each record is entered on the day it speaks of: the plant's past is as invented as its joints, and ends today.
 */
export async function replayDemo(begin: Begin, clock: () => Date): Promise<WriteContext> {
  const plant = demoPlant({ today: dateAtSite(clock().toISOString(), DEMO_SITE.timeZone) });
  const steps = stepsOf(plant);
  const opening = new Date((steps[0]?.at ?? 0) - DAY_MS);
  const { name, timeZone } = plant.site;
  const context = await begin({ name, timeZone, demo: true }, () => opening);
  const keys = await replayMasterData(context, plant);
  for (const { at, replay } of steps) await replay({ ...context, clock: () => new Date(at) }, keys);
  return context;
}

const DAY_MS = 86_400_000;

/** Certificates, work and the tool room in order of time; a certificate is there from the start of its day. */
function stepsOf({ certificates, events, room, life, campaign }: DemoPlant): DemoStep[] {
  return [
    ...certificates.map(
      (certificate): DemoStep => ({
        at: Date.parse(certificate.calibratedOn),
        replay: (context, keys) => replayCertificate(context, keys, certificate),
      }),
    ),
    ...events.map(
      (event): DemoStep => ({
        at: Date.parse(event.happenedAt),
        replay: (context, keys) => replayEvent(context, keys, event),
      }),
    ),
    ...roomSteps(room),
    ...lifeSteps(life),
    campaignStep(campaign, toolSet),
  ].sort((a, b) => a.at - b.at);
}

async function replayCertificate(
  context: WriteContext,
  keys: Keys,
  certificate: DemoCertificate,
): Promise<void> {
  const { tool, withTools, ...rest } = certificate;
  const data = certificateData.parse({
    ...rest,
    toolId: idOf(keys.tools, tool),
    withToolIds: withTools.map((number) => idOf(keys.tools, number)),
  });
  keys.records.set(data.number, await recordCertificate(context, data, null));
}

async function replayMasterData(context: WriteContext, plant: DemoPlant): Promise<Keys> {
  const { newId, site } = context;
  const keyed = (names: readonly string[]) => new Map(names.map((name) => [name, newId()]));
  const keys: Keys = {
    units: keyed(plant.units.map(({ name }) => name)),
    people: keyed(plant.people.map(({ name }) => name)),
    joints: keyed(plant.joints.map(({ tag }) => tag)),
    tools: keyed(plant.tools.map(({ number }) => number)),
    records: new Map(),
  };
  const first = { version: 1, importId: null };
  await append(context, [
    ...plant.units.map((unit): EventDraft => {
      const data = unitData.parse(unit);
      return {
        kind: 'unit saved',
        id: newId(),
        data: { ...first, id: idOf(keys.units, unit.name), siteId: site.id, data },
      };
    }),
    ...plant.people.map((person): EventDraft => {
      const data = personData.parse(person);
      return {
        kind: 'person saved',
        id: newId(),
        data: { ...first, id: idOf(keys.people, person.name), data },
      };
    }),
    ...plant.joints.map(({ unit, ...joint }): EventDraft => {
      const data = jointData.parse({ ...joint, unitId: idOf(keys.units, unit) });
      return { kind: 'joint saved', id: newId(), data: { ...first, id: idOf(keys.joints, joint.tag), data } };
    }),
    ...plant.tools.map((tool): EventDraft => {
      const data = toolData.parse(tool);
      return { kind: 'tool saved', id: newId(), data: { ...first, id: idOf(keys.tools, tool.number), data } };
    }),
  ]);
  for (const { person, ...cells } of plant.confirmations) {
    await confirmValues(context, { ...cells, personId: idOf(keys.people, person) });
  }
  return keys;
}

async function replayEvent(context: WriteContext, keys: Keys, event: DemoEvent): Promise<void> {
  const { kind, joint, people, tools: set, withSetting, ...rest } = event;
  const jointId = idOf(keys.joints, joint);
  const personIds = people.map((name) => idOf(keys.people, name));
  const tools = toolSet(keys, set);
  const settingId = withSetting ? await issuedFor(context, event, { jointId, personIds, tools }) : null;
  const input = { ...rest, jointId, settingId, personIds, tools };
  if (kind === 'tightening') await recordTightening(context, tighteningData.parse(input));
  else await recordBreakout(context, breakoutData.parse(input));
}

/** The setting the work followed; null where it was refused, as on a real site. */
async function issuedFor(
  context: WriteContext,
  { kind, happenedAt }: DemoEvent,
  { jointId, personIds, tools }: { jointId: string; personIds: string[]; tools: ToolSetInput },
): Promise<string | null> {
  const day = dateAtSite(happenedAt, context.site.timeZone);
  const planId = PASS_PLANS[0]?.id ?? '';
  const input = settingInput.parse({ jointId, kind, startsOn: day, endsOn: day, tools, planId });
  try {
    return await issue(context, input, personIds[0] ?? '');
  } catch (error) {
    if (error instanceof RequestFailure && error.code === 'refused') return null;
    throw error;
  }
}

function toolSet({ tools }: Keys, set: DemoToolSet): ToolSetInput {
  const optional = (number: string | null) => (number === null ? null : idOf(tools, number));
  return {
    driveId: optional(set.drive),
    cassetteId: optional(set.cassette),
    reducerIds: set.reducers.map((number) => idOf(tools, number)),
    pumpId: optional(set.pump),
    gaugeId: optional(set.gauge),
    hoseIds: set.hoses.map((number) => idOf(tools, number)),
  };
}
