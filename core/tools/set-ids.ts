import type { ToolSetData } from '../contract/setting.ts';

/**
 * Every part of a set of tools by its id on the register, the further wrenches' parts among them.
 *
 * @param tools set as chosen
 * @returns ids in the order of the set; a part not chosen is left out, one named twice stands twice
 * @example setToolIds({ driveId: 'W', cassetteId: null, reducerIds: [], hoseIds: ['H'], pumpId: 'P', gaugeId: null, couplerIds: [], counterholdId: null, further: [] }) // ['W', 'H', 'P']
 * @source rule of this program
 */
export function setToolIds(tools: ToolSetData): string[] {
  const wrenches = [tools, ...tools.further].flatMap(({ driveId, cassetteId, reducerIds, hoseIds }) => [
    driveId,
    cassetteId,
    ...reducerIds,
    ...hoseIds,
  ]);
  const shared = [tools.pumpId, tools.gaugeId, tools.counterholdId, ...tools.couplerIds];
  return [...wrenches, ...shared].filter((id) => id !== null);
}
