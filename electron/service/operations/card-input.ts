import type { Kysely } from 'kysely';
import type { SettingData, ToolSetData } from '../../../core/contract/setting.ts';
import type { ToolClass } from '../../../core/contract/tool.ts';
import type {
  AnyTool as AnyPart,
  CardInput,
  Head,
  ToolOnRegister,
  Wrench,
} from '../../../core/setting/input.ts';
import type { ToolRoom } from '../../../core/tools/facts.ts';
import { handWrenchAsSet } from '../../../core/tools/hand-wrench.ts';
import { setToolIds } from '../../../core/tools/set-ids.ts';
import { invalidField, notFound } from '../failure.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { lastTightening } from '../repositories/chart.ts';
import { findJoint } from '../repositories/joint.ts';
import { siteTablesFor } from '../repositories/site-tables.ts';
import { type AnyTool, toolsWithCertificates } from '../repositories/tool.ts';
import { toolFacts, toolRules } from '../repositories/tool-facts.ts';
import { checkDistinct } from './distinct.ts';

/** Gathers everything a card is computed from. `untilUtc` leaves out what happened after a recorded event. */
export async function gatherCardInput(
  db: Kysely<RegisterSchema>,
  input: SettingData,
  untilUtc: string | null = null,
  field = '',
): Promise<CardInput> {
  const joint = await findJoint(db, input.jointId);
  if (joint === null) throw notFound('joint', `${field}jointId`, input.jointId);
  const openings = await toolsWithCertificates(db, { classes: ['cassette', 'square-drive head', 'reducer'] });
  const handWrench = await gatherHandWrench(db, input, `${field}torqueTool.toolId`);
  return {
    joint: { id: joint.id, version: joint.version, data: joint.data },
    kind: input.kind,
    startsOn: input.startsOn,
    endsOn: input.endsOn,
    planId: input.planId,
    boltSet: input.boltSet,
    method: input.method,
    torqueTool: handWrench === null ? input.torqueTool : handWrenchAsSet(handWrench, input.startsOn),
    handWrench,
    toolRoom: await gatherToolRoom(db, toolsOf(input), input.startsOn),
    withUncertainty: input.withUncertainty,
    site: await siteTablesFor(db, joint.data, input.planId),
    set: await gatherSet(db, input.tools, `${field}tools.`),
    onRegister: {
      cassettes: openings.filter(isHead),
      reducers: openings.filter(isOf('reducer')),
    },
    lastTightening: await lastTightening(db, input.jointId, input.boltSet, untilUtc),
  };
}

/** As `gatherCardInput`, with every part of a hydraulic set on the register and what is known of each. */
export async function gatherCandidates(
  db: Kysely<RegisterSchema>,
  input: SettingData,
): Promise<{ readonly input: CardInput; readonly candidates: readonly AnyPart[] }> {
  const given = await gatherCardInput(db, input);
  const parts = (await toolsWithCertificates(db, { classes: PARTS })) as readonly AnyPart[];
  const candidates = PARTS.flatMap((each) => parts.filter(({ data }) => data.properties.class === each));
  const ids = candidates.map(({ id }) => id);
  return { input: { ...given, toolRoom: await gatherToolRoom(db, ids, input.startsOn) }, candidates };
}

/** In the order in which a set is put together. */
const PARTS: readonly ToolClass[] = [
  'drive unit',
  'cassette',
  'square-drive head',
  'reducer',
  'pump',
  'gauge',
  'hose',
  'coupler',
  'counterhold wrench',
];

/** Rules and facts of the chosen tools, as far as they were known at the end of the job's first day. */
async function gatherToolRoom(
  db: Kysely<RegisterSchema>,
  toolIds: readonly string[],
  on: string,
): Promise<ToolRoom> {
  return { ...(await toolRules(db)), facts: await toolFacts(db, toolIds, on) };
}

const isOf =
  <C extends ToolClass>(toolClass: C) =>
  (tool: AnyTool): tool is ToolOnRegister<C> =>
    tool.data.properties.class === toolClass;

const isHead = (tool: AnyTool): tool is Head => isOf('cassette')(tool) || isOf('square-drive head')(tool);

async function gatherHandWrench(
  db: Kysely<RegisterSchema>,
  { method, torqueTool }: SettingData,
  field: string,
): Promise<CardInput['handWrench']> {
  const toolId = torqueTool?.toolId ?? null;
  if (toolId === null) return null;
  if (method !== 'hand torque wrench') throw invalidField(field, toolId, `none for a ${method}`);
  const tools = await toolsWithCertificates(db, { ids: [toolId] });
  return pick(tools, 'a hand torque wrench', isOf('hand torque wrench'), field, toolId);
}

/** A tool by its id, of the class its place asks for. */
function pick<T extends AnyTool>(
  tools: readonly AnyTool[],
  wanted: string,
  is: (tool: AnyTool) => tool is T,
  field: string,
  id: string,
): T {
  const tool = tools.find((one) => one.id === id);
  if (!tool) throw notFound('tool', field, id);
  if (!is(tool)) throw invalidField(field, `${tool.data.number}, a ${tool.data.properties.class}`, wanted);
  return tool;
}

async function gatherSet(
  db: Kysely<RegisterSchema>,
  set: ToolSetData,
  field: string,
): Promise<CardInput['set']> {
  const ids = idsOf(set, field);
  const tools = await toolsWithCertificates(db, { ids });
  const part = <C extends ToolClass>(toolClass: C, name: string, id: string) =>
    pick(tools, `a ${toolClass}`, isOf(toolClass), `${field}${name}`, id);
  const one = <C extends ToolClass>(toolClass: C, name: string, id: string | null) =>
    id === null ? null : part(toolClass, name, id);
  const wrench = ({ driveId, cassetteId, reducerIds, hoseIds }: WrenchIds, at: string): Wrench => ({
    drive: one('drive unit', `${at}driveId`, driveId),
    cassette:
      cassetteId === null
        ? null
        : pick(tools, 'a cassette or square-drive head', isHead, `${field}${at}cassetteId`, cassetteId),
    reducers: reducerIds.map((id) => part('reducer', `${at}reducerIds`, id)),
    hoses: hoseIds.map((id) => part('hose', `${at}hoseIds`, id)),
  });
  return {
    ...wrench(set, ''),
    pump: one('pump', 'pumpId', set.pumpId),
    gauge: one('gauge', 'gaugeId', set.gaugeId),
    couplers: set.couplerIds.map((id) => part('coupler', 'couplerIds', id)),
    counterhold: one('counterhold wrench', 'counterholdId', set.counterholdId),
    further: set.further.map((each, at) => wrench(each, `further.${at}.`)),
  };
}

function toolsOf({ tools, torqueTool }: SettingData): string[] {
  return [...setToolIds(tools), ...(torqueTool?.toolId ? [torqueTool.toolId] : [])];
}

type WrenchIds = ToolSetData['further'][number];

/** A part is in one place only. */
function idsOf(set: ToolSetData, field: string): string[] {
  checkDistinct(`${field}reducerIds`, set.reducerIds);
  checkDistinct(`${field}hoseIds`, set.hoseIds);
  checkDistinct(`${field}couplerIds`, set.couplerIds);
  const ofWrench = ({ driveId, cassetteId, reducerIds, hoseIds }: WrenchIds) =>
    [driveId, cassetteId, ...reducerIds, ...hoseIds].filter((id) => id !== null);
  checkDistinct(`${field}further`, [set, ...set.further].flatMap(ofWrench));
  return setToolIds(set);
}
