import type { ForecastRow } from '../contract/forecast-list.ts';
import type { OpeningTraits } from './classes.ts';
import { type ForecastEvidence, jointExpectation, type ShortForecast, shortForecast } from './forecast.ts';
import type { OpeningClass, PlantOpenings } from './plant.ts';
import { type SeizedStuds, seizedStuds } from './seized.ts';

/** Short forecast of one bolt set among many. */
export interface OneOfMany {
  readonly of: OpeningClass;
  readonly evidence: ForecastEvidence;
  /** Null while the number of bolts is not known. */
  readonly forecast: ShortForecast | null;
  readonly seized: SeizedStuds | null;
}

/**
 * Forecasts for many joints of one plant: joints without openings of their own in one class and with one number of
 * bolts expect the same, which is worked out once.
 *
 * Equation: as of `shortForecast` and `seizedStuds`.
 * @param plant openings of the plant
 * @returns function from a joint's name, traits and N, whole, at least 1 or null when not known, to its short forecast
 * @example forecastMany(plantOpenings([]))('J', { service: '', band: 'not known', lubricant: null, years: null }, null).forecast // null
 * @source as of `shortForecast` and `seizedStuds`
 */
export function forecastMany(
  plant: PlantOpenings,
): (joint: string, traits: OpeningTraits, bolts: number | null) => OneOfMany {
  const forecasts = new Map<OpeningClass, Map<number, ShortForecast>>();
  const stuck = new Map<OpeningClass, Map<number, SeizedStuds | null>>();
  return (joint, traits, bolts) => {
    const { of, expected, evidence } = jointExpectation(plant, joint, traits);
    if (bolts === null) return { of, evidence, forecast: null, seized: null };
    const forecast =
      evidence.ownOpenings > 0
        ? shortForecast(expected, bolts)
        : kept(forecasts, of, bolts, () => shortForecast(expected, bolts));
    return { of, evidence, forecast, seized: kept(stuck, of, bolts, () => seizedStuds(of.seized, bolts)) };
  };
}

function kept<T>(all: Map<OpeningClass, Map<number, T>>, of: OpeningClass, bolts: number, make: () => T): T {
  const byBolts = all.get(of) ?? new Map<number, T>();
  all.set(of, byBolts);
  const known = byBolts.get(bolts);
  if (known !== undefined) return known;
  const made = make();
  byBolts.set(bolts, made);
  return made;
}

/** Above this chance a wrench is said to be likely too small. */
const LIKELY = 0.05;

/**
 * A list of forecasts in one sentence.
 *
 * @param rows short forecasts
 * @param drive number of the drive unit they are held against; null without one
 * @returns a sentence; says how many can't be told
 * @example forecastsFinding([], null) // 'No joint was looked at.'
 * @source rule of this program: a chance of more than 5 % that the wrench is too small is named
 */
export function forecastsFinding(rows: readonly ForecastRow[], drive: string | null): string {
  if (rows.length === 0) return 'No joint was looked at.';
  const thin = rows.filter(({ sufficiency }) => sufficiency === 'too few to say').length;
  const none = rows.filter(({ worst }) => worst === null).length;
  const small = rows.filter(({ tooSmall }) => tooSmall !== null && tooSmall > LIKELY).length;
  const known = rows.filter(({ tooSmall }) => tooSmall !== null).length;
  const of = rows.length === 1 ? '1 bolt set' : `${rows.length} bolt sets`;
  return [
    drive === null
      ? `${of} looked at.`
      : known === 0
        ? `Whether ${drive} is large enough can be said of none of ${of}.`
        : `${drive} is too small with a chance above 5 % for ${small} of the ${known} it can be said of, among ${of}.`,
    ...(thin === 0
      ? []
      : [`For ${thin} the plant’s own openings are too few to say; their numbers are common practice.`]),
    ...(none === 0 ? [] : [`Of ${none} nothing can be said: the number of bolts is not known.`]),
  ].join(' ');
}
