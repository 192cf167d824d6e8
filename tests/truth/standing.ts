import type { TruthRow } from './row.ts';
import { sourceOf } from './sources.ts';

export const COUNTS = 'yes';

/** Why a row by itself counts or does not count as a check against something outside the project. */
function ownStanding(row: TruthRow): string {
  const { grade, shippedAs = [] } = sourceOf(row.source);
  if (row.kind === 'from memory') return 'from memory';
  if (row.kind === 'computed') return 'computed, not published';
  if (row.kind === 'published table cell') {
    const shipped = row.shippedFrom?.().split('+') ?? [];
    if (shippedAs.some((key) => shipped.includes(key))) return 'the shipped cell comes from here';
  }
  return grade === 'C' ? 'author or printing not known' : COUNTS;
}

/**
 * What every row counts for. Table cells count up to the number of worked examples and no further, so that at most half of
 * what counts are cells; the cells of sources read first-hand come first.
 */
export function standings(rows: readonly TruthRow[]): ReadonlyMap<TruthRow, string> {
  const standing = new Map(rows.map((row) => [row, ownStanding(row)]));
  const counting = rows.filter((row) => standing.get(row) === COUNTS);
  const cells = counting.filter(({ kind }) => kind === 'published table cell');
  const examples = counting.length - cells.length;
  const inOrder = [...cells].sort((a, b) => sourceOf(a.source).grade.localeCompare(sourceOf(b.source).grade));
  for (const row of inOrder.slice(examples)) standing.set(row, 'cells would be more than half');
  return standing;
}

/** |computed − expected| in halves of the last printed digit; texts are 0 or infinitely far apart. */
export function deviation(row: TruthRow, value: number | string): number {
  if (typeof row.expected === 'string' || typeof value === 'string') {
    return row.expected === value ? 0 : Number.POSITIVE_INFINITY;
  }
  return Math.abs(value - row.expected) / (row.step / 2);
}
