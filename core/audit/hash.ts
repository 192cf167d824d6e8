/**
 * SHA-256 over parts one after the other, text as UTF-8. The caller provides it, because core imports no platform
 * module.
 */
export type Sha256 = (...parts: readonly (Uint8Array | string)[]) => Uint8Array;

/**
 * Writes bytes as hexadecimal digits.
 *
 * @param bytes any number of bytes
 * @returns two lower-case digits for each byte
 * @example toHex(Uint8Array.of(0, 255)) // '00ff'
 * @source positional notation, base 16
 */
export function toHex(bytes: Uint8Array): string {
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/**
 * Reads hexadecimal digits as bytes.
 *
 * @param hex an even number of digits, either case
 * @returns the bytes; a pair that is no digit reads as zero
 * @example [...fromHex('00ff')] // [0, 255]
 * @source positional notation, base 16
 */
export function fromHex(hex: string): Uint8Array {
  if (!/^([0-9a-f]{2})*$/.test(hex)) throw new Error('not lower-case hexadecimal');
  return Uint8Array.from(hex.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));
}
