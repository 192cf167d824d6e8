/** Marks a code as this register's and as a tool's, so that a stray code of another kind finds nothing. */
const PREFIX = 'SB:T:';

/**
 * Text that a tool's label carries as a code: the prefix and the site's own number, nothing hidden in it.
 *
 * @param number the site's number of the tool, as on its label
 * @returns plain text that any scanner types
 * @example labelCode('W-03') // 'SB:T:W-03'
 * @source defined in docs/labels.md
 */
export function labelCode(number: string): string {
  return `${PREFIX}${number.trim()}`;
}

/**
 * The site's number in what was scanned or typed. A number typed without the prefix is a number too, and a scanner
 * may leave blanks or a line end around it.
 *
 * @param text what came into the field
 * @returns number of the tool as typed; empty when nothing stands after the prefix
 * @example numberOnLabel(' sb:t:W-03\r') // 'W-03'
 * @source defined in docs/labels.md
 */
export function numberOnLabel(text: string): string {
  const trimmed = text.trim();
  const marked = trimmed.slice(0, PREFIX.length).toUpperCase() === PREFIX;
  return marked ? trimmed.slice(PREFIX.length).trim() : trimmed;
}
