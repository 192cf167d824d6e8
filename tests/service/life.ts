import type { JointStep, StepInput } from '../../core/contract/life.ts';
import type { RequestOutput } from '../../core/contract/requests.ts';
import { CREW, GOOD, SECOND } from '../laws/joint-life.ts';
import { ask, askBadly, key, type TestService } from './ask.ts';
import type { Asking } from './crew.ts';

/** Two people of the register, in place of those the evidence of the laws names. */
export interface Crew {
  readonly first: string;
  readonly second: string;
}

export interface Stepping {
  readonly jointId: string;
  readonly tag: string;
  readonly crew: Crew;
}

type Changes = Partial<Pick<StepInput, 'by' | 'personIds' | 'happenedAt' | 'reallyDone'>> & {
  readonly evidence?: unknown;
  readonly classRuleId?: string;
};

/** A moment later with every step, so that nothing is dated before what it follows. */
let minutes = 0;
export function nextAt(from = '2026-03-16T06:00:00Z'): string {
  minutes += 1;
  return new Date(Date.parse(from) + minutes * 1000).toISOString();
}

/** A step whose evidence meets every guard of a class that asks little. */
export function stepOf({ jointId, tag, crew }: Stepping, step: JointStep, changes: Changes = {}): StepInput {
  const { evidence = GOOD[step], ...rest } = changes;
  const text = JSON.stringify(evidence)
    .replaceAll(CREW, crew.first)
    .replaceAll(SECOND, crew.second)
    .replaceAll('"j-0001"', JSON.stringify(tag.toLowerCase()));
  return {
    step,
    jointId,
    by: crew.first,
    happenedAt: nextAt(),
    evidence: JSON.parse(text),
    ...rest,
  } as StepInput;
}

export const standing = (started: Asking, id: string) => ask(started, 'joint.standing', { id });

export async function take(
  started: Asking,
  joint: Stepping,
  step: JointStep,
  changes: Changes = {},
): Promise<RequestOutput<'joint.step'>> {
  const { seen } = await standing(started, joint.jointId);
  return ask(started, 'joint.step', { key: key(), seen, data: stepOf(joint, step, changes) });
}

export async function takeBadly(started: Asking, joint: Stepping, step: JointStep, changes: Changes = {}) {
  const { seen } = await standing(started, joint.jointId);
  return askBadly(started, 'joint.step', { key: key(), seen, data: stepOf(joint, step, changes) });
}

export const TO_MADE_UP = [
  'assess',
  'schedule',
  'isolate',
  'release',
  'break',
  'inspect',
  'make up',
] as const;

export async function takeAll(started: TestService, joint: Stepping, steps: readonly JointStep[]) {
  for (const step of steps) await take(started, joint, step);
}
