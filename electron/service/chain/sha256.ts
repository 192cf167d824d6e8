import { createHash } from 'node:crypto';
import type { Sha256 } from '../../../core/audit/hash.ts';

export const sha256: Sha256 = (bytes) => new Uint8Array(createHash('sha256').update(bytes).digest());
