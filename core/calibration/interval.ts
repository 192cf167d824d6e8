import { compute, type Outcome, positive, type RelationInput, whole, within } from '../findings/outcome.ts';
import type { Decision } from './decision.ts';

/** What the staircase does at each step; a site's own values go here. */
export interface StaircaseRule {
  /** A result counts as well inside up to this part of the limit, above 0, at most 1. */
  readonly share: number;
  /** Factor of an extension, above 1, and of a reduction, above 0 and below 1. */
  readonly extend: number;
  readonly shorten: number;
  /** Results well inside, one after the other, that an extension needs; whole, at least 1. */
  readonly run: number;
}

/** 80 % is the guide's own example; factors and run are a choice of this program for a site to overwrite. */
export const COMMON_STAIRCASE: StaircaseRule = { share: 0.8, extend: 1.25, shorten: 0.5, run: 2 };

/** An as-found result since the present interval was set. */
export interface IntervalResult {
  readonly verdict: Decision['verdict'];
  /** Size of the error over the limit, at least 0. */
  readonly share: number;
}

/** Shortest and longest interval the site allows, in the unit of the present one. */
export interface IntervalBounds {
  readonly least: number;
  readonly most: number;
}

export type IntervalReason =
  | 'no results'
  | 'outside the limit'
  | 'limit not shown to be kept'
  | 'near the limit'
  | 'run too short'
  | 'well inside'
  | 'less than one more';

export interface SuggestedInterval {
  /** Whole, in the unit of the present interval: months, or uses. */
  readonly suggested: number;
  readonly present: number;
  readonly change: 'extend' | 'shorten' | 'keep';
  readonly reason: IntervalReason;
  /** How many results lie well inside, between there and the limit, and outside. */
  readonly counts: { readonly wellInside: number; readonly near: number; readonly outside: number };
  /** Results well inside at the end of the list, one after the other. */
  readonly run: number;
  readonly last: IntervalResult | null;
  readonly rule: StaircaseRule;
  /** The site's bound that the suggestion was held to; null when neither was. */
  readonly bound: 'least' | 'most' | null;
}

/**
 * Next calibration interval by the staircase: longer after results well inside the limit, shorter after one outside.
 *
 * Equation: next = present × extend after `run` results in a row with |e| ≤ share·L; present × shorten after |e| outside
 * L; else present; in whole units rounded down, held between the site's least and most.
 * @param present interval in force, whole units (months or uses), at least 1; null when none is set
 * @param results as-found results since it was set, oldest first, may be empty
 * @param rule the site's staircase
 * @param bounds the site's shortest and longest interval, in the same unit
 * @returns suggestion with the numbers behind it
 * @example suggestInterval(12, [{ verdict: 'accept', share: 0.4 }, { verdict: 'accept', share: 0.5 }], COMMON_STAIRCASE, { least: 3, most: 24 }).value?.suggested // 15
 * @source ILAC-G24:2022/OIML D 10:2022, 6.2 method 1, automatic adjustment or staircase (from memory)
 */
export function suggestInterval(
  present: number | null,
  results: readonly IntervalResult[],
  rule: StaircaseRule,
  bounds: IntervalBounds,
): Outcome<SuggestedInterval> {
  return compute(
    {
      present: whole('t', 'interval in force', present, [1, 1_000_000], 'set one for this tool or its class'),
      least: whole('least', 'shortest interval', bounds.least, [1, bounds.most], 'at most the longest'),
      most: whole('most', 'longest interval', bounds.most, [1, 1_000_000], 'set it in the site’s rules'),
    },
    (v) => suggestion(v.present, results, rule, { least: v.least, most: v.most }),
    [...ruleInputs(rule), ...results.map(shareInput)],
  );
}

function suggestion(
  present: number,
  results: readonly IntervalResult[],
  rule: StaircaseRule,
  { least, most }: IntervalBounds,
): SuggestedInterval {
  const places = results.map((result) => placeOf(result, rule.share));
  const count = (place: Place) => places.filter((one) => one === place).length;
  const last = results.at(-1) ?? null;
  const run = places.length - 1 - places.findLastIndex((place) => place !== 'well inside');
  const step = stepOf(present, last, run, rule);
  const held = Math.min(most, Math.max(least, step.next));
  return {
    suggested: held,
    present,
    change: held > present ? 'extend' : held < present ? 'shorten' : 'keep',
    reason: step.reason,
    counts: { wellInside: count('well inside'), near: count('near'), outside: count('outside') },
    run,
    last,
    rule,
    bound: held === step.next ? null : held === most ? 'most' : 'least',
  };
}

type Place = 'well inside' | 'near' | 'outside';

function placeOf({ verdict, share }: IntervalResult, wellInside: number): Place {
  if (verdict === 'reject' || share > 1) return 'outside';
  return verdict === 'accept' && share <= wellInside ? 'well inside' : 'near';
}

function stepOf(
  present: number,
  last: IntervalResult | null,
  run: number,
  rule: StaircaseRule,
): { next: number; reason: IntervalReason } {
  if (last === null) return { next: present, reason: 'no results' };
  const place = placeOf(last, rule.share);
  if (place === 'outside') return { next: Math.floor(present * rule.shorten), reason: 'outside the limit' };
  if (place === 'near') {
    return {
      next: present,
      reason: last.verdict === 'accept' ? 'near the limit' : 'limit not shown to be kept',
    };
  }
  if (run < rule.run) return { next: present, reason: 'run too short' };
  const next = Math.floor(present * rule.extend);
  return { next, reason: next > present ? 'well inside' : 'less than one more' };
}

function ruleInputs({ share, extend, shorten, run }: StaircaseRule): RelationInput[] {
  return [
    positive(
      'share',
      'part of the limit that counts as well inside',
      share > 1 ? Number.NaN : share,
      'at most 1',
    ),
    within('extend', 'factor of an extension', extend, [1, 10], 'choose 1 to 10'),
    within('shorten', 'factor of a reduction', shorten, [0.01, 1], 'choose 0.01 to 1'),
    whole('run', 'results an extension needs', run, [1, 100], 'choose at least 1'),
  ];
}

function shareInput({ share }: IntervalResult, index: number): RelationInput {
  return within(
    '|e|/L',
    `error over limit of result ${index + 1}`,
    share,
    [0, 1e6],
    'take it from the certificate',
  );
}
