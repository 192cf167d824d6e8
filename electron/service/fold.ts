/** Two spellings with the same key are the same name: case, width and runs of blanks don't count. */
export function nameKey(text: string): string {
  return text.normalize('NFKC').toLowerCase().trim().replace(/\s+/g, ' ');
}

const DIGITS = 10;

/** Orders "J-9" before "J-10": runs of digits are compared as numbers. */
export function sortKey(text: string): string {
  return nameKey(text).replace(/\d+/g, (digits) => digits.padStart(DIGITS, '0'));
}

/** Text that searches look in: without case and accents. */
export function searchText(...parts: readonly (string | null)[]): string {
  return parts
    .filter((part) => part !== null && part !== '')
    .join(' ')
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase();
}

/** LIKE patterns, one per word of what was typed; the typed text has no wildcards. Escape character: backslash. */
export function likePatterns(typed: string): string[] {
  return searchText(typed)
    .split(/\s+/)
    .filter((word) => word !== '')
    .map((word) => `%${word.replace(/[\\%_]/g, '\\$&')}%`);
}
