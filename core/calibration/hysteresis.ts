import { compute, noSolution, type Outcome, type RelationInput, within } from '../findings/outcome.ts';
import { type FittedLine, fitLine, type TorquePoint } from './line.ts';

/** Readings of both directions at one pressure. */
export interface HysteresisPair {
  /** Pa */
  readonly pressure: number;
  /** N·m; the mean where a direction was read several times. */
  readonly up: number;
  readonly down: number;
  /** Down less up, N·m: positive when the tool gives more on the way down. */
  readonly difference: number;
  /** Difference over the mean of both. */
  readonly relative: number;
}

export interface Hysteresis {
  readonly pairs: readonly HysteresisPair[];
  /** The pair that differs most as a fraction of its torque. */
  readonly largest: HysteresisPair;
  /** Line of each direction by itself; null with fewer than three points or at one pressure. */
  readonly up: FittedLine | null;
  readonly down: FittedLine | null;
}

/**
 * Difference between the readings with rising and with falling pressure.
 *
 * Equation: h = T↓(p) − T↑(p) at equal pressures; h/T = h/((T↓ + T↑)/2).
 * @param points pressure in Pa and torque in N·m above 0, both directions
 * @param tolerance pressures that differ by no more than this are equal, Pa, at least 0
 * @returns pairs and the largest; without both directions, or without equal pressures, not known
 * @example hysteresis([{ pressure: 1e7, torque: 100, direction: 'up' }, { pressure: 1e7, torque: 102, direction: 'down'
 * }], 1e5).value?.largest.relative // 0.0198
 * @source JCGM 200:2012 (VIM) does not define it; difference of rising and falling readings at one pressure as in
 * DKD-R 6-1 (2014), section on evaluation (from memory)
 */
export function hysteresis(points: readonly TorquePoint[], tolerance: number): Outcome<Hysteresis> {
  const up = points.filter(({ direction }) => direction === 'up');
  const down = points.filter(({ direction }) => direction === 'down');
  const checked = compute({}, () => true, [
    ...points.flatMap(readable),
    within(
      'Δp',
      'tolerance of equal pressures, Pa',
      tolerance,
      [0, 4e8],
      'choose a part of the gauge’s mark',
    ),
    within(
      'n',
      'points with rising pressure',
      up.length || null,
      [1, 1000],
      'not known: the certificate lists none',
    ),
    within(
      'n',
      'points with falling pressure',
      down.length || null,
      [1, 1000],
      'not known: the certificate lists none',
    ),
  ]);
  if (checked.value === null) return checked;
  const pairs = pairsOf(up, down, tolerance);
  const [first] = pairs;
  if (first === undefined) {
    return noSolution('h', 'hysteresis', 'not known: no pressure was read in both directions');
  }
  const largest = pairs.reduce(
    (most, one) => (Math.abs(one.relative) > Math.abs(most.relative) ? one : most),
    first,
  );
  return { value: { pairs, largest, up: lineOf(up), down: lineOf(down) }, missing: [] };
}

function readable({ pressure, torque }: TorquePoint, index: number): RelationInput[] {
  return [
    within('p', `pressure of point ${index + 1}, Pa`, pressure, [0, 1e12], 'enter it from the certificate'),
    within('T', `torque of point ${index + 1}, N·m`, torque, [0, 1e12], 'enter it from the certificate'),
  ];
}

function pairsOf(
  up: readonly TorquePoint[],
  down: readonly TorquePoint[],
  tolerance: number,
): HysteresisPair[] {
  const rising = groups(up, tolerance);
  const falling = groups(down, tolerance);
  return rising.flatMap(({ pressure, torque }) => {
    const match = nearest(falling, pressure);
    if (match === null || Math.abs(match.pressure - pressure) > tolerance) return [];
    const mean = (torque + match.torque) / 2;
    // At no pressure there is no torque, and nothing to take a fraction of.
    if (!(mean > 0)) return [];
    const difference = match.torque - torque;
    return [{ pressure, up: torque, down: match.torque, difference, relative: difference / mean }];
  });
}

interface Reading {
  readonly pressure: number;
  readonly torque: number;
}

/** Readings at one pressure, taken together as their mean. */
function groups(points: readonly TorquePoint[], tolerance: number): Reading[] {
  const sorted = [...points].sort((a, b) => a.pressure - b.pressure);
  const found: TorquePoint[][] = [];
  for (const point of sorted) {
    const last = found.at(-1);
    const start = last?.[0];
    if (last !== undefined && start !== undefined && point.pressure - start.pressure <= tolerance)
      last.push(point);
    else found.push([point]);
  }
  return found.map((group) => ({
    pressure: mean(group.map(({ pressure }) => pressure)),
    torque: mean(group.map(({ torque }) => torque)),
  }));
}

function nearest(readings: readonly Reading[], pressure: number): Reading | null {
  return readings.reduce<Reading | null>(
    (best, one) =>
      best === null || Math.abs(one.pressure - pressure) < Math.abs(best.pressure - pressure) ? one : best,
    null,
  );
}

function lineOf(points: readonly TorquePoint[]): FittedLine | null {
  return fitLine(
    points.map(({ pressure }) => pressure),
    points.map(({ torque }) => torque),
  );
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
