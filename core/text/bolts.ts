/**
 * Names bolts that are turned together.
 *
 * @param step bolt numbers, one per tool, null where a tool waits
 * @returns words for one or several bolts
 * @example boltWords([3, null, 9]) // 'bolts 3 and 9'
 * @source rule of this program
 */
export function boltWords(step: readonly (number | null)[]): string {
  const bolts = step.filter((bolt) => bolt !== null);
  if (bolts.length < 2) return `bolt ${bolts[0] ?? ''}`;
  return `bolts ${bolts.slice(0, -1).join(', ')} and ${bolts.at(-1)}`;
}
