import type * as z from 'zod';
import type { RowReader } from './row.ts';

type Path = readonly PropertyKey[];

/** Dotted path in the contract's shape → heading of the column it came from. */
export type HeadingOfPath = Readonly<Record<string, string>>;

/** Where in the file a value came from. */
export interface Cell {
  readonly row: RowReader;
  readonly heading: string;
}

/**
 * Runs the contract's schema, the same that forms go through, over what rows were assembled to, and reports each issue
 * at the cell it came from. Cells already reported are not reported twice.
 *
 * @returns the parsed record, or null when a cell has a fault
 */
export function validated<T>(
  schema: z.ZodType<T>,
  candidate: unknown,
  locate: (path: Path) => Cell,
  needed: string,
): T | null {
  const parsed = schema.safeParse(candidate);
  if (parsed.success) return parsed.data;
  for (const issue of parsed.error.issues) {
    const { row, heading } = locate(issue.path);
    if (row.faults.some(({ column }) => column === heading)) continue;
    row.fault(heading, row.raw(heading) === '' ? needed : issue.message);
  }
  return null;
}

/** Heading of the longest known start of a path; an issue inside a quantity belongs to the quantity's column. */
export function headingAt(path: Path, headings: HeadingOfPath): string {
  for (let length = path.length; length > 0; length -= 1) {
    const heading = headings[path.slice(0, length).join('.')];
    if (heading !== undefined) return heading;
  }
  return path.join('.');
}
