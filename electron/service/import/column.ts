import type { ImportColumn, ImportOptions } from '../../../core/contract/import.ts';
import type { Unit } from '../../../core/units/units.ts';
import { nameKey } from '../fold.ts';

/** Quantities whose unit is asked once for the file. */
export type FileQuantity = keyof ImportOptions['units'];

/** A heading a file may have. A unit is the file's (by quantity), fixed by the heading itself, or none. */
export interface Column extends ImportColumn {
  readonly quantity?: FileQuantity;
  readonly fixedUnit?: Unit;
}

export function unitOfColumn(column: Column, options: ImportOptions): Unit | null {
  if (column.fixedUnit) return column.fixedUnit;
  return column.quantity ? (options.units[column.quantity] as Unit) : null;
}

export interface MatchedColumns {
  /** Heading as the program writes it → index of the cell. */
  readonly positions: ReadonlyMap<string, number>;
  readonly columns: readonly Column[];
  readonly unknown: readonly string[];
  readonly missing: readonly string[];
}

/** Finds the known columns among the file's headings; `alternatives` are headings of which one is enough. */
export function matchColumns(
  headings: readonly string[],
  columns: readonly Column[],
  alternatives: readonly (readonly string[])[] = [],
): MatchedColumns {
  const known = new Map(columns.map(({ heading }) => [nameKey(heading), heading]));
  const positions = new Map<string, number>();
  const unknown: string[] = [];
  headings.forEach((heading, index) => {
    const name = known.get(nameKey(heading));
    if (name === undefined) unknown.push(heading);
    else positions.set(name, index);
  });
  const missing = columns.filter(({ heading, needed }) => needed && !positions.has(heading));
  const without = alternatives.filter((group) => !group.some((heading) => positions.has(heading)));
  return {
    positions,
    columns,
    unknown,
    missing: [...missing.map(({ heading }) => heading), ...without.map((group) => group.join(' or '))],
  };
}
