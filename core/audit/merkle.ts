import { canonicalText } from './canonical.ts';
import { type Sha256, toHex } from './hash.ts';

const LEAF = Uint8Array.of(0x00);
const NODE = Uint8Array.of(0x01);

/**
 * Merkle tree hash of a list of entries.
 *
 * Equation: MTH({}) = SHA-256(); MTH({d}) = SHA-256(0x00 ‖ d); MTH(D) = SHA-256(0x01 ‖ MTH(D[0:k]) ‖ MTH(D[k:n])), k
 * the largest power of two smaller than n.
 * @param sha256 hash function
 * @param leaves entries in order; text stands for its UTF-8 bytes
 * @returns 32 bytes
 * @example toHex(merkleTreeHash(sha256, [])) // 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'
 * @source RFC 9162 (2021), section 2.1.1
 */
export function merkleTreeHash(sha256: Sha256, leaves: readonly (Uint8Array | string)[]): Uint8Array {
  return rootOfLeaves(
    sha256,
    leaves.map((leaf) => leafHash(sha256, leaf)),
  );
}

/**
 * Hash of one entry as a leaf of the tree.
 *
 * Equation: SHA-256(0x00 ‖ d).
 * @param sha256 hash function
 * @param entry the entry; text stands for its UTF-8 bytes
 * @returns 32 bytes
 * @example leafHash(sha256, '').length // 32
 * @source RFC 9162 (2021), section 2.1.1
 */
export function leafHash(sha256: Sha256, entry: Uint8Array | string): Uint8Array {
  return sha256(LEAF, entry);
}

/**
 * Root of the tree over leaves that are hashed already, for whoever follows a tree of which one leaf at a time changes.
 *
 * Equation: as merkleTreeHash, with SHA-256(0x00 ‖ d) given for each entry.
 * @param sha256 hash function
 * @param leaves leaf hashes in order
 * @returns 32 bytes
 * @example toHex(rootOfLeaves(sha256, [leafHash(sha256, 'a')])) === toHex(merkleTreeHash(sha256, ['a'])) // true
 * @source RFC 9162 (2021), section 2.1.1
 */
export function rootOfLeaves(sha256: Sha256, leaves: readonly Uint8Array[]): Uint8Array {
  const [first] = leaves;
  if (first === undefined) return sha256();
  if (leaves.length === 1) return first;
  let split = 1;
  while (split * 2 < leaves.length) split *= 2;
  const left = rootOfLeaves(sha256, leaves.slice(0, split));
  const right = rootOfLeaves(sha256, leaves.slice(split));
  return sha256(NODE, left, right);
}

/** Last event of one origin's chain. */
export interface OriginHead {
  readonly originId: string;
  readonly sequence: number;
  readonly hash: string;
}

/**
 * One hash that stands for everything on the register: the tree over the origins' last events.
 *
 * @param sha256 hash function
 * @param heads one per origin, in any order
 * @returns 64 hexadecimal digits
 * @example merkleHead(sha256, [{ originId: 'a', sequence: 1, hash: NO_PREVIOUS }]).length // 64
 * @source RFC 9162 (2021), section 2.1.1; an entry is the canonical text of {hash, originId, sequence}, sorted by
 * originId
 */
export function merkleHead(sha256: Sha256, heads: readonly OriginHead[]): string {
  const entries = [...heads].sort((a, b) => (a.originId < b.originId ? -1 : 1)).map(headEntry);
  return toHex(merkleTreeHash(sha256, entries));
}

/**
 * Entry of the tree that stands for one origin.
 *
 * @param head last event of the origin
 * @returns the text that is hashed as a leaf
 * @example headEntry({ originId: 'a', sequence: 1, hash: 'ff' }) // '{"hash":"ff","originId":"a","sequence":1}'
 * @source RFC 8785 (2020), section 3.2
 */
export function headEntry({ originId, sequence, hash }: OriginHead): string {
  return canonicalText({ originId, sequence, hash });
}
