import { Temporal } from 'temporal-polyfill';
import { noSolution, type Outcome } from '../findings/outcome.ts';
import { type AsFoundResult, type Forecast, forecast } from './forecast.ts';

/** As-found result of a certificate with the day it was calibrated on, YYYY-MM-DD. */
export interface DatedResult extends Omit<AsFoundResult, 'at'> {
  readonly on: string;
}

export interface DatedForecast {
  readonly forecast: Forecast;
  /** Day the limit is reached and the 95 % interval of days; null where nothing can be said, or only of days past the horizon. */
  readonly on: string | null;
  readonly between: readonly [string, string] | null;
  /** Last day that is told: past it a straight line says nothing. */
  readonly horizon: string;
}

const YEAR = 365.2425;
/** Years past the last result; no tool serves longer. */
const HORIZON = 20;

/**
 * As `forecast`, over calendar time: the day the limit is reached.
 *
 * Equation: t = days since the first result/365.2425; the day is t* in whole days, rounded down.
 * @param results as-found results in the order of their dates, error as a fraction
 * @param limit L, largest permissible error, 1, above 0
 * @param guard w, guard band, 1, at least 0 and below L
 * @returns the forecast with its days; a date that is none is a gap
 * @example forecastByDate([['2023-01-10', -0.0001], ['2024-01-10', -0.0099], ['2025-01-10', -0.0201], ['2026-01-10', -0.0299]].map(([on, error]) => ({ on, error, uncertainty: null, left: null })), 0.04, 0).value?.on // '2027-01-14'
 * @source as `forecast`; Gregorian calendar, mean year of 365.2425 days
 */
export function forecastByDate(
  results: readonly DatedResult[],
  limit: number | null,
  guard: number | null,
): Outcome<DatedForecast> {
  const days = results.map(({ on }) => dayOf(on));
  const first = days[0] ?? null;
  if (days.includes(null)) {
    return noSolution('t', 'date of a result', 'enter every date as YYYY-MM-DD');
  }
  const timed = results.map(({ error, uncertainty, left }, index) => ({
    at: first === null ? 0 : first.until(days[index] ?? first).days / YEAR,
    error,
    uncertainty,
    left,
  }));
  const found = forecast(timed, limit, guard);
  if (found.value === null) return found;
  const last = days.at(-1) ?? null;
  if (first === null || last === null) {
    return { value: { forecast: found.value, on: null, between: null, horizon: '' }, missing: [] };
  }
  const horizon = last.add({ years: HORIZON });
  const dayAt = (at: number, rounding: (value: number) => number) => {
    // A last result is a whole number of days after the first; its share of a year must come back as that day.
    const after = Math.min(rounding(at * YEAR + (rounding === Math.floor ? 1e-6 : -1e-6)), 1e5);
    const day = first.add({ days: Math.max(0, after) });
    return Temporal.PlainDate.compare(day, horizon) > 0 ? null : day.toString();
  };
  const { at } = found.value;
  const on = at === null ? null : dayAt(at, Math.floor);
  return {
    value: {
      forecast: found.value,
      on,
      between: found.value.state === 'forecast' ? span(found.value.interval, dayAt, horizon) : null,
      horizon: horizon.toString(),
    },
    missing: [],
  };
}

function span(
  [early, late]: readonly [number, number],
  dayAt: (at: number, rounding: (value: number) => number) => string | null,
  horizon: Temporal.PlainDate,
): readonly [string, string] | null {
  const from = dayAt(early, Math.floor);
  return from === null ? null : [from, dayAt(late, Math.ceil) ?? horizon.toString()];
}

function dayOf(text: string): Temporal.PlainDate | null {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return null;
  try {
    return Temporal.PlainDate.from(text, { overflow: 'reject' });
  } catch (error) {
    // A day no calendar has is the caller's to correct; anything else is not expected here.
    if (error instanceof RangeError) return null;
    throw error;
  }
}
