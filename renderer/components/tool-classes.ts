import type { ToolClass } from '../../core/contract/tool.ts';

/** In the order a set is put together, from the nut's side to the pump's. */
export const TOOL_CLASSES: readonly ToolClass[] = [
  'drive unit',
  'cassette',
  'square-drive head',
  'reducer',
  'pump',
  'gauge',
  'hose',
  'coupler',
  'counterhold wrench',
  'hand torque wrench',
];
