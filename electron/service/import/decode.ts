import { isUtf8 } from 'node:buffer';
import type { ImportOptions } from '../../../core/contract/import.ts';

export type Decoded = { ok: true; text: string } | { ok: false; fault: string };

type Encoding = ImportOptions['encoding'];

const CHOICES = 'the choices are utf-8, windows-1252 and utf-16le';
const SAVE_AS_CSV = 'open it in the program it was made with and save it as CSV text';

/** First bytes by which a file that is no text gives itself away. */
const OTHER_FILES: readonly { readonly start: readonly number[]; readonly what: string }[] = [
  { start: [0x50, 0x4b, 0x03, 0x04], what: 'a spreadsheet file or another packed file' },
  { start: [0xd0, 0xcf, 0x11, 0xe0], what: 'a spreadsheet file of the older binary kind' },
  { start: [0x25, 0x50, 0x44, 0x46], what: 'a PDF file' },
];

const startsWith = (bytes: Uint8Array, start: readonly number[]) =>
  start.every((value, index) => bytes[index] === value);

/** Turns the file's bytes into text in the encoding the person named; nothing is guessed or replaced. */
export function decodeFile(bytes: Uint8Array, encoding: Encoding): Decoded {
  if (bytes.length === 0) return fault('The file is empty: it needs a heading line and at least one row');
  const other = OTHER_FILES.find(({ start }) => startsWith(bytes, start));
  if (other) return fault(`This is ${other.what}, not CSV text: ${SAVE_AS_CSV}`);
  if (startsWith(bytes, [0xfe, 0xff])) {
    return fault(
      `The file is UTF-16 with the high byte first, which is not read: save it as UTF-8; ${CHOICES}`,
    );
  }
  if (encoding === 'utf-16le') return decodeUtf16(bytes);
  if (startsWith(bytes, [0xff, 0xfe])) {
    return fault(`The file begins with the mark of UTF-16, but ${encoding} was chosen; ${CHOICES}`);
  }
  const zero = bytes.indexOf(0);
  if (zero >= 0) {
    return fault(
      `Byte ${zero} is zero, which no text in ${encoding} holds: this is another encoding or no text; ${CHOICES}`,
    );
  }
  return encoding === 'utf-8' ? decodeUtf8(bytes) : decodeWindows1252(bytes);
}

function fault(text: string): Decoded {
  return { ok: false, fault: text };
}

function decodeUtf8(bytes: Uint8Array): Decoded {
  if (isUtf8(bytes)) return { ok: true, text: new TextDecoder('utf-8').decode(bytes) };
  const offset = firstInvalidUtf8(bytes);
  const line = countLines(bytes.subarray(0, offset));
  const value = (bytes[offset] ?? 0).toString(16).padStart(2, '0');
  return fault(
    `Line ${line}, byte ${offset} (0x${value}) is not valid UTF-8: choose the encoding it was saved in; ${CHOICES}`,
  );
}

function decodeWindows1252(bytes: Uint8Array): Decoded {
  const beyondAscii = bytes.findIndex((byte) => byte > 0x7f);
  // Letters of windows-1252 that happen to form valid UTF-8 sequences throughout are not met in practice; the other
  // way round every accent would be imported as two wrong letters.
  if (beyondAscii >= 0 && isUtf8(bytes)) {
    return fault(
      `Byte ${beyondAscii} and all that follow are valid UTF-8, but windows-1252 was chosen: choose utf-8; ${CHOICES}`,
    );
  }
  const unassigned = bytes.findIndex((byte) => [0x81, 0x8d, 0x8f, 0x90, 0x9d].includes(byte));
  if (unassigned >= 0) {
    return fault(
      `Byte ${unassigned} stands for no character in windows-1252: choose the encoding it was saved in; ${CHOICES}`,
    );
  }
  return { ok: true, text: new TextDecoder('windows-1252').decode(bytes) };
}

function decodeUtf16(bytes: Uint8Array): Decoded {
  if (bytes.length % 2 === 1) {
    return fault(
      `The file has ${bytes.length} bytes; UTF-16 has an even number: cut short or another encoding; ${CHOICES}`,
    );
  }
  // Headings are plain Latin letters, which UTF-16 writes with a zero byte each.
  if (bytes.indexOf(0) < 0)
    return fault(`The file does not look like UTF-16: choose another encoding; ${CHOICES}`);
  try {
    return { ok: true, text: new TextDecoder('utf-16le', { fatal: true }).decode(bytes) };
  } catch {
    return fault(
      `The file is not valid UTF-16 (half of a pair is missing): cut short or another encoding; ${CHOICES}`,
    );
  }
}

/** Offset of the first character that is not valid (RFC 3629, section 4). */
function firstInvalidUtf8(bytes: Uint8Array): number {
  let offset = 0;
  while (offset < bytes.length) {
    const length = sequenceLength(bytes[offset] ?? 0);
    if (length > 1 && !isUtf8(bytes.subarray(offset, offset + length))) return offset;
    offset += length;
  }
  return offset;
}

/** Bytes in the character that begins so; a byte that can't begin one is left for the validity check. */
function sequenceLength(lead: number): number {
  if (lead < 0x80) return 1;
  if (lead < 0xe0) return 2;
  return lead < 0xf0 ? 3 : 4;
}

function countLines(bytes: Uint8Array): number {
  return bytes.reduce((lines, byte) => (byte === 0x0a ? lines + 1 : lines), 1);
}
