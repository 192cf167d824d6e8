import { plainName } from '../text/same-name.ts';

/** Characters taken for one another on a tag that is dirty, far away or read over a radio. */
const READ_ALIKE: readonly string[] = ['0oq', '1il', '2z', '5s', '6g', '8b', 'uv', 'mn'];

const LETTERS = 'abcdefghijklmnopqrstuvwxyz';
const DIGITS = '0123456789';

/**
 * Parts of a tag: runs of letters, runs of figures, and what parts them.
 *
 * @param tag as written
 * @returns parts in order, without regard to capitals
 * @example tagParts('E-201A N3') // ['e', '-', '201', 'a', ' ', 'n', '3']
 * @source rule of this program
 */
export function tagParts(tag: string): string[] {
  return plainName(tag).match(/[a-z]+|\d+|[^a-z\d]+/g) ?? [];
}

/**
 * Whether two tags read as the same one when figures and letters of like shape are not told apart.
 *
 * @param a one tag
 * @param b another
 * @returns true for two spellings that differ only in such characters; false for one and the same
 * @example readAlike('P-1O1', 'P-101') // true
 * @source common practice in marking: O and 0, I and 1, S and 5, B and 8 are mistaken for each other
 */
export function readAlike(a: string, b: string): boolean {
  return plainName(a) !== plainName(b) && skeleton(a) === skeleton(b);
}

function skeleton(tag: string): string {
  return [...plainName(tag)]
    .map((sign) => READ_ALIKE.find((set) => set.includes(sign))?.[0] ?? sign)
    .join('');
}

/**
 * Slips between two tags: characters left out, added, exchanged, or swapped with the next one.
 *
 * Equation: d(i, j) = min{d(i−1, j) + 1, d(i, j−1) + 1, d(i−1, j−1) + [aᵢ ≠ bⱼ], d(i−2, j−2) + 1 where two are swapped}.
 * @param a one tag
 * @param b another
 * @returns whole number, 0 for the same tag
 * @example tagDistance('J-0412', 'J-0421') // 1
 * @source optimal string alignment distance; Damerau, Communications of the ACM 7 (1964) 171, for the four slips
 */
export function tagDistance(a: string, b: string): number {
  const [from, to] = [[...plainName(a)], [...plainName(b)]];
  let beforeLast: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, at) => at);
  from.forEach((sign, row) => {
    const next = [row + 1];
    to.forEach((other, column) => {
      const exchanged = (last[column] ?? 0) + (sign === other ? 0 : 1);
      let least = Math.min(exchanged, (last[column + 1] ?? 0) + 1, (next[column] ?? 0) + 1);
      if (row > 0 && column > 0 && sign === to[column - 1] && from[row - 1] === other) {
        least = Math.min(least, (beforeLast[column - 1] ?? 0) + 1);
      }
      next.push(least);
    });
    beforeLast = last;
    last = next;
  });
  return last[to.length] ?? 0;
}

/**
 * The part in which two tags of one pattern differ, as those of sister equipment do: one number or one letter, with
 * something after it that is the same, or a letter at the end.
 *
 * @param a one tag
 * @param b another
 * @returns the two spellings of that part; null when they are no sisters
 * @example sisterPart('E-201A N3', 'E-201B N3') // ['a', 'b']
 * @source common practice in numbering equipment that stands twice
 */
export function sisterPart(a: string, b: string): [string, string] | null {
  const [here, there] = [tagParts(a), tagParts(b)];
  if (here.length !== there.length) return null;
  const differing = here.flatMap((part, at) => (part === there[at] ? [] : [at]));
  const [at] = differing;
  if (at === undefined || differing.length > 1) return null;
  const [one = '', other = ''] = [here[at], there[at]];
  const letters = /^[a-z]$/.test(one) && /^[a-z]$/.test(other);
  const numbers = /^\d+$/.test(one) && /^\d+$/.test(other) && at < here.length - 1;
  return letters || numbers ? [one, other] : null;
}

/** Sisters bear the next numbers, or the same number in the next hundred. */
const NEAR_NUMBERS = [1, 2, 3, 4, 5, 100, 200, 300, 400, 500, 1000];

/**
 * Tags that one slip, a sister’s number or a character of like shape would make of this one: what is looked up, so
 * that a whole register need not be compared.
 *
 * @param tag as written
 * @returns plain spellings, without the tag itself
 * @example nearTags('E-201A').includes('e-201b') // true
 * @source rule of this program
 */
export function nearTags(tag: string): string[] {
  const plain = plainName(tag);
  const near = new Set([...slips([...plain]), ...sisters(tagParts(tag)), ...alike(plain)]);
  near.delete(plain);
  return [...near].filter((each) => each !== '' && each === plainName(each));
}

function slips(signs: readonly string[]): string[] {
  const put = (at: number, taken: number, ...given: string[]) =>
    signs.toSpliced(at, taken, ...given).join('');
  const alphabet = [...LETTERS, ...DIGITS, '-', ' '];
  return Array.from({ length: signs.length + 1 }, (_, at) => at).flatMap((at) => {
    const added = alphabet.map((sign) => put(at, 0, sign));
    const [sign, next] = signs.slice(at, at + 2);
    if (sign === undefined) return added;
    const swapped = next === undefined ? [] : [put(at, 2, next, sign)];
    return [...added, put(at, 1), ...alphabet.map((other) => put(at, 1, other)), ...swapped];
  });
}

function sisters(parts: readonly string[]): string[] {
  return parts.flatMap((part, at) => {
    const put = (other: string) => parts.with(at, other).join('');
    if (/^[a-z]$/.test(part)) return [...LETTERS].map(put);
    if (!/^\d+$/.test(part) || at === parts.length - 1) return [];
    const number = Number(part);
    const others = NEAR_NUMBERS.flatMap((step) => [number + step, number - step]);
    return others.filter((other) => other >= 0).map((other) => put(String(other).padStart(part.length, '0')));
  });
}

/** Every character of one shape exchanged at once, so that "P-1O0" finds "P-100" and "P-1OO". */
function alike(plain: string): string[] {
  let spellings = [''];
  for (const sign of plain) {
    const set = READ_ALIKE.find((each) => each.includes(sign)) ?? sign;
    spellings = spellings.flatMap((start) => [...set].map((other) => start + other));
    if (spellings.length > MOST_SPELLINGS) return [];
  }
  return spellings;
}

/** A long tag of nothing but such characters is left to the slips. */
const MOST_SPELLINGS = 4000;
