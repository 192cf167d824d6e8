/**
 * SHA-256 over parts one after the other, text as UTF-8. The caller provides it, because core imports no platform
 * module.
 */
export type Sha256 = (...parts: readonly (Uint8Array | string)[]) => Uint8Array;

export function toHex(bytes: Uint8Array): string {
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

export function fromHex(hex: string): Uint8Array {
  if (!/^([0-9a-f]{2})*$/.test(hex)) throw new Error('not lower-case hexadecimal');
  return Uint8Array.from(hex.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));
}
