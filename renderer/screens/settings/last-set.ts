import type { ToolSetInput } from '../../../core/contract/setting.ts';
import { remembered } from '../../app/remember.ts';

export const EMPTY_SET: ToolSetInput = {
  driveId: null,
  cassetteId: null,
  reducerIds: [],
  pumpId: null,
  gaugeId: null,
  hoseIds: [],
};

interface LastSet {
  readonly tools: ToolSetInput;
  readonly planId: string;
}

/** The set a person put together last; most jobs of a day use one. */
export const lastSet = remembered<LastSet>('set', { tools: EMPTY_SET, planId: '' });
