import * as z from 'zod';
import { id, instant, optionalText, text } from './values.ts';

/** Largest file in bytes: scans of certificates are a few hundred kilobytes, photographs a few megabytes. */
export const LARGEST_ATTACHMENT = 12_000_000;

export const mediaType = z.enum(['application/pdf', 'image/png', 'image/jpeg', 'text/csv', 'text/plain']);

/** A tool, a joint, or the event of a certificate, check, case or piece of work. */
export const attachmentOwner = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('tool'), id }),
  z.strictObject({ kind: z.literal('joint'), id }),
  z.strictObject({ kind: z.literal('event'), id }),
]);

export const hashText = z.string().regex(/^[0-9a-f]{64}$/, 'a SHA-256 in 64 hexadecimal digits');

export const attachmentData = z.strictObject({
  owner: attachmentOwner,
  name: text(200),
  mediaType,
  /** Content in base64. */
  content: z.base64('a file in base64').max(Math.ceil((LARGEST_ATTACHMENT * 4) / 3) + 4, 'at most 12 MB'),
  personId: id,
  remarks: optionalText(300),
});
export type AttachmentInput = z.input<typeof attachmentData>;
export type AttachmentData = z.output<typeof attachmentData>;

/** Of the file that is kept: it has its hash, is not there, has another content, or was not read through this time. */
export const attachmentState = z.enum(['intact', 'missing', 'changed', 'not checked']);
export type AttachmentState = z.infer<typeof attachmentState>;

export const attachmentRow = z.strictObject({
  /** Event that added it. */
  id,
  /** SHA-256 of the content. */
  hash: z.string(),
  name: z.string(),
  mediaType,
  size: z.int(),
  addedAt: instant,
  person: z.string(),
  remarks: z.string(),
  state: attachmentState,
});
export type AttachmentRow = z.infer<typeof attachmentRow>;

/** Content as stored; `intact` false when the file no longer has the hash that was recorded. */
export const attachmentContent = z.strictObject({
  name: z.string(),
  mediaType,
  content: z.string().nullable(),
  intact: z.boolean(),
});
