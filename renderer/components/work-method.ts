import type { JointData } from '../../core/contract/joint.ts';
import { type Method, method, type ToolSetInput } from '../../core/contract/setting.ts';
import type { Option } from './fields.tsx';

export const METHODS = method.options;

/** Only the hydraulic wrench is put together from parts of the register. */
export const takesToolSet = (by: Method): boolean => by === 'hydraulic wrench';

/** A tensioner is set by its own instructions, not to a torque. */
export const takesTorqueTool = (by: Method): boolean => !takesToolSet(by) && by !== 'tensioner';

export const EMPTY_SET: ToolSetInput = {
  driveId: null,
  cassetteId: null,
  reducerIds: [],
  pumpId: null,
  gaugeId: null,
  hoseIds: [],
};

/** A joint's sets of bolts by their number; 0 is its own bolting. */
export const boltSetOptions = (sets: JointData['boltSets']): Option[] => [
  { value: '0', words: 'the joint’s first bolting' },
  ...sets.map((set, at) => ({ value: String(at + 1), words: set.name })),
];
