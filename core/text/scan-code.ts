/**
 * Text that a label carries as a code: the mark of its kind and the name written beside it, nothing hidden in it.
 *
 * @param mark kind of thing: T for a tool, J for a joint
 * @param name as on the label
 * @returns plain text that any scanner types
 * @example scanCode('T', 'W-03') // 'SB:T:W-03'
 * @source defined in docs/labels.md
 */
export function scanCode(mark: 'T' | 'J', name: string): string {
  return `SB:${mark}:${name.trim()}`;
}

/**
 * The name in what was scanned or typed. A name typed without the mark is a name too, and a scanner may leave blanks
 * or a line end around it. A code of another kind stays whole, so that it finds nothing.
 *
 * @param mark kind of thing looked for
 * @param text what came into the field
 * @returns name as typed; empty when nothing stands after the mark
 * @example scannedName('J', ' sb:j:HX-310\r') // 'HX-310'
 * @source defined in docs/labels.md
 */
export function scannedName(mark: 'T' | 'J', text: string): string {
  const trimmed = text.trim();
  const prefix = scanCode(mark, '');
  return trimmed.slice(0, prefix.length).toUpperCase() === prefix
    ? trimmed.slice(prefix.length).trim()
    : trimmed;
}
