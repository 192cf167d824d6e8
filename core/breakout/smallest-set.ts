import { pressureForTorque } from '../calibration/setting.ts';
import type { ForecastSet } from '../contract/forecast.ts';
import { capacityOf, hydraulicsOf } from '../setting/hydraulics.ts';
import { type AnyTool, type Head, NO_SET, type ToolOnRegister } from '../setting/input.ts';
import { openingOf, seat } from '../tools/fit.ts';

/** Smallest set that is strong enough, or why there is none. */
export interface SmallestSet {
  readonly set: ForecastSet | null;
  readonly why: string;
}

/**
 * Smallest wrench with a head on the register that gives a torque: available, calibrated on the day, of one family, and
 * fitting the nut, alone or with one reducer. Pump, hoses and gauge have to stand the pressure.
 *
 * Equation: least capacity with T_capacity ≥ T.
 * @param candidates parts on the register
 * @param torque T, N·m, above 0
 * @param acrossFlats of the nut, m, above 0; null when not known
 * @param day of the job, YYYY-MM-DD
 * @returns set with its capacity; why there is none
 * @example smallestSet([], 500, 0.0365, '2026-03-16').why // 'No drive unit on the register is available and calibrated on that day.'
 * @source lowest-rated part governs: common practice
 */
export function smallestSet(
  candidates: readonly AnyTool[],
  torque: number,
  acrossFlats: number | null,
  day: string,
): SmallestSet {
  if (acrossFlats === null) return { set: null, why: 'The nut is not known, so that no head can be chosen.' };
  const parts = candidates.filter(({ data }) => data.status === 'available');
  const drives = parts.filter(isOf('drive unit')).filter((drive) => calibrated(drive, day));
  if (drives.length === 0) {
    return { set: null, why: 'No drive unit on the register is available and calibrated on that day.' };
  }
  const heads = fittingHeads(parts, acrossFlats);
  if (heads.length === 0)
    return { set: null, why: 'No available head fits the nut, alone or with one reducer.' };
  const sets = drives.flatMap((drive) =>
    heads
      .filter(({ head }) => head.data.properties.family === drive.data.properties.family)
      .flatMap(({ head, reducers }) => {
        const hydraulics = hydraulicsOf({
          set: { ...NO_SET, drive, cassette: head, reducers },
          startsOn: day,
        });
        const capacity = capacityOf(hydraulics);
        return capacity === null ? [] : [{ drive, head, reducers, capacity, line: hydraulics.line }];
      }),
  );
  if (sets.length === 0)
    return { set: null, why: 'No fitting head is of the family of an available drive unit.' };
  const strong = sets
    .filter(({ capacity }) => capacity.torque >= torque)
    .toSorted((a, b) => a.capacity.torque - b.capacity.torque || compare(a.drive, b.drive));
  const [first] = strong;
  if (first === undefined) {
    const most = Math.max(...sets.map(({ capacity }) => capacity.torque));
    return { set: null, why: `The strongest fitting set on the register gives ${Math.round(most)} N·m.` };
  }
  return {
    set: {
      driveId: first.drive.id,
      drive: first.drive.data.number,
      headId: first.head.id,
      head: first.head.data.number,
      reducers: first.reducers.map(({ data }) => data.number),
      capacity: first.capacity.torque,
      pressure: first.line === null ? null : pressureForTorque(first.line, torque),
      governs: first.capacity.governs,
    },
    why: 'Pump, hoses and gauge have to be rated for the pressure; the fit of the whole set is checked when its setting is made.',
  };
}

type Class = AnyTool['data']['properties']['class'];

const isOf =
  <C extends Class>(toolClass: C) =>
  (tool: AnyTool): tool is Extract<AnyTool, ToolOnRegister<C>> =>
    tool.data.properties.class === toolClass;

const isHead = (tool: AnyTool): tool is Head => isOf('cassette')(tool) || isOf('square-drive head')(tool);

function calibrated(drive: ToolOnRegister<'drive unit'>, day: string): boolean {
  return hydraulicsOf({ set: { ...NO_SET, drive }, startsOn: day }).driveStanding?.state === 'in force';
}

function fittingHeads(
  parts: readonly AnyTool[],
  nut: number,
): { head: Head; reducers: readonly ToolOnRegister<'reducer'>[] }[] {
  const reducers = parts
    .filter(isOf('reducer'))
    .filter((reducer) => seat(openingOf(reducer), nut) === 'fits')
    .toSorted(compare);
  return parts.filter(isHead).flatMap((head) => {
    if (seat(openingOf(head), nut) === 'fits') return [{ head, reducers: [] }];
    const reducer = reducers.find(
      ({ data }) => seat(openingOf(head), data.properties.outerAcrossFlats.si) === 'fits',
    );
    return reducer === undefined ? [] : [{ head, reducers: [reducer] }];
  });
}

const compare = (a: AnyTool, b: AnyTool) => (a.data.number < b.data.number ? -1 : 1);
