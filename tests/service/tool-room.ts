import type { CheckInput, ChecklistInput, ToolRuleInput } from '../../core/contract/check.ts';
import type { KitInput, MoveInput } from '../../core/contract/custody.ts';
import type { ToolInput } from '../../core/contract/tool.ts';
import type { Unit } from '../../core/units/units.ts';
import { ask, key, type TestService } from './ask.ts';
import type { TestPlant } from './records.ts';

export const q = <U extends Unit>(text: string, unit: U) => ({ text, unit });

export function moveOf(plant: TestPlant, changes: Partial<MoveInput> = {}): MoveInput {
  return {
    toolIds: [plant.tools.driveId ?? ''],
    step: 'issue',
    happenedAt: '2026-03-16T08:00:00+01:00',
    personId: plant.personId,
    holderId: plant.personId,
    condition: null,
    place: 'Unit 100',
    reference: 'Job 7',
    reason: '',
    ...changes,
  };
}

/** A step other than issuing: nobody takes the tool. */
export const stepOf = (plant: TestPlant, step: MoveInput['step'], changes: Partial<MoveInput> = {}) =>
  moveOf(plant, { step, holderId: null, place: '', ...changes });

export function checkOf(plant: TestPlant, changes: Partial<CheckInput> = {}): CheckInput {
  return {
    toolId: plant.tools.driveId ?? '',
    kind: 'function',
    happenedAt: '2026-03-16T08:30:00+01:00',
    personId: plant.personId,
    checklist: null,
    result: 'passed',
    remarks: '',
    ...changes,
  };
}

/** A wrench compared with a reference at one pressure. */
export function comparisonOf(
  plant: TestPlant,
  delivered: string,
  changes: Partial<CheckInput> = {},
): CheckInput {
  return checkOf(plant, {
    kind: 'comparison',
    comparisons: [{ pressure: q('260', 'bar'), reference: q(delivered, 'N.m'), intended: q('384', 'N.m') }],
    limit: q('4', 'percent'),
    ...changes,
  });
}

export function checklistOf(changes: Partial<ChecklistInput> = {}): ChecklistInput {
  return {
    name: 'Seals and ratchet',
    kind: 'function',
    classes: ['drive unit'],
    questions: [
      { text: 'Advances and retracts fully?', answer: 'yes or no' },
      { text: 'Strokes to a full turn', answer: 'number', least: 8, most: 16 },
    ],
    source: 'invented instructions of the test, page 4',
    everyDays: 90,
    everyUses: 100,
    ...changes,
  };
}

export function ruleOf(changes: Partial<ToolRuleInput> = {}): ToolRuleInput {
  return {
    class: 'drive unit',
    certificateDays: 365,
    certificateUses: null,
    dueAt: 'exact day',
    source: 'invented procedure of the test, edition 2',
    ...changes,
  };
}

export function kitOf(plant: TestPlant, changes: Partial<KitInput> = {}): KitInput {
  return {
    name: 'Exchanger E-1',
    reference: 'Job 7',
    jointIds: [plant.jointId],
    from: '2026-03-16',
    to: '2026-03-20',
    toolIds: [plant.tools.driveId ?? ''],
    remarks: '',
    ...changes,
  };
}

export const saveKit = (started: TestService, data: KitInput) =>
  ask(started, 'kit.save', { key: key(), id: null, version: null, data });

export const saveChecklist = (started: TestService, data: ChecklistInput) =>
  ask(started, 'checklist.save', { key: key(), id: null, version: null, data });

export const saveRule = (started: TestService, data: ToolRuleInput) =>
  ask(started, 'toolRule.save', { key: key(), id: null, version: null, data });

export const saveTool = (started: TestService, data: ToolInput) =>
  ask(started, 'tool.save', { key: key(), id: null, version: null, data });

export const move = (started: TestService, data: MoveInput) =>
  ask(started, 'tool.move', { key: key(), data });

export const check = (started: TestService, data: CheckInput) =>
  ask(started, 'tool.check', { key: key(), data });

export const statusOf = async (started: TestService, id: string | null) =>
  (await ask(started, 'tool.get', { id: id ?? '' })).data.status;
