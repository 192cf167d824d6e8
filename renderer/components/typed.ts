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

type Units<K extends string> = Readonly<Record<K, Unit>>;
type Stored<K extends string> = Readonly<Partial<Record<K, { text: string; unit: Unit } | null | undefined>>>;

const each = <K extends string, T>(units: Units<K>, of: (name: K) => T): Record<K, T> =>
  Object.fromEntries((Object.keys(units) as K[]).map((name) => [name, of(name)])) as Record<K, T>;

/** Empty fields for a group of quantities, each in the unit it is usually given in. */
export const blanks = <K extends string>(units: Units<K>): Record<K, Typed> =>
  each(units, (name) => blank(units[name]));

/** Fields of a group of stored quantities. */
export const typedEach = <K extends string>(
  values: Stored<NoInfer<K>> | null | undefined,
  units: Units<K>,
): Record<K, Typed> => each(units, (name) => typed(values?.[name], units[name]));

export const orNullEach = <K extends string>(
  form: Readonly<Record<NoInfer<K>, Typed>>,
  units: Units<K>,
): Record<K, Typed | null> => each(units, (name) => orNull(form[name]));
