import { UNITS, type Unit } from '../units/units.ts';
import { fitLine, type TorquePoint } from './line.ts';

/** What may be wrong with a certificate as entered; its name is what a person confirms. */
export type EntryDoubtKind =
  | 'not a number'
  | 'too few pressures'
  | 'no rising line'
  | 'dated in the future'
  | 'points out of order'
  | 'equal pressures'
  | 'torque in another unit';

/** One thing to refuse or to confirm, as data; words are made elsewhere. */
export interface EntryDoubt {
  readonly kind: EntryDoubtKind;
  /** True: it can't be right. False: it can be, and is recorded once a person confirms it. */
  readonly refuses: boolean;
  /** Position of the point, from 0; null when it is about the certificate as a whole. */
  readonly point: number | null;
  /** As entered: pressure in Pa, torque in N·m, slope over the rating's, a count, or a date. */
  readonly value: number | string;
  /** What would be in order: the neighbour's value, the least count, the last date; null when nothing near is. */
  readonly allowed: number | string | null;
  /** Unit the torque is likely in; null for every other doubt. */
  readonly likely: TorqueUnitName | null;
}

/** A certificate as entered, before it is recorded. */
export interface EnteredCertificate {
  readonly points: readonly TorquePoint[];
  /** YYYY-MM-DD */
  readonly calibratedOn: string;
  /** Today at the site, YYYY-MM-DD. */
  readonly today: string;
  /** Unit the torques were entered in. */
  readonly torqueUnit: Unit;
  /** Rating of the drive unit, N·m and Pa; null when not known. */
  readonly rating: { readonly torque: number; readonly pressure: number } | null;
}

export type TorqueUnitName = 'N·m' | 'lbf·ft' | 'lbf·in' | 'kgf·m';

/** Exact by definition, as in the list of units; the kilopond metre is no unit to enter, but old certificates have it. */
const TORQUE_UNITS: readonly (readonly [TorqueUnitName, number])[] = [
  ['N·m', 1],
  ['lbf·ft', UNITS['lbf.ft'].factor],
  ['lbf·in', UNITS['lbf.in'].factor],
  ['kgf·m', 9.80665],
];

const LEAST_PRESSURES = 3;
/** How near the slope has to come to another unit's to suspect it. */
const NEAR = 0.03;

/**
 * Looks for what can't be right in a certificate's points, and for what can be but has to be confirmed.
 *
 * @param entered points in Pa and N·m in the order of the certificate, dates, unit and rating
 * @returns doubts, refusals first; empty when nothing looks wrong
 * @example entryDoubts({ points: [{ pressure: 1e7, torque: 100, direction: 'up' }], calibratedOn: '2026-01-10', today:
 * '2026-02-01', torqueUnit: 'N.m', rating: null })[0]?.kind // 'too few pressures'
 * @source rule of this program for input
 */
export function entryDoubts(entered: EnteredCertificate): EntryDoubt[] {
  const wrong = notNumbers(entered.points);
  // Nothing else can be said of points that are no numbers.
  const doubts =
    wrong.length > 0
      ? [...wrong, ...futureDate(entered)]
      : [
          ...futureDate(entered),
          ...fewPressures(entered.points),
          ...fallingLine(entered.points),
          ...outOfOrder(entered.points),
          ...equalPressures(entered.points),
          ...anotherUnit(entered),
        ];
  return [...doubts.filter(({ refuses }) => refuses), ...doubts.filter(({ refuses }) => !refuses)];
}

function notNumbers(points: readonly TorquePoint[]): EntryDoubt[] {
  return points.flatMap(({ pressure, torque }, point) =>
    [pressure, torque]
      .filter((value) => !(Number.isFinite(value) && value >= 0))
      .map(
        (value) => ({ kind: 'not a number', refuses: true, point, value, allowed: 0, likely: null }) as const,
      ),
  );
}

function futureDate({ calibratedOn, today }: EnteredCertificate): EntryDoubt[] {
  // ISO dates compare as text.
  if (calibratedOn <= today) return [];
  return [
    {
      kind: 'dated in the future',
      refuses: true,
      point: null,
      value: calibratedOn,
      allowed: today,
      likely: null,
    },
  ];
}

function fewPressures(points: readonly TorquePoint[]): EntryDoubt[] {
  const distinct = new Set(points.map(({ pressure }) => pressure)).size;
  if (distinct >= LEAST_PRESSURES) return [];
  return [
    {
      kind: 'too few pressures',
      refuses: true,
      point: null,
      value: distinct,
      allowed: LEAST_PRESSURES,
      likely: null,
    },
  ];
}

function fallingLine(points: readonly TorquePoint[]): EntryDoubt[] {
  const line = lineThrough(points);
  if (line === null || line.slope > 0) return [];
  return [
    { kind: 'no rising line', refuses: true, point: null, value: line.slope, allowed: null, likely: null },
  ];
}

/** Within a run of one direction, pressures rise on the way up and fall on the way down. */
function outOfOrder(points: readonly TorquePoint[]): EntryDoubt[] {
  return points.flatMap((here, point) => {
    const before = points[point - 1];
    if (before === undefined || before.direction !== here.direction) return [];
    const step = here.pressure - before.pressure;
    if (here.direction === 'up' ? step >= 0 : step <= 0) return [];
    return [
      {
        kind: 'points out of order',
        refuses: false,
        point,
        value: here.pressure,
        allowed: before.pressure,
        likely: null,
      } as const,
    ];
  });
}

function equalPressures(points: readonly TorquePoint[]): EntryDoubt[] {
  return points.flatMap((here, point) => {
    const twin = points
      .slice(0, point)
      .find(({ pressure, direction }) => pressure === here.pressure && direction === here.direction);
    if (twin === undefined || twin.torque === here.torque) return [];
    return [
      {
        kind: 'equal pressures',
        refuses: false,
        point,
        value: here.torque,
        allowed: twin.torque,
        likely: null,
      } as const,
    ];
  });
}

function anotherUnit({ points, torqueUnit, rating }: EnteredCertificate): EntryDoubt[] {
  const line = lineThrough(points);
  if (line === null || rating === null || !(rating.torque > 0) || !(rating.pressure > 0)) return [];
  // A line with its own intercept has another slope than its rating: compare at the rated pressure.
  const ratio = (line.intercept + line.slope * rating.pressure) / rating.torque;
  const entered = UNITS[torqueUnit].factor;
  const suspect = TORQUE_UNITS.find(([, factor]) => {
    const expected = entered / factor;
    return Math.abs(expected - 1) > NEAR && Math.abs(ratio / expected - 1) <= NEAR;
  });
  if (suspect === undefined) return [];
  return [
    {
      kind: 'torque in another unit',
      refuses: false,
      point: null,
      value: ratio,
      allowed: 1,
      likely: suspect[0],
    },
  ];
}

function lineThrough(points: readonly TorquePoint[]) {
  return fitLine(
    points.map(({ pressure }) => pressure),
    points.map(({ torque }) => torque),
  );
}
