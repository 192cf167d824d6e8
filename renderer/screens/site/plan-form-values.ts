import type { PassPlanData, PassPlanInput } from '../../../core/contract/site.ts';
import { needed, type Typed, typed } from '../../components/typed.ts';

export interface PlanForm {
  name: string;
  source: string;
  groupSize: string;
  steps: { name: string; fraction: Typed; order: string; tools: string; stopWhen: string }[];
  /** One check a line. */
  checks: string;
  retired: boolean;
}

export const blankStep = (): PlanForm['steps'][number] => ({
  name: '',
  fraction: { text: '100', unit: 'percent' },
  order: 'star',
  tools: '1',
  stopWhen: '',
});

export const emptyPlan = (): PlanForm => ({
  name: '',
  source: '',
  groupSize: '',
  steps: [blankStep()],
  checks: '',
  retired: false,
});

export function planForm({ name, source, groupSize, steps, checks, retired }: PassPlanData): PlanForm {
  return {
    name,
    source,
    groupSize: groupSize === null ? '' : String(groupSize),
    steps: steps.map((step) => ({
      ...step,
      fraction: typed(step.fraction, 'percent'),
      tools: String(step.tools),
    })),
    checks: checks.join('\n'),
    retired,
  };
}

export function planInput({ name, source, groupSize, steps, checks, retired }: PlanForm): PassPlanInput {
  return {
    name,
    source,
    groupSize: groupSize.trim() === '' ? null : Number(groupSize),
    steps: steps.map((step) => ({ ...step, fraction: needed(step.fraction), tools: Number(step.tools) })),
    checks: checks
      .split('\n')
      .map((line) => line.trim())
      .filter((line) => line !== ''),
    retired,
  } as PassPlanInput;
}
