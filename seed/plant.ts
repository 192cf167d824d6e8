import { demoCampaign } from './campaign.ts';
import { demoCertificates } from './certificates.ts';
import { demoEvents } from './events.ts';
import { furtherTools } from './further-tools.ts';
import { demoJoints } from './joints.ts';
import { demoLife } from './life.ts';
import { withMeasuredLoads } from './measured-loads.ts';
import { CONFIRMATIONS } from './one-source.ts';
import { PEOPLE } from './people.ts';
import { demoRoom } from './room.ts';
import { toolroom } from './toolroom.ts';
import { demoTools } from './tools.ts';
import type { DemoPlant } from './types.ts';
import { PLANT_UNITS } from './units.ts';

export const DEMO_SITE = { name: 'Demo plant (invented)', timeZone: 'Europe/Amsterdam' } as const;

export interface DemoPlantOptions {
  /** Calendar date the plant stands at; the lapsed certificate lapsed the day before. */
  readonly today?: string;
  /** Another seed gives another plant with the same planted faults. */
  readonly seed?: number;
}

/**
 * The invented demo plant: the same data for the same day and seed. Nothing in it was measured anywhere, and the site's
 * name, the remarks and the laboratory say so.
 */
export function demoPlant({ today = '2026-11-25', seed = 20261125 }: DemoPlantOptions = {}): DemoPlant {
  const joints = demoJoints(seed);
  const worked = demoTools(today);
  const tools = [...worked, ...furtherTools(today)];
  const certificates = demoCertificates(tools, today, seed);
  const site = { room: toolroom(worked, certificates, today), today, timeZone: DEMO_SITE.timeZone };
  const events = withMeasuredLoads(demoEvents(joints, site, seed), joints, seed);
  return {
    site: DEMO_SITE,
    units: PLANT_UNITS.map(({ name }) => ({ name })),
    people: PEOPLE,
    joints,
    tools,
    certificates,
    confirmations: CONFIRMATIONS,
    events,
    room: demoRoom(tools, certificates, events, site, seed),
    life: demoLife(today, DEMO_SITE.timeZone),
    campaign: demoCampaign(joints, events, site),
  };
}
