import * as z from 'zod';
import { typedSecret } from './access.ts';
import { hashText } from './attachment.ts';
import { id, instant } from './values.ts';

/** What a signature says: the words stand in core/text/signature.ts. */
export const signatureMeaning = z.enum(['did', 'witnessed', 'approved', 'reviewed']);
export type SignatureMeaning = z.infer<typeof signatureMeaning>;

/** It binds to the exact content: `hash` is what the record had when the person read it. */
export const signatureData = z.strictObject({
  eventId: id,
  hash: hashText,
  meaning: signatureMeaning,
  personId: id,
});
export type SignatureData = z.output<typeof signatureData>;

export const signInput = z.strictObject({
  key: id,
  data: signatureData,
  /** Needed where the register asks who is there; null where it works without sign-in. */
  secret: typedSecret.nullable().default(null),
});

export const signatureRow = z.strictObject({
  id,
  meaning: signatureMeaning,
  personId: id,
  person: z.string(),
  /** "name": signed without sign-in, a claim. */
  knownBy: z.enum(['secret', 'name']),
  signedAt: instant,
  /** False when the record no longer has the content that was signed. */
  matches: z.boolean(),
});
export type SignatureRow = z.infer<typeof signatureRow>;

/** A record as it stands in the log, whatever its kind. */
export const loggedRecord = z.strictObject({
  id,
  kind: z.string(),
  originName: z.string(),
  sequence: z.int(),
  hash: z.string(),
  previousHash: z.string(),
  happenedAt: instant,
  recordedAt: instant,
  /** Who was signed in; null where nobody was asked. */
  recordedBy: z.string().nullable(),
  supersedes: id.nullable(),
  supersededBy: id.nullable(),
  /** The text exactly as it was hashed. */
  body: z.string(),
  people: z.array(z.strictObject({ id, name: z.string(), part: z.string() })),
  joints: z.array(z.strictObject({ id, tag: z.string() })),
  signatures: z.array(signatureRow),
  /** Meanings that this kind of record can be signed with; none for a kind that is not signed. */
  signable: z.array(signatureMeaning),
});
export type LoggedRecord = z.infer<typeof loggedRecord>;
