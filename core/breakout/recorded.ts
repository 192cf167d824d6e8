import type { OpeningTraits } from './classes.ts';
import type { PlantOpening } from './plant.ts';

/** One stud of an opening as it was recorded. */
export interface RecordedReading {
  readonly bolt: number;
  readonly outcome: 'turned' | 'would not turn' | 'cut';
  /** N·m; null where it was not read. */
  readonly torque: number | null;
}

/** The tightening an opening is measured against. */
export interface InstalledWork {
  readonly eventId: string;
  readonly happenedAt: string;
  /** N·m; null for a tensioned joint or where it is not known. */
  readonly torque: number | null;
}

/** One opening of a bolt set with the tightening before it. */
export interface RecordedOpening {
  readonly eventId: string;
  readonly jointId: string;
  readonly boltSet: number;
  readonly happenedAt: string;
  readonly readings: readonly RecordedReading[];
  /** Newest tightening before it; null where there is none. */
  readonly installed: InstalledWork | null;
  /** It was opened before since that tightening, and no tightening is recorded in between. */
  readonly openedSince: boolean;
  readonly lubricant: string | null;
  readonly batch: string | null;
  /** Tightenings of these studs the register knows, the installed one among them. */
  readonly studUses: number;
}

/** Ratios of an opening in the order of its readings, or why there are none. */
export interface OpeningRatios {
  readonly ratios: readonly (number | null)[];
  readonly why: string | null;
}

const DAY = 86_400_000;
const YEAR = 365.25 * DAY;

/**
 * Breakout ratios of an opening.
 *
 * Equation: R = T_breakout/T_installed.
 * @param opening as recorded
 * @returns one ratio per reading, null where its torque was not read; why there is none at all
 * @example ratiosOf({ eventId: '', jointId: '', boltSet: 0, happenedAt: '', readings: [], installed: null, openedSince: false, lubricant: null, batch: null, studUses: 0 }).why // 'no tightening is recorded before it'
 * @source definition of R on this program's calculations page
 */
export function ratiosOf(opening: RecordedOpening): OpeningRatios {
  const why = whyNone(opening);
  const installed = opening.installed?.torque ?? 0;
  return {
    ratios: opening.readings.map(({ torque }) =>
      why !== null || torque === null || torque <= 0 ? null : torque / installed,
    ),
    why,
  };
}

function whyNone({ installed, openedSince, readings }: RecordedOpening): string | null {
  if (installed === null) return 'no tightening is recorded before it';
  if (openedSince) return 'it was opened before, and no tightening is recorded in between';
  if (installed.torque === null) return 'the torque it was tightened with is not known';
  if (installed.torque <= 0) return 'an installed torque of zero is recorded; it can’t be divided by';
  if (!readings.some(({ torque }) => torque !== null && torque > 0)) return 'no breakout torque was read';
  return null;
}

/**
 * Time from tightening to opening.
 *
 * Equation: t = (opening − tightening)/365.25 d.
 * @param from moment of the tightening
 * @param to moment of the opening
 * @returns years; null where a moment can't be read or the order is wrong
 * @example yearsBetween('2024-01-01T00:00:00Z', '2026-01-01T00:00:00Z') // 2.001
 * @source Julian year of 365.25 days
 */
export function yearsBetween(from: string, to: string): number | null {
  const years = (Date.parse(to) - Date.parse(from)) / YEAR;
  return Number.isFinite(years) && years >= 0 ? years : null;
}

/**
 * Name a bolt set's openings go by in the forecast.
 *
 * @param jointId joint
 * @param boltSet 0 for its own bolting, whole, at least 0
 * @returns name
 * @example openingKey('J', 1) // 'J 1'
 * @source rule of this program
 */
export function openingKey(jointId: string, boltSet: number): string {
  return `${jointId} ${boltSet}`;
}

/**
 * An opening as the forecast looks at it: the ratios of the studs that turned, and how many did not.
 *
 * @param opening as recorded
 * @param traits what the joint is
 * @returns opening; without ratios it still counts its studs
 * @example plantOpening({ eventId: '', jointId: 'J', boltSet: 0, happenedAt: '', readings: [{ bolt: 1, outcome: 'cut', torque: null }], installed: null, openedSince: false, lubricant: null, batch: null, studUses: 0 }, { service: '', band: 'not known', lubricant: null, years: null }).seized // 1
 * @source rule of this program: a stud that would not turn or was cut has no breakout torque
 */
export function plantOpening(opening: RecordedOpening, traits: OpeningTraits): PlantOpening {
  const { ratios } = ratiosOf(opening);
  return {
    joint: openingKey(opening.jointId, opening.boltSet),
    traits,
    ratios: ratios.flatMap((ratio, index) =>
      ratio !== null && opening.readings[index]?.outcome === 'turned' ? [ratio] : [],
    ),
    studs: opening.readings.length,
    seized: opening.readings.filter(({ outcome }) => outcome !== 'turned').length,
  };
}
