import type { SignatureMeaning } from '../contract/signature.ts';

/** What a person states by signing, as the window and the paper say it. */
export const MEANING_WORDS: Readonly<Record<SignatureMeaning, string>> = {
  did: 'I did this work, and this is what was done',
  witnessed: 'I was there and saw it done',
  approved: 'I approve it',
  reviewed: 'I read it and found it in order',
};

/** The meaning in a list, after the person's name. */
export const MEANING_SHORT: Readonly<Record<SignatureMeaning, string>> = {
  did: 'did it',
  witnessed: 'witnessed it',
  approved: 'approved it',
  reviewed: 'reviewed it',
};
