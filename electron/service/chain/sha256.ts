import { createHash } from 'node:crypto';
import type { Sha256 } from '../../../core/audit/hash.ts';

export const sha256: Sha256 = (...parts) => {
  const hash = createHash('sha256');
  for (const part of parts) hash.update(part);
  return new Uint8Array(hash.digest());
};
