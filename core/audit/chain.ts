import { fromHex, type Sha256, toHex } from './hash.ts';

/** Prefix of a link in an origin's chain; leaves and nodes of the tree take 0x00 and 0x01 (merkle.ts). */
const LINK = Uint8Array.of(0x02);

/** What the first event of an origin has in place of its forerunner's hash. */
export const NO_PREVIOUS = '0'.repeat(64);

/**
 * Hash of one event: it covers the event's verbatim text and, through its forerunner's hash, all that came before.
 *
 * Equation: hash = SHA-256(0x02 ‖ previous hash ‖ UTF-8 of the body).
 * @param sha256 hash function
 * @param previousHash 64 hexadecimal digits; NO_PREVIOUS for the first event of an origin
 * @param body the event's canonical text, exactly as stored
 * @returns 64 hexadecimal digits
 * @example eventHash(sha256, NO_PREVIOUS, '{"kind":"unit saved"}').length // 64
 * @source prefix rule after RFC 9162 (2021), section 2.1.1: a distinct first byte for each kind of input
 */
export function eventHash(sha256: Sha256, previousHash: string, body: string): string {
  return toHex(sha256(LINK, fromHex(previousHash), body));
}

export interface ChainLink {
  readonly sequence: number;
  readonly previousHash: string;
  readonly hash: string;
  readonly body: string;
}

/**
 * Checks one origin's chain from its first event on.
 *
 * Equation: holds while hash = eventHash(previous hash, body), each previous hash is the one before and sequences run
 * 1, 2, 3 …
 * @param sha256 hash function
 * @param links the origin's events in order of sequence
 * @returns the sequence at which the chain first breaks, or null when it holds
 * @example firstBreak(sha256, []) // null
 * @source RFC 9162 (2021), section 2.1.1, for the prefix; hash chain over verbatim text
 */
export function firstBreak(sha256: Sha256, links: Iterable<ChainLink>): number | null {
  let previousHash = NO_PREVIOUS;
  let expected = 1;
  for (const link of links) {
    const holds =
      link.sequence === expected &&
      link.previousHash === previousHash &&
      link.hash === eventHash(sha256, link.previousHash, link.body);
    if (!holds) return expected;
    previousHash = link.hash;
    expected += 1;
  }
  return null;
}
