import { frictionEvidenceOf } from '../friction/evidence.ts';
import type { Read } from './handler.ts';

export const frictionEvidence: Read<'friction.evidence'> = frictionEvidenceOf;
