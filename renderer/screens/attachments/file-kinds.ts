import { type AttachmentData, LARGEST_ATTACHMENT } from '../../../core/contract/attachment.ts';
import { exact } from '../../app/text/number.ts';

type MediaType = AttachmentData['mediaType'];

/** By the ending of the name: what a browser calls a file depends on the programs installed on the PC. */
const BY_ENDING: Readonly<Record<string, MediaType>> = {
  pdf: 'application/pdf',
  png: 'image/png',
  jpg: 'image/jpeg',
  jpeg: 'image/jpeg',
  csv: 'text/csv',
  txt: 'text/plain',
};

export const ENDINGS = Object.keys(BY_ENDING).map((ending) => `.${ending}`);

export const mediaTypeOf = (name: string): MediaType | null =>
  BY_ENDING[name.slice(name.lastIndexOf('.') + 1).toLowerCase()] ?? null;

/** "482 kB", "3.1 MB". */
export function sizeWords(bytes: number): string {
  if (bytes < 1000) return `${bytes} bytes`;
  if (bytes < 1_000_000) return `${exact(Math.round(bytes / 1000))} kB`;
  return `${(bytes / 1_000_000).toFixed(1)} MB`;
}

/** Why a chosen file can't be added; null when it can. */
export function fileFault(name: string, size: number): string | null {
  if (mediaTypeOf(name) === null) return `“${name}” is of another kind; allowed: ${ENDINGS.join(', ')}.`;
  if (size === 0) return `“${name}” is empty.`;
  if (size > LARGEST_ATTACHMENT)
    return `“${name}” has ${sizeWords(size)}; allowed: at most ${sizeWords(LARGEST_ATTACHMENT)}.`;
  return null;
}
