import type { Unit } from '../../core/units/units.ts';

/** A quantity while it is being typed; empty text means not known. */
export interface Typed {
  readonly text: string;
  readonly unit: Unit;
}

export const blank = (unit: Unit): Typed => ({ text: '', unit });

export function typed(value: { text: string; unit: Unit } | null | undefined, unit: Unit): Typed {
  return value ? { text: value.text, unit: value.unit } : blank(unit);
}

export const orNull = (value: Typed): Typed | null =>
  value.text.trim() === '' ? null : { text: value.text, unit: value.unit };

export const needed = (value: Typed): Typed => ({ text: value.text, unit: value.unit });

export const textOrNull = (text: string): string | null => (text.trim() === '' ? null : text);
