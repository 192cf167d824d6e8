/**
 * How far a table row can be trusted. Cells that sources contradict without a decision, or that no source prints, are
 * null in the tables and never used as values.
 */
export type RowStatus =
  | 'AGREE'
  | 'AGREE_D2'
  | 'AGREE_RULE'
  | 'DISAGREE'
  | 'RESOLVED_BY_RULE'
  | 'STANDIN'
  | 'FORMULA_ONLY'
  | 'SINGLE'
  | 'UNRESOLVED'
  | 'GAP';

const TEXTS: Record<RowStatus, string | null> = {
  AGREE: null,
  AGREE_D2: null,
  AGREE_RULE: null,
  STANDIN: null,
  FORMULA_ONLY: 'computed from the standard’s formula, no printed value found',
  DISAGREE: 'sources disagree; the value most of them print is used',
  RESOLVED_BY_RULE: 'sources disagree; decided by the rule hole = stud + 1/8 in',
  SINGLE: 'one source only',
  UNRESOLVED: 'sources disagree; the disputed value is left open',
  GAP: 'no source found; the value is left open',
};

/**
 * What a person should know about a row.
 *
 * @param status trust of the row
 * @returns words, or null when two or more sources agree on it
 * @example statusText('SINGLE') // 'one source only'
 * @source rule of this program
 */
export function statusText(status: RowStatus): string | null {
  return TEXTS[status];
}

/**
 * Whether a row has to be confirmed by a person before its value is relied on.
 *
 * @param status trust of the row
 * @returns true for one source only and for cells left open
 * @example needsConfirmation('SINGLE') // true
 * @source rule of this program
 */
export function needsConfirmation(status: RowStatus): boolean {
  return status === 'SINGLE' || status === 'UNRESOLVED' || status === 'GAP';
}

/**
 * Whether sources contradict each other on the row although a value could be chosen.
 *
 * @param status trust of the row
 * @returns true where one source or a rule decided
 * @example isDisputed('DISAGREE') // true
 * @source rule of this program
 */
export function isDisputed(status: RowStatus): boolean {
  return status === 'DISAGREE' || status === 'RESOLVED_BY_RULE';
}

/** From the most trusted to the least. */
const BY_TRUST: readonly RowStatus[] = [
  'AGREE',
  'AGREE_D2',
  'AGREE_RULE',
  'STANDIN',
  'FORMULA_ONLY',
  'RESOLVED_BY_RULE',
  'DISAGREE',
  'SINGLE',
  'UNRESOLVED',
  'GAP',
];

/**
 * Trust of a value that rests on several rows.
 *
 * @param first trust of one row
 * @param others trust of the others
 * @returns that of the least trusted row
 * @example leastTrusted('AGREE', 'SINGLE', 'DISAGREE') // 'SINGLE'
 * @source rule of this program
 */
export function leastTrusted(first: RowStatus, ...others: readonly RowStatus[]): RowStatus {
  return others.reduce(
    (least, status) => (BY_TRUST.indexOf(status) > BY_TRUST.indexOf(least) ? status : least),
    first,
  );
}
