import type { Kysely } from 'kysely';
import type { SettingData, ToolSetInput } from '../../../core/contract/setting.ts';
import type { ToolClass } from '../../../core/contract/tool.ts';
import type { CardInput, ToolOnRegister } from '../../../core/setting/input.ts';
import { invalidField, notFound } from '../failure.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { lastTightening } from '../repositories/chart.ts';
import { findJoint } from '../repositories/joint.ts';
import { siteTablesFor } from '../repositories/site-tables.ts';
import { type AnyTool, toolsWithCertificates } from '../repositories/tool.ts';
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
  const openings = await toolsWithCertificates(db, { classes: ['cassette', 'reducer'] });
  return {
    joint: { id: joint.id, version: joint.version, data: joint.data },
    kind: input.kind,
    startsOn: input.startsOn,
    endsOn: input.endsOn,
    planId: input.planId,
    boltSet: input.boltSet,
    method: input.method,
    torqueTool: input.torqueTool,
    withUncertainty: input.withUncertainty,
    site: await siteTablesFor(db, joint.data, input.planId),
    set: await gatherSet(db, input.tools, `${field}tools.`),
    onRegister: {
      cassettes: openings.filter(isOf('cassette')),
      reducers: openings.filter(isOf('reducer')),
    },
    lastTightening: await lastTightening(db, input.jointId, input.boltSet, untilUtc),
  };
}

const isOf =
  <C extends ToolClass>(toolClass: C) =>
  (tool: AnyTool): tool is ToolOnRegister<C> =>
    tool.data.properties.class === toolClass;

async function gatherSet(
  db: Kysely<RegisterSchema>,
  set: ToolSetInput,
  field: string,
): Promise<CardInput['set']> {
  checkDistinct(`${field}reducerIds`, set.reducerIds);
  checkDistinct(`${field}hoseIds`, set.hoseIds);
  const single = [set.driveId, set.cassetteId, set.pumpId, set.gaugeId].filter((id) => id !== null);
  const tools = await toolsWithCertificates(db, { ids: [...single, ...set.reducerIds, ...set.hoseIds] });
  const part = <C extends ToolClass>(
    toolClass: C,
    name: keyof ToolSetInput,
    id: string,
  ): ToolOnRegister<C> => {
    const tool = tools.find((one) => one.id === id);
    if (!tool) throw notFound('tool', `${field}${name}`, id);
    if (!isOf(toolClass)(tool)) {
      throw invalidField(
        `${field}${name}`,
        `${tool.data.number}, a ${tool.data.properties.class}`,
        `a ${toolClass}`,
      );
    }
    return tool;
  };
  const one = <C extends ToolClass>(toolClass: C, name: keyof ToolSetInput, id: string | null) =>
    id === null ? null : part(toolClass, name, id);
  return {
    drive: one('drive unit', 'driveId', set.driveId),
    cassette: one('cassette', 'cassetteId', set.cassetteId),
    reducers: set.reducerIds.map((id) => part('reducer', 'reducerIds', id)),
    pump: one('pump', 'pumpId', set.pumpId),
    gauge: one('gauge', 'gaugeId', set.gaugeId),
    hoses: set.hoseIds.map((id) => part('hose', 'hoseIds', id)),
  };
}
