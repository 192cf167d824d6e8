import type { Standing } from './standing.ts';

/**
 * Whether this tightening is one of those that are witnessed, or measured. Which ones are follows from the count alone, so
 * that nobody chooses and anybody can check.
 *
 * Equation: due when ⌈n·p/100⌉ > ⌈(n − 1)·p/100⌉.
 * @param ordinal n, which tightening of its class this is, whole, at least 1
 * @param percent p, share of the class, %, whole, 0 to 100
 * @returns true when it is due
 * @example shareDue(11, 10) // true
 * @source rule of this program
 */
export function shareDue(ordinal: number, percent: number): boolean {
  return times(ordinal, percent) > times(ordinal - 1, percent);
}

/** Whole numbers throughout: no share is lost in rounding. */
const times = (count: number, percent: number) => Math.ceil((count * percent) / 100);

/**
 * Whether one of a joint's tightenings is among those of its class that are witnessed, or measured, and why. A tightening
 * that nobody counted is due.
 *
 * @param what "witnessed", "measured"
 * @param percent share of the class, %, whole, 0 to 100
 * @param standing tightenings of the joint's sets, and its class
 * @returns due or not, and the sentence that says so
 * @example shareOf('witnessed', 10, { tightened: [{ ordinal: 14 }], class: { name: 'B' } }).explained // 'number 14 of
 * class B, of which 10 % are witnessed: not due'
 * @source rule of this program
 */
export function shareOf(
  what: string,
  percent: number,
  { tightened, class: given }: Pick<Standing, 'tightened' | 'class'>,
): { readonly due: boolean; readonly explained: string } {
  const ofClass = `class ${given?.name ?? 'not known'}, of which ${percent} % are ${what}`;
  const ordinals = tightened.map(({ ordinal }) => ordinal);
  const counted = ordinals.filter((ordinal) => ordinal !== null);
  if (percent > 0 && (counted.length === 0 || counted.length < ordinals.length)) {
    return { due: true, explained: `not counted in ${ofClass}: due` };
  }
  const hit = counted.find((ordinal) => shareDue(ordinal, percent));
  const number = hit ?? counted.at(-1);
  const told = number === undefined ? 'none' : `number ${number}`;
  return {
    due: hit !== undefined,
    explained: `${told} of ${ofClass}: ${hit === undefined ? 'not due' : 'due'}`,
  };
}
