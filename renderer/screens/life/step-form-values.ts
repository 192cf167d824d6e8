import type { FieldFault } from '../../../core/contract/errors.ts';
import type { JointStandingView, JointStep, StepInput } from '../../../core/contract/life.ts';
import { nowAtSite, withOffset } from '../../app/text/time.ts';
import { emptyEvidence, evidenceInput, type FormEvidence } from './evidence-values.ts';
import { fieldsOf } from './step-fields.ts';

export interface StepForm {
  by: string;
  personIds: string[];
  /** Empty for now. */
  happenedAt: string;
  /** Level of the program, or id of a class of the site. */
  class: string;
  reallyDone: boolean;
  doneBecause: string;
  evidence: FormEvidence;
}

/** What the register already knows is not typed again. */
export function startOf(step: JointStep, standing: JointStandingView): StepForm {
  const evidence = emptyEvidence(fieldsOf(step));
  const known = { isolationRef: standing.isolationRef, permitRef: standing.permitRef };
  for (const [name, value] of Object.entries(known)) {
    if (value !== null && name in evidence) evidence[name] = value;
  }
  return { by: '', personIds: [], happenedAt: '', class: '', reallyDone: false, doneBecause: '', evidence };
}

const LEVELS: readonly string[] = ['mild', 'intermediate', 'critical'];

export function stepInput(jointId: string, step: JointStep, form: StepForm, timeZone: string): StepInput {
  const evidence = evidenceInput(form.evidence, fieldsOf(step), timeZone);
  const happenedAt = form.happenedAt === '' ? nowAtSite(timeZone) : withOffset(form.happenedAt, timeZone);
  const shared = {
    jointId,
    by: form.by,
    personIds: form.personIds.filter((id) => id !== form.by),
    happenedAt,
    reallyDone: form.reallyDone ? { reason: form.doneBecause } : null,
  };
  if (step !== 'assess') return { step, ...shared, evidence } as StepInput;
  const level = LEVELS.includes(form.class);
  return {
    step,
    ...shared,
    classRuleId: level || form.class === '' ? null : form.class,
    evidence: level ? { ...evidence, class: form.class } : evidence,
  } as StepInput;
}

/** Where the form keeps the field that a fault is about: rows of a list stand under a name of their own. */
export function faultsOfForm(faults: readonly FieldFault[]): FieldFault[] {
  return faults.map((fault) => ({
    ...fault,
    field: fault.field
      .replace(/^(data\.evidence\.(?:\w+\.)*\w+)\.(\d+)\.(?=\w)/, '$1.rows.$2.')
      .replace(/\.\d+$/, '')
      .replace(/^data\.reallyDone\.reason$/, 'data.doneBecause')
      .replace(/^data\.(classRuleId|evidence\.class)$/, 'data.class'),
  }));
}
