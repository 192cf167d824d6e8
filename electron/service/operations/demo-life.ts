import { classRuleData, stepData } from '../../../core/contract/life.ts';
import type { DemoLife, DemoStepTaken } from '../../../seed/types.ts';
import type { WriteContext } from '../context.ts';
import { takeStep } from '../life/take-step.ts';
import { findJoint } from '../repositories/joint.ts';
import { saveClassRule } from '../requests/class-rule.ts';
import { type DemoStep, idOf, type Keys } from './demo-keys.ts';

/** Classes and states of joints of the invented plant, each step through what a real one goes through. */
export function lifeSteps(life: DemoLife): DemoStep[] {
  return [
    {
      at: Date.parse(life.classAt),
      replay: async (context, keys) => {
        const data = classRuleData.parse(life.class);
        const { id } = await saveClassRule(context, { key: context.newId(), id: null, version: null, data });
        keys.records.set(data.name, id);
      },
    },
    ...life.steps.map(
      (step): DemoStep => ({
        at: Date.parse(step.happenedAt),
        replay: (context, keys) => replayStep(context, keys, { step, className: life.class.name }),
      }),
    ),
  ];
}

interface Replaying {
  readonly step: DemoStepTaken;
  readonly className: string;
}

async function replayStep(context: WriteContext, keys: Keys, { step, className }: Replaying): Promise<void> {
  const { joint: tag, by, evidence, reallyDone, ...rest } = step;
  const jointId = idOf(keys.joints, tag);
  const joint = await findJoint(context.db, jointId);
  if (joint === null) throw new Error(`the invented plant has no joint ${tag}`);
  const named = JSON.stringify(evidence).replace(/\{([^{}"]+)\}/g, (_, name: string) =>
    idOf(keys.people, name),
  );
  await takeStep(
    context,
    joint,
    stepData.parse({
      ...rest,
      jointId,
      by: idOf(keys.people, by),
      reallyDone: reallyDone === null ? null : { reason: reallyDone },
      evidence: JSON.parse(named) as unknown,
      ...(step.step === 'assess' ? { classRuleId: idOf(keys.records, className) } : {}),
    }),
  );
}
