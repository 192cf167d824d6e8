import type { SuitRow } from '../contract/setting.ts';
import type { Raised } from '../findings/finding.ts';
import { ratedParts } from '../tools/rating.ts';
import { checkValidity } from './check-certificates.ts';
import { checkLines } from './check-lines.ts';
import { checkCustody, checkRatings, checkRounding, checkScale } from './check-set.ts';
import { checkToolRoom } from './check-tool-room.ts';
import { dialFor, hydraulicsOf } from './hydraulics.ts';
import { type AnyTool, NO_SET, type ToolOnRegister, type ToolSet } from './input.ts';
import { type Job, refusals, suitRow } from './suit-row.ts';

/** What carries the pump's pressure to the wrench. */
export type Line = ToolOnRegister<'pump'> | ToolOnRegister<'hose'> | ToolOnRegister<'coupler'>;

const isClass =
  <C extends AnyTool['data']['properties']['class']>(toolClass: C) =>
  (tool: AnyTool): tool is Extract<AnyTool, ToolOnRegister<C>> =>
    tool.data.properties.class === toolClass;

/**
 * Whether a pump, hose or coupler stands the pressure, couples to what is chosen and may be used.
 *
 * @param job what it is held against
 * @param line pump, hose or coupler of the register
 * @returns one row; “not known” while the pressure is not known
 * @example lineRow({ input: complete, basis: basisOf(complete), torque: 380, pressure: 7.2e7 }, complete.set.pump).state // 'does not suit'
 * @source the same checks as for a chosen set; only what refuses counts against a tool
 */
export function lineRow({ input, torque, pressure }: Job, line: Line): SuitRow {
  const only = setOf(line);
  const findings = [
    ...checkCustody(line),
    ...checkToolRoom({ ...input, set: only }),
    ...checkRatings(input, ratedParts(only), torque, pressure),
    ...couplings(input, line),
  ];
  return suitRow(line, { against: refusals(findings), unknown: missing(input, pressure) });
}

/**
 * Whether a gauge can be read at the pressure, and its certificate and custody let it be used.
 *
 * @param job what it is held against
 * @param gauge gauge of the register
 * @returns one row; “not known” while the pressure is not known
 * @example gaugeRow({ input: complete, basis: basisOf(complete), torque: 380, pressure: 2.6e7 }, complete.set.gauge).state // 'suits'
 * @source the same checks as for a chosen set; only what refuses counts against a tool
 */
export function gaugeRow({ input, torque }: Job, gauge: ToolOnRegister<'gauge'>): SuitRow {
  const alone = { ...input, set: { ...NO_SET, drive: input.set.drive, gauge } };
  const hydraulics = hydraulicsOf(alone);
  // Each gauge has its own marks and its own correction.
  const dialled = torque === null ? null : dialFor(hydraulics, torque);
  const pressure = dialled?.dial?.pressure ?? null;
  const findings = [
    ...checkCustody(gauge),
    ...checkToolRoom({ ...alone, set: { ...NO_SET, gauge } }),
    ...checkValidity(alone, gauge, hydraulics.gaugeStanding),
    ...checkScale(alone, hydraulics, pressure),
    ...checkRounding(alone, torque, dialled),
  ];
  return suitRow(gauge, { against: refusals(findings), unknown: missing(input, pressure) });
}

function setOf(line: Line): ToolSet {
  if (isClass('pump')(line)) return { ...NO_SET, pump: line };
  return isClass('hose')(line) ? { ...NO_SET, hoses: [line] } : { ...NO_SET, couplers: [line] };
}

/** With each other part alone: what two others have against each other says nothing of this one. */
function couplings(input: Job['input'], line: Line): Raised[] {
  const own = setOf(line);
  const { pump, couplers, further } = input.set;
  const wrenches = [input.set, ...further];
  const others: Partial<ToolSet>[] = [
    ...(pump === null || isClass('pump')(line) ? [] : [{ pump }]),
    ...wrenches.flatMap(({ hoses }) => hoses.map((hose) => ({ hoses: [...own.hoses, hose] }))),
    ...couplers.map((coupler) => ({ couplers: [...own.couplers, coupler] })),
    ...wrenches.flatMap(({ drive }) => (drive === null ? [] : [{ drive }])),
    // Wrenches without their lines: only their number counts against a pump's connections.
    { further: further.map(() => NO_SET) },
  ];
  return others.flatMap((other) => checkLines({ ...input, set: { ...own, ...other } }));
}

function missing({ set: { drive } }: Job['input'], pressure: number | null): string[] {
  if (pressure !== null) return [];
  return [drive === null ? 'pressure not known: no drive unit is chosen' : 'pressure not known'];
}
