import type { Drift } from '../calibration/drift.ts';
import type { EntryDoubt } from '../calibration/entry-check.ts';
import type { DatedForecast } from '../calibration/forecast-date.ts';
import { fromSI, UNITS, type Unit } from '../units/units.ts';
import { showNumber } from './number.ts';

/** Units the certificate was entered in, so that a doubt speaks of the numbers on the paper. */
export interface EntryUnits {
  readonly pressure: Unit;
  readonly torque: Unit;
}

/**
 * Says what looks wrong in a certificate's points, with what would be in order.
 *
 * @param doubt doubt as data
 * @param units units the points were entered in
 * @returns one sentence without its full stop
 * @example doubtWords({ kind: 'too few pressures', refuses: true, point: null, value: 2, allowed: 3, likely: null }, { pressure: 'bar', torque: 'N.m' })
 * // 'points at 3 pressures or more; these are at 2'
 * @source wording of this program
 */
export function doubtWords(doubt: EntryDoubt, units: EntryUnits): string {
  const { kind, point, value, allowed } = doubt;
  const nth = point === null ? '' : `point ${point + 1}: `;
  const pressure = (si: EntryDoubt['allowed']) => inUnit(si, units.pressure);
  const torque = (si: EntryDoubt['allowed']) => inUnit(si, units.torque);
  switch (kind) {
    case 'not a number':
      return `${nth}a number of 0 or more; this is ${value}`;
    case 'too few pressures':
      return `points at ${allowed} pressures or more; these are at ${value}`;
    case 'no rising line':
      return 'torque that rises with pressure; the line through these points falls';
    case 'dated in the future':
      return `${allowed} (today) or earlier; this is ${value}`;
    case 'points out of order':
      return `${nth}${pressure(value)} comes after ${pressure(allowed)} in the same direction`;
    case 'equal pressures':
      return `${nth}${torque(value)} at a pressure that gave ${torque(allowed)} before, in the same direction`;
    case 'torque in another unit':
      return `the torque is ${showNumber(Number(value), 3)} times what the rating says, as if it were in ${doubt.likely}`;
  }
}

function inUnit(si: number | string | null, unit: Unit): string {
  if (typeof si !== 'number') return 'not known';
  return `${showNumber(fromSI(si, unit), 4)} ${UNITS[unit].label}`;
}

const MEANINGS: Readonly<Record<Drift['meaning'], string>> = {
  drift: 'drift since the certificate before',
  step: 'what adjusting has changed',
  'not known': 'a change; whether it was adjusted in between is not known',
};

/**
 * Says how the delivered torque has changed between two certificates, and whether that is more than their uncertainty.
 *
 * @param drift comparison of two certificates
 * @returns one sentence
 * @example driftWords({ meaning: 'drift', reference: 'cancels', range: [1e7, 6e7], changes: [], largest: { pressure: 6e7, relative: -0.02, uncertainty: 0.004, significant: true } })
 * // '−2 % at 600 bar, drift since the certificate before: more than twice its uncertainty of 0.4 %.'
 * @source wording of this program; significance as in `compareCertificates`
 */
export function driftWords({ meaning, largest }: Drift): string {
  const change = `${percent(largest.relative)} at ${inUnit(largest.pressure, 'bar')}, ${MEANINGS[meaning]}`;
  if (largest.significant === null || largest.uncertainty === null) {
    const within = largest.significant === false;
    return within
      ? `${change}: within twice the uncertainty of the two lines.`
      : `${change}: whether it is more than its uncertainty is not known, as a certificate states none.`;
  }
  const stands = largest.significant ? 'more than' : 'within';
  return `${change}: ${stands} twice its uncertainty of ${percent(largest.uncertainty)}.`;
}

/**
 * Says when a tool's error reaches its limit, or why nothing can be said.
 *
 * @param dated forecast with its days
 * @returns one or two sentences
 * @example forecastWords({ forecast: { state: 'too few to say', at: null, results: 1, needed: 3 }, on: null, between: null, horizon: '' })
 * // '1 as-found result is on record; a forecast needs 3.'
 * @source wording of this program; interval as in `forecast`
 */
export function forecastWords({ forecast, on, between, horizon }: DatedForecast): string {
  switch (forecast.state) {
    case 'too few to say': {
      const { results, needed } = forecast;
      return `${results} as-found ${results === 1 ? 'result is' : 'results are'} on record; a forecast needs ${needed}.`;
    }
    case 'no significant drift':
      return `No drift that differs from zero in ${forecast.drift.results} as-found results.`;
    case 'reached':
      return 'The limit is reached already.';
    case 'forecast': {
      const rate = `${percent(forecast.drift.rate)} a year`;
      if (on === null) return `At ${rate} the limit is not reached before ${horizon}.`;
      const range = between === null ? '' : `, between ${between[0]} and ${between[1]} with 95 %`;
      return `At ${rate} the limit is reached on ${on}${range}. It holds only while the tool goes on as its certificates show.`;
    }
  }
}

function percent(fraction: number): string {
  return `${showNumber(100 * fraction, 2)} %`;
}
