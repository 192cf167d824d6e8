/** The file's bytes as base64, read by the browser; nothing is decoded here. */
export function base64Of(file: File): Promise<string> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => {
      const address = String(reader.result);
      resolve(address.slice(address.indexOf(',') + 1));
    };
    reader.onerror = () => reject(reader.error ?? new Error(`${file.name} could not be read`));
    reader.readAsDataURL(file);
  });
}

const quoted = (cell: string): string => (/[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);

/**
 * A comma-separated file. A cell that a spreadsheet would run as a formula is kept as text by a leading apostrophe.
 */
export function csv(rows: readonly (readonly string[])[]): string {
  const cell = (text: string) => quoted(/^[=+@\t]|^-[^\d.]/.test(text) ? `'${text}` : text);
  return `${rows.map((row) => row.map(cell).join(',')).join('\r\n')}\r\n`;
}

/** Hands a text to the person as a file. */
export function saveText(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob(['\ufeff', text], { type: 'text/csv;charset=utf-8' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
}
