import type { ToolData } from '../../../core/contract/tool.ts';
import { nameKey } from '../fold.ts';
import type { RegisterLookup } from './lookup.ts';
import type { RowReader } from './row.ts';

/**
 * Reports every row whose key another row has too, naming the other line. What the register takes for one name counts
 * as the same here: on a plant the two would be mistaken for each other.
 */
export function reportDuplicates(rows: readonly RowReader[], heading: string): void {
  const linesOf = new Map<string, number[]>();
  const key = (row: RowReader) => nameKey(row.raw(heading));
  for (const row of rows) {
    const lines = linesOf.get(key(row));
    if (lines) lines.push(row.line);
    else linesOf.set(key(row), [row.line]);
  }
  for (const row of rows) {
    const lines = linesOf.get(key(row)) ?? [];
    if (key(row) === '' || lines.length < 2) continue;
    // Naming a few of the others is enough, also when a whole column holds one value.
    const others = lines.slice(0, 6).filter((line) => line !== row.line);
    row.fault(heading, `each ${heading} once; also in line ${others.slice(0, 5).join(', ')}`);
  }
}

/** Finds the other tool of a class that has a serial number: on the register, or earlier in the file. */
export function serialNumbers(lookup: RegisterLookup) {
  const earlier = new Map<string, string>();
  return {
    twinOf(row: RowReader, { number, serial, properties }: ToolData, ownId: string | null): string | null {
      if (serial === '') return null;
      const key = `${properties.class} ${nameKey(serial)}`;
      const onRegister = lookup.toolWithSerial(properties.class, serial);
      if (onRegister !== null && onRegister.id !== ownId) return onRegister.data.number;
      const before = earlier.get(key);
      if (before !== undefined) return before;
      earlier.set(key, `${number} in line ${row.line}`);
      return null;
    },
  };
}
