import { createHash } from 'node:crypto';

/**
 * Hash of one event as core/audit/chain.ts defines it, by the platform's own reading and writing of hexadecimal: a
 * million of them take seconds instead of a quarter of a minute. A test holds the two against each other.
 */
export function linkHash(previousHash: string, body: string): string {
  return createHash('sha256')
    .update('\u0002', 'latin1')
    .update(previousHash, 'hex')
    .update(body, 'utf8')
    .digest('hex');
}

/** Leaf of the tree of heads that stands for one origin; core/audit/merkle.ts defines it. */
export function headLeaf(originId: string, sequence: number, hash: string): Buffer {
  return createHash('sha256')
    .update('\u0000', 'latin1')
    .update(`{"hash":"${hash}","originId":"${originId}","sequence":${sequence}}`, 'utf8')
    .digest();
}
