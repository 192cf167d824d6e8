import type { ClassRuleData, JointStep, StepData } from '../../contract/life.ts';
import type { Role } from '../../contract/roles.ts';
import type { RetighteningFacts } from '../retightening.ts';
import type { JointStanding } from './standing.ts';

/** What a step is held against beside the joint's own standing. */
export interface StepFacts {
  readonly tag: string;
  /** Rule of the joint's class in force now; null for a joint without one. */
  readonly rule: ClassRuleData | null;
  /** Roles of whoever is signed in; null without sign-in, when a name is a claim. */
  readonly roles: readonly Role[] | null;
  /** Fields that the class asks of the record and that are missing; null while nobody has looked. */
  readonly missing: readonly string[] | null;
  /** Whether the gauge of a leak test was in date that day. */
  readonly gauge: 'in date' | 'not in date' | 'not known';
  /** What the joint and the site say about retightening. */
  readonly retightening: Pick<
    RetighteningFacts,
    'gasketType' | 'excludedGaskets' | 'lastTorque' | 'siteProcedure' | 'window'
  >;
}

/** Something the joint itself has to be or have; it can be told before anybody fills in the step. */
export interface JointGuard {
  readonly says: string;
  /** Why it is not met at a moment; null where it is. */
  readonly fails: (standing: JointStanding, facts: StepFacts, at: string) => string | null;
}

/** Something the step itself has to state. */
export interface FormGuard<S extends JointStep> {
  readonly says: string;
  readonly fails: (
    data: Extract<StepData, { step: S }>,
    standing: JointStanding,
    facts: StepFacts,
  ) => string | null;
}

export interface Guards<S extends JointStep> {
  readonly joint: readonly JointGuard[];
  readonly form: readonly FormGuard<S>[];
}

export type StepGuards = { readonly [S in JointStep]: Guards<S> };
