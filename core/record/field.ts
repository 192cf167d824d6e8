import type { Criticality } from '../contract/assembly.ts';

/** Steps of a joint whose evidence belongs to the record, as the steps are named. */
export const EVIDENCE_STEPS = [
  'assess',
  'isolate',
  'release',
  'break',
  'inspect',
  'make up',
  'witness',
  'relaxation pass',
  'test',
  'reinstate',
] as const;
export type EvidenceStep = (typeof EVIDENCE_STEPS)[number];

/** Groups of an assembly record. */
export const GROUPS = {
  A: 'Identity',
  B: 'Class',
  C: 'Geometry',
  D: 'Materials',
  E: 'Service',
  F: 'Target',
  G: 'Break',
  H: 'Inspection',
  I: 'Assembly',
  J: 'Tightening',
  K: 'Verification',
  L: 'Test and return',
  M: 'People',
  N: 'Learning',
  O: 'Integrity',
} as const;
export type Group = keyof typeof GROUPS;

/** Why a field is on the list at all. */
export const ORIGINS = {
  P: 'ASME PCC-1, records of assembly (from memory)',
  E: 'EN 1591-4 and the inputs of EN 1591-1 (from memory)',
  H: 'workshop guidance (common practice)',
  O: '29 CFR 1910.119(j)(4)',
  L: 'lessons of published incident reports',
  M: 'measurement rules: ISO 10012, ILAC-G24 (from memory)',
} as const;
export type Origin = keyof typeof ORIGINS;

/** Where it is entered: a field of the joint, a step's evidence, or another record. */
export type Place =
  | `joint:${string}`
  | `step:${EvidenceStep}`
  | 'setting'
  | 'tightening'
  | 'breakout'
  | 'pass'
  | 'people'
  | 'signature';

export interface Field {
  readonly group: Group;
  readonly origins: readonly Origin[];
  /** Lowest class that requires it by default; null is asked and never required. */
  readonly from: Criticality | null;
  readonly place: Place;
  readonly why: string;
  /** Belongs to the least record of a critical joint. */
  readonly minimum: boolean;
  /** Always applies, so that no reason puts it aside. */
  readonly always: boolean;
}

type Mark = 'minimum' | 'always';

/**
 * One line of the tables of fields.
 *
 * @param group group of the record it belongs to
 * @param origins letters of who asks for it, one or more of `ORIGINS`
 * @param from lowest class that requires it by default, or null
 * @param place where it is entered
 * @param why why it is asked, one sentence
 * @param marks whether it belongs to the least record of a critical joint, and whether it always applies
 * @returns the field
 * @example field('A', 'PO', 'mild', 'joint:tag', 'It says which joint this is.', 'minimum').minimum // true
 * @source rule of this program
 */
export function field(
  group: Group,
  origins: string,
  from: Criticality | null,
  place: Place,
  why: string,
  ...marks: Mark[]
): Field {
  return {
    group,
    origins: [...origins].filter((letter): letter is Origin => letter in ORIGINS),
    from,
    place,
    why,
    minimum: marks.includes('minimum'),
    always: marks.includes('always'),
  };
}
