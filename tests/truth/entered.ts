import { type Entered, enter } from '../../core/units/entered.ts';
import type { Unit } from '../../core/units/units.ts';

/** A value as a person would type it, for fixtures. */
export function typed(text: string, unit: Unit): Entered {
  const value = enter(text, unit);
  if (value === null) throw new Error(`fixture: "${text}" is not a number`);
  return value;
}
