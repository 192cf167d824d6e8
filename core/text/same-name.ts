/**
 * Tells whether two spellings are one name: case, width of characters and runs of blanks don’t count.
 *
 * @param a one spelling
 * @param b the other
 * @returns true when they are the same name
 * @example sameName('Girth  flange', 'girth flange') // true
 * @source Unicode Standard Annex 15, form NFKC
 */
export function sameName(a: string, b: string): boolean {
  return plainName(a) === plainName(b);
}

/**
 * A name without what two spellings of it may differ in.
 *
 * @param text as written
 * @returns small letters, plain width, single blanks
 * @example plainName(' Girth  Flange') // 'girth flange'
 * @source Unicode Standard Annex 15, form NFKC
 */
export function plainName(text: string): string {
  return text.normalize('NFKC').toLowerCase().trim().replace(/\s+/g, ' ');
}
