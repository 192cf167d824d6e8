import { showEntered } from '../text/number.ts';
import type { Entered } from '../units/entered.ts';

/**
 * Words that were entered.
 *
 * @param text as stored
 * @returns the same without blanks around it; null when there are none
 * @example words(' ') // null
 * @source rule of this program
 */
export function words(text: string): string | null {
  return text.trim() || null;
}

/**
 * A list that somebody looked at.
 *
 * @param items null when nobody looked
 * @returns the items; “none” for an empty list; null when nobody looked
 * @example listed([]) // 'none'
 * @source rule of this program
 */
export function listed(items: readonly (string | number)[] | null): string | null {
  if (items === null) return null;
  return items.length === 0 ? 'none' : items.join(', ');
}

/**
 * A quantity as it was typed.
 *
 * @param value null when not known
 * @returns text with its unit; null when not known
 * @example shown(null) // null
 * @source rule of this program
 */
export function shown(value: Entered | null): string | null {
  return value === null ? null : showEntered(value);
}

/**
 * Words for an answer.
 *
 * @param answer yes, no or not known; undefined when the step was not recorded
 * @param yes what yes says
 * @param no what no says
 * @returns the words; null when not known
 * @example answered('not known', 'locked', 'not locked') // null
 * @source rule of this program
 */
export function answered(
  answer: 'yes' | 'no' | 'not known' | undefined,
  yes: string,
  no: string,
): string | null {
  if (answer === undefined || answer === 'not known') return null;
  return answer === 'yes' ? yes : no;
}

/**
 * A number of things.
 *
 * @param count whole, 0 and up
 * @param noun one of them
 * @returns number and noun
 * @example countOf(2, 'leak') // '2 leaks'
 * @source rule of this program
 */
export function countOf(count: number, noun: string): string {
  return `${count} ${count === 1 ? noun : `${noun}s`}`;
}
