import type { OriginMark } from '../contract/joint.ts';
import type { WorkingInput } from '../contract/setting.ts';
import type { Known } from '../joint/known.ts';
import type { Unit } from '../units/units.ts';

/** An input of a relation that is a number; null is "not known". */
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

/** An input that a resolved value stands for. */
export function known(
  symbol: string,
  name: string,
  value: Known<unknown> | null,
  si: number | null,
  unit: Unit,
): WorkingInput {
  return number(symbol, name, si, unit, value?.origin ?? 'entered', value?.source ?? 'not known');
}

/** An input that is a choice in words. */
export function words(
  symbol: string,
  name: string,
  text: string,
  origin: OriginMark,
  source: string,
): WorkingInput {
  return { symbol, name, si: null, text, unit: null, origin, source };
}

/** A calculated result. */
export function result(symbol: string, name: string, si: number | null, unit: Unit): WorkingInput {
  return number(symbol, name, si, unit, 'calculated', 'this working');
}
