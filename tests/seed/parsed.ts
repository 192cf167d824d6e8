import { jointData } from '../../core/contract/joint.ts';
import { certificateData, toolData } from '../../core/contract/tool.ts';
import type { DemoCertificate, DemoEvent, DemoJoint, DemoPlant } from '../../seed/types.ts';

/** Stands for whatever id a local key is given on replay. */
const ANY_ID = '0198c000-0000-7000-8000-000000000001';

export function jointOf({ unit: _, ...joint }: DemoJoint) {
  return jointData.parse({ ...joint, unitId: ANY_ID });
}

export function certificateOf({ tool: _, withTools, ...certificate }: DemoCertificate) {
  return certificateData.parse({ ...certificate, toolId: ANY_ID, withToolIds: withTools.map(() => ANY_ID) });
}

export function toolOf(plant: DemoPlant, number: string) {
  return toolData.parse(plant.tools.find((tool) => tool.number === number));
}

export function jointByTag(plant: DemoPlant, tag: string): DemoJoint {
  const joint = plant.joints.find((each) => each.tag === tag);
  if (joint === undefined) throw new Error(`the plant has no joint ${tag}`);
  return joint;
}

/** Certificates of one tool as the calibration functions take them, oldest first. */
export function certificatesOf(plant: DemoPlant, tool: string) {
  return plant.certificates
    .filter((each) => each.tool === tool)
    .map((each) => ({ data: certificateOf(each) }));
}

/** The event in the contract's input form with every key replaced. */
export function eventInput(event: DemoEvent) {
  const { joint: _, people, tools, withSetting: __, kind: ___, ...rest } = event;
  const id = (number: string | null) => (number === null ? null : ANY_ID);
  return {
    ...rest,
    jointId: ANY_ID,
    settingId: null,
    personIds: people.map(() => ANY_ID),
    tools: {
      driveId: id(tools.drive),
      cassetteId: id(tools.cassette),
      reducerIds: tools.reducers.map(() => ANY_ID),
      pumpId: id(tools.pump),
      gaugeId: id(tools.gauge),
      hoseIds: tools.hoses.map(() => ANY_ID),
    },
  };
}
