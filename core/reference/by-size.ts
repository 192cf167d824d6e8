import { plainRating, plainSize } from './size-names.ts';

/** A row with its place in a sized table, size and rating as the table writes them. */
export type SizedRow<T> = readonly [table: string, size: string, rating: string, row: T];

/**
 * Index of a table by size and rating. A setting looks up a dozen rows: maps within maps find each without putting a key
 * together first.
 *
 * @param rows rows of one or several tables; of two at one place the first stands
 * @returns finds the row of a table, size and rating, however size and rating are spelled; null where there is none
 * @example rowsBySize([['ASME B16.5', '8', '300', 12]])('ASME B16.5', 'NPS 8', 'Class 300') // 12
 * @source notation of the flange standards
 */
export function rowsBySize<T>(
  rows: readonly SizedRow<T>[],
): (table: string, size: string, rating: string) => T | null {
  const tables = new Map<string, Map<string, Map<string, T>>>();
  for (const [table, size, rating, row] of rows) {
    const sizes = within(tables, table);
    const ratings = within(sizes, size);
    if (!ratings.has(rating)) ratings.set(rating, row);
  }
  return (table, size, rating) => {
    const sizes = tables.get(table);
    if (sizes === undefined) return null;
    // Most sizes and ratings are spelled as printed already.
    const asPrinted = sizes.get(size)?.get(rating);
    return asPrinted ?? sizes.get(plainSize(size))?.get(plainRating(rating)) ?? null;
  };
}

function within<T>(maps: Map<string, Map<string, T>>, key: string): Map<string, T> {
  const known = maps.get(key);
  if (known !== undefined) return known;
  const made = new Map<string, T>();
  maps.set(key, made);
  return made;
}
