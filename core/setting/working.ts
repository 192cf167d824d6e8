import type { Thread } from '../bolting/thread.ts';
import type { OriginMark } from '../contract/joint.ts';
import type { WorkingInput } from '../contract/setting.ts';
import type { Known } from '../joint/known.ts';
import type { Unit } from '../units/units.ts';

/**
 * Builds an input of a relation that is a number.
 *
 * @param symbol symbol in the relation
 * @param name what it is
 * @param si SI value in the quantity’s unit, any finite value; null is “not known”
 * @param unit unit to show it in
 * @param origin entered, standard, calculated …
 * @param source where it is from
 * @returns input of a working
 * @example number('F', 'bolt load', 1000, 'kN', 'calculated', '').si // 1000
 * @source rule of this program
 */
export function number(
  symbol: string,
  name: string,
  si: number | null,
  unit: Unit,
  origin: OriginMark,
  source: string,
): WorkingInput {
  return { symbol, name, si, text: null, unit, origin, source };
}

/**
 * Builds an input that a resolved value stands for.
 *
 * @param symbol symbol in the relation
 * @param name what it is
 * @param value value in force with its origin, or null
 * @param si SI value in the quantity’s unit, any finite value; null is “not known”
 * @param unit unit to show it in
 * @returns input of a working with the value’s origin and source
 * @example known('N', 'number of studs', null, null, 'one').si // null
 * @source rule of this program
 */
export function known(
  symbol: string,
  name: string,
  value: Known<unknown> | null,
  si: number | null,
  unit: Unit,
): WorkingInput {
  return number(symbol, name, si, unit, value?.origin ?? 'entered', value?.source ?? 'not known');
}

const THREAD_VALUES = {
  As: { name: 'tensile area of one stud', value: 'tensileArea', unit: 'mm2' },
  Ar: { name: 'root area of one stud', value: 'rootArea', unit: 'mm2' },
  ds: { name: 'stress diameter', value: 'stressDiameter', unit: 'mm' },
} as const;

/**
 * Builds an input that follows from a thread's geometry, whoever said which thread it is.
 *
 * @param symbol As, Ar or ds
 * @param thread thread of the stud, or null while it is not known
 * @returns input of a working whose source is the thread's geometry
 * @example ofThread('As', thread).origin // 'calculated'
 * @source rule of this program
 */
export function ofThread(symbol: keyof typeof THREAD_VALUES, thread: Thread | null): WorkingInput {
  const { name, value, unit } = THREAD_VALUES[symbol];
  const source = thread === null ? 'not known' : `${thread.source}, geometry of ${thread.designation}`;
  return number(symbol, name, thread?.[value] ?? null, unit, 'calculated', source);
}

/**
 * Builds an input that is a choice in words.
 *
 * @param symbol symbol in the relation
 * @param name what it is
 * @param text the choice
 * @param origin entered, standard, calculated …
 * @param source where it is from
 * @returns input of a working
 * @example words('', 'plan', 'Staged thirds', 'entered', '').text // 'Staged thirds'
 * @source rule of this program
 */
export function words(
  symbol: string,
  name: string,
  text: string,
  origin: OriginMark,
  source: string,
): WorkingInput {
  return { symbol, name, si: null, text, unit: null, origin, source };
}

/**
 * Builds a calculated result.
 *
 * @param symbol symbol in the relation
 * @param name what it is
 * @param si SI value in the quantity’s unit, any finite value; null is “not known”
 * @param unit unit to show it in
 * @returns result of a working
 * @example result('T', 'torque', 384, 'N.m').unit // 'N.m'
 * @source rule of this program
 */
export function result(symbol: string, name: string, si: number | null, unit: Unit): WorkingInput {
  return number(symbol, name, si, unit, 'calculated', 'this working');
}
