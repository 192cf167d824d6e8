import { type JointStep, jointStep } from '../../../core/contract/life.ts';
import { STEPS } from '../../../core/joint/life/steps.ts';

export const titleOf = (words: string) => `${words.charAt(0).toUpperCase()}${words.slice(1)}`;

/** "lift isolation" → "/joints/…/step/lift-isolation". */
export const stepRoute = (jointId: string, step: JointStep) =>
  `/joints/${jointId}/step/${step.replaceAll(' ', '-')}`;

export const stepAt = (path: string | undefined): JointStep | null =>
  jointStep.options.find((step) => step.replaceAll(' ', '-') === path) ?? null;

/** Steps that are work: they can have been done although they were not in order. */
export const WORK_STEPS: readonly JointStep[] = jointStep.options.filter((step) => STEPS[step].work);
