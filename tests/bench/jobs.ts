import { jointData } from '../../core/contract/joint.ts';
import { certificateData, type ToolProperties, toolData } from '../../core/contract/tool.ts';
import { NO_SITE_TABLES } from '../../core/joint/site-tables.ts';
import { type AnyTool, type CardInput, NO_SET, type ToolOnRegister } from '../../core/setting/input.ts';
import { NO_TOOL_ROOM } from '../../core/tools/facts.ts';
import { demoPlant } from '../../seed/plant.ts';
import type { DemoEvent, DemoPlant } from '../../seed/types.ts';

/** One setting for every tightening with a hydraulic set that the invented plant has on record. */
export function plantJobs(): CardInput[] {
  const plant = demoPlant();
  const ids = numberedIds();
  const tools = toolsOf(plant, ids);
  const joints = new Map(
    plant.joints.map(({ unit, ...joint }) => [
      joint.tag,
      {
        id: ids(`joint ${joint.tag}`),
        version: 1,
        data: jointData.parse({ ...joint, unitId: ids(`unit ${unit}`) }),
      },
    ]),
  );
  const onRegister = {
    cassettes: [...tools.values()].filter(isOf('cassette')),
    reducers: [...tools.values()].filter(isOf('reducer')),
  };
  return plant.events.flatMap((event) => {
    const joint = joints.get(event.joint);
    if (event.kind !== 'tightening' || event.tools.drive === null || joint === undefined) return [];
    const day = event.happenedAt.slice(0, 10);
    return {
      joint,
      kind: 'tightening',
      startsOn: day,
      endsOn: day,
      planId: 'staged-thirds',
      boltSet: 0,
      method: 'hydraulic wrench',
      torqueTool: null,
      handWrench: null,
      toolRoom: NO_TOOL_ROOM,
      withUncertainty: false,
      site: NO_SITE_TABLES,
      set: setOf(tools, event),
      onRegister,
      lastTightening: null,
    };
  });
}

type Ids = (key: string) => string;

function numberedIds(): Ids {
  const known = new Map<string, string>();
  return (key) => {
    const id = known.get(key) ?? `018f0000-0000-7000-8000-${String(known.size).padStart(12, '0')}`;
    known.set(key, id);
    return id;
  };
}

function toolsOf(plant: DemoPlant, ids: Ids): Map<string, AnyTool> {
  return new Map(
    plant.tools.map((tool) => {
      const certificates = plant.certificates
        .filter((certificate) => certificate.tool === tool.number)
        .map(({ tool: number, withTools, ...certificate }) => ({
          id: ids(`certificate ${number} ${certificate.number}`),
          data: certificateData.parse({
            ...certificate,
            toolId: ids(number),
            withToolIds: withTools.map(ids),
          }),
        }));
      return [tool.number, { id: ids(tool.number), data: toolData.parse(tool), certificates } as AnyTool];
    }),
  );
}

const isOf =
  <C extends ToolProperties['class']>(toolClass: C) =>
  (tool: AnyTool | undefined): tool is AnyTool & ToolOnRegister<C> =>
    tool?.data.properties.class === toolClass;

function setOf(tools: ReadonlyMap<string, AnyTool>, { tools: set }: DemoEvent): CardInput['set'] {
  const one = <C extends ToolProperties['class']>(toolClass: C, number: string | null) => {
    const tool = number === null ? undefined : tools.get(number);
    return isOf(toolClass)(tool) ? tool : null;
  };
  const many = <C extends ToolProperties['class']>(toolClass: C, numbers: readonly string[]) =>
    numbers.map((number) => tools.get(number)).filter(isOf(toolClass));
  return {
    ...NO_SET,
    drive: one('drive unit', set.drive),
    cassette: one('cassette', set.cassette),
    reducers: many('reducer', set.reducers),
    pump: one('pump', set.pump),
    gauge: one('gauge', set.gauge),
    hoses: many('hose', set.hoses),
  };
}
