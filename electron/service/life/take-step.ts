import type { StepData } from '../../../core/contract/life.ts';
import { stepAllowed } from '../../../core/joint/life/allowed.ts';
import { CLASS_RULES } from '../../../core/joint/life/class-rules.ts';
import type { ClassGiven, StepEvent } from '../../../core/joint/life/standing.ts';
import { STEPS } from '../../../core/joint/life/steps.ts';
import { append } from '../chain/append.ts';
import type { WriteContext } from '../context.ts';
import { invalidField, notFound, RequestFailure } from '../failure.ts';
import { checkDistinct } from '../operations/distinct.ts';
import { checkNotLater, checkPerson } from '../operations/who-and-when.ts';
import { attachmentsOf } from '../repositories/attachment.ts';
import { findClassRule } from '../repositories/class-rule.ts';
import type { JointOnRegister } from '../repositories/joint.ts';
import { stepFacts } from './facts.ts';
import { standingOf } from './standing.ts';

export interface StepTaken {
  readonly id: string;
  readonly outOfOrder: readonly string[];
}

/**
 * Takes a step, or refuses it with every reason. Work that was really done is kept whatever stands against it, with
 * the reasons, and opens a deviation.
 */
export async function takeStep(
  context: WriteContext,
  joint: JointOnRegister,
  data: StepData,
): Promise<StepTaken> {
  checkNotLater(context, data.happenedAt);
  await checkNamed(context, data);
  const standing = await standingOf(context.db, joint.id);
  const given = await classGiven(context, data);
  const id = context.newId();
  const event: Omit<StepEvent, 'outOfOrder'> = {
    kind: 'step',
    id,
    happenedAt: data.happenedAt,
    data,
    class: given,
  };
  const facts = await stepFacts(context, joint, standing, data);
  const outOfOrder = stepAllowed(standing, event, facts).refused ?? [];
  if (outOfOrder.length > 0) checkReallyDone(data, outOfOrder);
  await append(context, [
    {
      kind: 'joint stepped',
      id,
      happenedAt: data.happenedAt,
      data: { data, class: given, outOfOrder, rule: facts.rule },
    },
  ]);
  return { id, outOfOrder };
}

function checkReallyDone({ step, reallyDone }: StepData, reasons: readonly string[]): void {
  const { work } = STEPS[step];
  if (work && reallyDone !== null) return;
  const how = work ? '. If the work was really done, record it as done out of order, with the reason' : '';
  throw new RequestFailure(
    'refused',
    `${step}: ${reasons.join('; ')}. Nothing was written${how}`,
    reasons.map((allowed) => ({ field: 'data.step', value: step, allowed })),
  );
}

/** The class an assessment gives; other steps give none. */
async function classGiven({ db }: WriteContext, data: StepData): Promise<ClassGiven | null> {
  if (data.step !== 'assess') return null;
  const { classRuleId, evidence } = data;
  const level = evidence.class;
  if (classRuleId === null) {
    return level === null ? null : { name: CLASS_RULES[level].name, level, ruleId: null };
  }
  const rule = await findClassRule(db, classRuleId);
  if (rule === null) throw notFound('class', 'data.classRuleId', classRuleId);
  if (rule.data.retired)
    throw invalidField('data.classRuleId', rule.data.name, 'a class that is not retired');
  if (level !== null && level !== rule.data.level) {
    throw invalidField(
      'data.evidence.class',
      level,
      `${rule.data.level}, on which class ${rule.data.name} rests`,
    );
  }
  return { name: rule.data.name, level: rule.data.level, ruleId: classRuleId };
}

/** Fields of evidence that name somebody, wherever they stand in it. */
const PEOPLE: readonly string[] = [
  'personId',
  'provenBy',
  'verifiedBy',
  'inspectorId',
  'witnessId',
  'settingSeenBy',
  'supervisorId',
];
const TOOLS: readonly string[] = ['toolId', 'gaugeToolId'];
const RECORDS: readonly string[] = ['breakoutEventId', 'leakEventId'];

/** People, tools, records and pictures that a step names are on the register. */
async function checkNamed(context: WriteContext, data: StepData): Promise<void> {
  await checkPerson(context, 'data.by', data.by);
  checkDistinct('data.personIds', data.personIds);
  for (const personId of data.personIds) await checkPerson(context, 'data.personIds', personId);
  for (const { name, field, value } of namedIn(data.evidence, 'data.evidence')) {
    if (PEOPLE.includes(name)) await checkPerson(context, field, value);
    if (TOOLS.includes(name)) await checkTool(context, field, value);
    if (RECORDS.includes(name)) await checkRecord(context, data.jointId, field, value);
  }
  await checkPictures(context, data);
}

interface Named {
  readonly name: string;
  readonly field: string;
  readonly value: string;
}

function namedIn(value: unknown, field: string): Named[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, inner]) =>
    typeof inner === 'string'
      ? [{ name, field: `${field}.${name}`, value: inner }]
      : namedIn(inner, `${field}.${name}`),
  );
}

async function checkTool({ db }: WriteContext, field: string, toolId: string): Promise<void> {
  const tool = await db.selectFrom('tool').select('id').where('id', '=', toolId).executeTakeFirst();
  if (!tool) throw notFound('tool', field, toolId);
}

async function checkRecord(
  { db }: WriteContext,
  jointId: string,
  field: string,
  eventId: string,
): Promise<void> {
  const link = await db
    .selectFrom('event_joint')
    .select('event_id')
    .where('event_id', '=', eventId)
    .where('joint_id', '=', jointId)
    .executeTakeFirst();
  if (!link) throw notFound('record of this joint', field, eventId);
}

async function checkPictures({ db }: WriteContext, { jointId, evidence }: StepData): Promise<void> {
  if (evidence.pictures.length === 0) return;
  const kept = await attachmentsOf(db, { kind: 'joint', id: jointId });
  const missing = evidence.pictures.find((picture) => !kept.some(({ hash }) => hash === picture));
  if (missing === undefined) return;
  throw invalidField('data.evidence.pictures', missing, 'pictures that are kept with this joint');
}
