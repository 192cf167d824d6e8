/** Two spellings of one name: case, width of characters and runs of blanks don't count. */
export function sameName(a: string, b: string): boolean {
  return plainName(a) === plainName(b);
}

function plainName(text: string): string {
  return text.normalize('NFKC').toLowerCase().trim().replace(/\s+/g, ' ');
}
