import type { TemperatureBand } from '../contract/forecast.ts';

/** What an opening is looked at together with others by. */
export interface OpeningTraits {
  readonly service: string;
  readonly band: TemperatureBand;
  readonly lubricant: string | null;
  /** From the tightening to the opening; null is not known. */
  readonly years: number | null;
}

/** Ends of the temperature bands, °C. */
const WARM = 120;
const HOT = 300;

/**
 * Band of a service temperature.
 *
 * @param temperature °C, any; null when not known
 * @returns band; a temperature on its end belongs to the lower one
 * @example temperatureBandOf(120) // 'to 120 °C'
 * @source bands in which breakout differs by common practice; this program's choice of ends
 */
export function temperatureBandOf(temperature: number | null): TemperatureBand {
  if (temperature === null || !Number.isFinite(temperature)) return 'not known';
  if (temperature <= WARM) return 'to 120 °C';
  return temperature <= HOT ? '120 to 300 °C' : 'above 300 °C';
}

/** A way of putting openings into classes, narrow ones first. */
export interface ClassRule {
  readonly name: string;
  /** Key of the class; equal keys belong together. */
  readonly key: (traits: OpeningTraits) => string;
  /** Words of the class. */
  readonly words: (traits: OpeningTraits) => string;
}

/** Up to about one turnaround, or longer. */
const LONG_YEARS = 2;

const time = ({ years }: OpeningTraits) =>
  years === null
    ? 'time not known'
    : years <= LONG_YEARS
      ? 'up to 2 years in service'
      : 'over 2 years in service';
const lubricantOf = ({ lubricant }: OpeningTraits) => lubricant ?? 'lubricant not known';
const serviceOf = ({ service }: OpeningTraits) => (service === '' ? 'service not named' : service);
const bandOf = ({ band }: OpeningTraits) => (band === 'not known' ? 'temperature not known' : band);

const rule = (name: string, ...parts: ((traits: OpeningTraits) => string)[]): ClassRule => ({
  name,
  key: (traits) => parts.map((part) => part(traits).toLowerCase()).join('|'),
  words: (traits) =>
    parts.length === 0 ? 'all openings of the plant' : parts.map((part) => part(traits)).join(', '),
});

/** From the narrowest to the whole plant: a joint belongs to the first with enough joints behind it. */
export const CLASS_RULES: readonly ClassRule[] = [
  rule('service, temperature, lubricant and time', serviceOf, bandOf, lubricantOf, time),
  rule('service, temperature and lubricant', serviceOf, bandOf, lubricantOf),
  rule('service and temperature', serviceOf, bandOf),
  rule('temperature and lubricant', bandOf, lubricantOf),
  rule('temperature', bandOf),
  rule('the plant'),
];

/** Opened joints that a class needs to stand for itself. */
export const CLASS_JOINTS = 5;
