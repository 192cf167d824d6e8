import type { JointData } from '../../core/contract/joint.ts';
import { type Method, method, type SettingInput, type ToolSetInput } from '../../core/contract/setting.ts';
import type { Option } from './fields.tsx';

export const METHODS = method.options;

/** Only the hydraulic wrench is put together from parts of the register. */
export const takesToolSet = (by: Method): boolean => by === 'hydraulic wrench';

/** A tensioner is set by its own instructions, not to a torque. */
export const takesTorqueTool = (by: Method): boolean => !takesToolSet(by) && by !== 'tensioner';

/** Only hand torque wrenches stand on the register; the other tools without pressure are described. */
export const standsOnRegister = (by: Method): boolean => by === 'hand torque wrench';

/** A tool of the register named for a method that takes none of it is sent as it is described. */
export const toolFor = <T extends SettingInput['torqueTool']>(by: Method, tool: T): T =>
  tool === null || tool === undefined || standsOnRegister(by) ? tool : { ...tool, toolId: null };

export const EMPTY_SET: ToolSetInput = {
  driveId: null,
  cassetteId: null,
  reducerIds: [],
  pumpId: null,
  gaugeId: null,
  hoseIds: [],
  couplerIds: [],
  counterholdId: null,
  further: [],
};

/** A joint's sets of bolts by their number; 0 is its own bolting. */
export const boltSetOptions = (sets: JointData['boltSets']): Option[] => [
  { value: '0', words: 'the joint’s first bolting' },
  ...sets.map((set, at) => ({ value: String(at + 1), words: set.name })),
];
