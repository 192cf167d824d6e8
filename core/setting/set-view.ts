import type { SetPart } from '../contract/setting.ts';
import { describeTool } from '../text/describe.ts';
import { lowestPressure, type RatedPart } from '../tools/rating.ts';

/**
 * Shows the set as a chain of parts; the weakest in pressure is marked, every part that shares the lowest rating.
 *
 * @param parts rated parts, pump to nut
 * @returns parts with their ratings
 * @example setView(parts).length // 5
 * @source lowest-rated part governs: common practice
 */
export function setView(parts: readonly RatedPart[]): SetPart[] {
  const lowest = lowestPressure(parts)?.value ?? null;
  return parts.map(({ tool, pressure, torque }) => ({
    role: tool.data.properties.class,
    toolId: tool.id,
    number: tool.data.number,
    description: describeTool(tool.data.properties),
    ratedPressure: pressure ?? null,
    ratedTorque: torque ?? null,
    weakest: lowest !== null && pressure === lowest,
  }));
}
