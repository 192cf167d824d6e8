import type { IntervalReason, SuggestedInterval } from '../calibration/interval.ts';
import { showNumber } from './number.ts';

/** What an interval is counted in. */
export type IntervalUnit = 'months' | 'uses';

const SINGULAR: Readonly<Record<IntervalUnit, string>> = { months: 'month', uses: 'use' };

/**
 * Says which interval is suggested and why, in two sentences.
 *
 * @param suggestion suggestion with the numbers behind it
 * @param unit what the interval is counted in
 * @returns text for the tool's page
 * @example intervalWords({ suggested: 15, present: 12, change: 'extend', reason: 'well inside', counts: { wellInside: 2,
 * near: 0, outside: 0 }, run: 2, last: { verdict: 'accept', share: 0.5 }, rule: { share: 0.8, extend: 1.25, shorten:
 * 0.5, run: 2 }, bound: null }, 'months') // 'Extend from 12 months to 15 months. The last 2 as-found results each used at most 80 % of the limit.'
 * @source ILAC-G24:2022/OIML D 10:2022, 6.2 method 1 (from memory); wording of this program
 */
export function intervalWords(suggestion: SuggestedInterval, unit: IntervalUnit): string {
  return [changeWords(suggestion, unit), REASONS[suggestion.reason](suggestion), boundWords(suggestion, unit)]
    .filter((text) => text !== '')
    .join(' ');
}

function changeWords({ change, present, suggested }: SuggestedInterval, unit: IntervalUnit): string {
  if (change === 'keep') return `Keep ${count(present, unit)}.`;
  const verb = change === 'extend' ? 'Extend' : 'Shorten';
  return `${verb} from ${count(present, unit)} to ${count(suggested, unit)}.`;
}

const REASONS: Readonly<Record<IntervalReason, (suggestion: SuggestedInterval) => string>> = {
  'no results': () => 'No as-found result since this interval was set.',
  'outside the limit': ({ last }) => `The last as-found error was ${percent(last?.share ?? 0)} of the limit.`,
  'limit not shown to be kept': () => 'The last as-found error and its uncertainty together reach the limit.',
  'near the limit': ({ last, rule }) =>
    `The last as-found error was ${percent(last?.share ?? 0)} of the limit; an extension needs at most ${percent(rule.share)}.`,
  'run too short': ({ run, rule }) =>
    `${run} of the ${rule.run} as-found results in a row that an extension needs used at most ${percent(rule.share)} of the limit.`,
  'well inside': ({ run, rule }) =>
    run === 1
      ? `The last as-found result used at most ${percent(rule.share)} of the limit.`
      : `The last ${run} as-found results each used at most ${percent(rule.share)} of the limit.`,
  'less than one more': ({ rule }) =>
    `An extension by the factor ${showNumber(rule.extend)} comes to less than one whole unit more.`,
};

function boundWords({ bound, suggested }: SuggestedInterval, unit: IntervalUnit): string {
  if (bound === null) return '';
  return bound === 'most'
    ? `The site allows at most ${count(suggested, unit)}.`
    : `The site allows no less than ${count(suggested, unit)}.`;
}

function count(value: number, unit: IntervalUnit): string {
  return `${showNumber(value)} ${value === 1 ? SINGULAR[unit] : unit}`;
}

function percent(share: number): string {
  return `${showNumber(100 * share, 3)} %`;
}
