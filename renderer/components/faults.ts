import { createContext, useContext } from 'react';
import type { FieldFault } from '../../core/contract/errors.ts';

/** Faults of the last try, so that each field can show its own beside itself. */
export const Faults = createContext<readonly FieldFault[]>([]);

/** A fault's path without what the form's names leave out. */
export const bare = (path: string): string =>
  path.replace(/^(data\.)?((measured|space)\.)?/, '').replace(/\.(text|unit|si)$/, '');

export function useFault(name: string): FieldFault | undefined {
  return useContext(Faults).find((fault) => bare(fault.field) === name);
}

/** Faults of every row of a list: "points" → those of points.0.pressure and so on. */
export function useFaultsUnder(name: string): readonly FieldFault[] {
  return useContext(Faults).filter((fault) => bare(fault.field).startsWith(name));
}

/** What a field tells a screen reader about its fault and hint. */
export function described(id: string, fault: FieldFault | undefined, hint: string | undefined) {
  const parts = [fault && `${id}-fault`, hint && `${id}-hint`].filter(Boolean);
  return {
    'aria-invalid': fault ? (true as const) : undefined,
    'aria-describedby': parts.length > 0 ? parts.join(' ') : undefined,
  };
}
