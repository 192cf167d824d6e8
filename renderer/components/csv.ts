/**
 * One list as comma-separated text (RFC 4180). A text that a spreadsheet would run as a formula gets a leading
 * apostrophe; a plain number, also a negative one, stays a number.
 */
export function csv(
  headings: readonly string[],
  rows: readonly (readonly (string | number | null)[])[],
): string {
  return [headings, ...rows]
    .map((row) => row.map(cell).join(','))
    .join('\r\n')
    .concat('\r\n');
}

function cell(value: string | number | null): string {
  if (value === null) return 'not known';
  if (typeof value === 'number') return String(value);
  const inert = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(inert) ? `"${inert.replaceAll('"', '""')}"` : inert;
}
