import type { AttachmentData } from '../../../core/contract/attachment.ts';

type MediaType = AttachmentData['mediaType'];

/** First bytes: ISO 32000-1:2008, 7.5.2; ISO/IEC 15948:2004, 5.2; ITU-T T.81 (1992), B.1.1.3. */
const SIGNATURES: Partial<Record<MediaType, readonly number[]>> = {
  'application/pdf': [0x25, 0x50, 0x44, 0x46, 0x2d],
  'image/png': [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a],
  'image/jpeg': [0xff, 0xd8, 0xff],
};

/** Whether content can be what it is said to be, by its first bytes; text has none of its own, but no zero bytes either. */
export function looksLike(mediaType: MediaType, content: Uint8Array): boolean {
  const signature = SIGNATURES[mediaType];
  if (signature !== undefined) return startsWith(content, signature);
  if (content.includes(0)) return false;
  return !Object.values(SIGNATURES).some((other) => startsWith(content, other));
}

const startsWith = (content: Uint8Array, bytes: readonly number[]) =>
  bytes.every((byte, index) => content[index] === byte);
