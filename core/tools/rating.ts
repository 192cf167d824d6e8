import type { AnyTool, ToolSet, Wrench } from '../setting/input.ts';

/** A part with what it may stand; null is "not known", absent means the part has no such rating. */
export interface RatedPart {
  readonly tool: AnyTool;
  readonly pressure: number | null | undefined;
  readonly torque: number | null | undefined;
}

/**
 * Parts of the set in the order of the chain, pump to nut, with their ratings.
 *
 * @param set tools chosen for the setting; parts not chosen are left out
 * @returns parts from pump to nut; a rating is null when not known, absent when the part has none
 * @example ratedParts(set).length // 5
 * @source lowest-rated part governs: common practice
 */
export function ratedParts(set: ToolSet): RatedPart[] {
  const parts: RatedPart[] = [];
  if (set.pump !== null) parts.push(part(set.pump, set.pump.data.properties.ratedPressure.si));
  if (set.gauge !== null) parts.push(part(set.gauge, set.gauge.data.properties.scaleMax.si));
  for (const coupler of set.couplers) parts.push(part(coupler, coupler.data.properties.ratedPressure.si));
  parts.push(...wrenchParts(set));
  for (const wrench of set.further) parts.push(...wrenchParts(wrench));
  if (set.counterhold !== null) {
    parts.push(part(set.counterhold, undefined, set.counterhold.data.properties.ratedTorque?.si ?? null));
  }
  return parts;
}

/**
 * Parts of one wrench in the order of the chain, hose to nut, with their ratings.
 *
 * @param wrench one wrench of the set with its hoses
 * @returns parts from hose to nut; a rating is null when not known, absent when the part has none
 * @example wrenchParts(set).length // 3
 * @source lowest-rated part governs: common practice
 */
export function wrenchParts({ hoses, drive, cassette, reducers }: Wrench): RatedPart[] {
  const parts = hoses.map((hose) => part(hose, hose.data.properties.ratedPressure.si));
  if (drive !== null) {
    const { ratedPressure, ratedTorque } = drive.data.properties;
    parts.push(part(drive, ratedPressure.si, ratedTorque.si));
  }
  if (cassette !== null)
    parts.push(part(cassette, undefined, cassette.data.properties.ratedTorque?.si ?? null));
  for (const reducer of reducers) {
    parts.push(part(reducer, undefined, reducer.data.properties.ratedTorque?.si ?? null));
  }
  return parts;
}

function part(tool: AnyTool, pressure: number | undefined, torque?: number | null): RatedPart {
  return { tool, pressure, torque };
}

/**
 * Lowest pressure rating of the set. The gauge counts with its full scale.
 *
 * @param parts rated parts
 * @returns pressure in Pa and the part, or null when no part has one
 * @example lowestPressure(parts)?.value // 690e5 Pa
 * @source lowest-rated part governs: common practice
 */
export function lowestPressure(parts: readonly RatedPart[]): { value: number; part: RatedPart } | null {
  return lowest(parts, (one) => one.pressure);
}

/**
 * Lowest torque rating of the parts that carry the torque; parts without a known rating are left out.
 *
 * @param parts rated parts
 * @returns torque in N·m and the part, or null when no part has one
 * @example lowestTorque(parts)?.value // 1100 N·m
 * @source lowest-rated part governs: common practice
 */
export function lowestTorque(parts: readonly RatedPart[]): { value: number; part: RatedPart } | null {
  return lowest(parts, (one) => one.torque);
}

function lowest(
  parts: readonly RatedPart[],
  rating: (part: RatedPart) => number | null | undefined,
): { value: number; part: RatedPart } | null {
  let found: { value: number; part: RatedPart } | null = null;
  for (const one of parts) {
    const value = rating(one);
    if (value !== null && value !== undefined && (found === null || value < found.value)) {
      found = { value, part: one };
    }
  }
  return found;
}
