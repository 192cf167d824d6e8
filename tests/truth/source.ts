/**
 * How far a source can be traced. A: text of the body itself, or certified data. B: a named work, read in a companion of
 * its examples, in a test file, or as single pages. C: the author, the printing or the chain of copies is not known.
 */
type Grade = 'A' | 'B' | 'C';

export interface Source {
  readonly title: string;
  readonly author: string;
  readonly edition: string;
  readonly grade: Grade;
  /** How it was read. */
  readonly read: string;
  /** Work it belongs to, where another entry here is the same work in another edition or printing. */
  readonly work?: string;
  /** The same text's keys in the list of sources of the shipped tables. */
  readonly shippedAs?: readonly string[];
}
