import type { CheckData, ChecklistData } from '../../../core/contract/check.ts';
import type { ToolClass, ToolData } from '../../../core/contract/tool.ts';
import { showEntered } from '../../../core/text/number.ts';
import type { Entered } from '../../../core/units/entered.ts';
import { UNITS } from '../../../core/units/units.ts';
import { append } from '../chain/append.ts';
import type { WriteContext } from '../context.ts';
import { invalidField, notFound, RequestFailure } from '../failure.ts';
import { listInForce } from '../repositories/checklist.ts';
import { findTool } from '../repositories/tool.ts';
import { answerFaults } from './checklist-answers.ts';
import { quarantineTools } from './custody.ts';
import { checkNotLater, checkPerson } from './who-and-when.ts';

export interface CheckRecorded {
  readonly id: string;
  /** Whether the tool was barred with it. */
  readonly quarantined: boolean;
}

/** Records a check; a tool that failed one is barred with the same stroke. */
export async function recordCheck(context: WriteContext, data: CheckData): Promise<CheckRecorded> {
  checkNotLater(context, data.happenedAt);
  await checkPerson(context, 'data.personId', data.personId);
  const tool = await findTool(context.db, data.toolId);
  if (tool === null) throw notFound('tool', 'data.toolId', data.toolId);
  const checklist = await followedList(context, data, tool.data);
  checkComparisons(data, tool.data.properties.class);
  checkLeak(data);
  const error = largestError(data.comparisons);
  checkResult(data, checklist, error);
  const id = context.newId();
  await append(context, [
    { kind: 'tool checked', id, happenedAt: data.happenedAt, data: { data, checklist, error } },
  ]);
  if (data.result === 'passed') return { id, quarantined: false };
  const barred = await quarantineTools(context, {
    toolIds: [data.toolId],
    personId: data.personId,
    reason: `failed check: ${checklist?.name ?? data.kind}`,
    causeId: id,
  });
  return { id, quarantined: barred.length > 0 };
}

/** The list as it stood in the version that was followed. */
async function followedList(
  { db }: WriteContext,
  { checklist, kind, answers }: CheckData,
  tool: ToolData,
): Promise<ChecklistData | null> {
  if (checklist === null) {
    if (answers.length > 0)
      throw invalidField('data.answers', `${answers.length} answers`, 'none without a list');
    return null;
  }
  const list = await listInForce(db, checklist.id, checklist.version);
  if (list === null) throw notFound('checklist', 'data.checklist.id', checklist.id);
  if (list.data === null) {
    throw invalidField(
      'data.checklist.version',
      String(checklist.version),
      `a version of "${list.name}" up to ${list.newest}`,
    );
  }
  const { name, classes, questions } = list.data;
  if (list.data.kind !== kind)
    throw invalidField('data.kind', kind, `${list.data.kind}, as the list "${name}" is for`);
  const { class: toolClass } = tool.properties;
  if (!classes.includes(toolClass)) {
    throw invalidField(
      'data.checklist.id',
      name,
      `a list for a ${toolClass}; this one is for ${classes.join(', ')}`,
    );
  }
  if (answers.length !== questions.length) {
    throw invalidField(
      'data.answers',
      `${answers.length} answers`,
      `${questions.length}, one for each question of "${name}"`,
    );
  }
  return list.data;
}

type Comparison = CheckData['comparisons'][number];

const COMPARED: Partial<Record<ToolClass, 'torque' | 'pressure'>> = {
  'drive unit': 'torque',
  'hand torque wrench': 'torque',
  gauge: 'pressure',
};

function checkComparisons({ kind, comparisons, limit }: CheckData, toolClass: ToolClass): void {
  if (kind !== 'comparison') {
    if (comparisons.length > 0) {
      throw invalidField(
        'data.comparisons',
        `${comparisons.length} comparisons`,
        `none in a check of the kind "${kind}"`,
      );
    }
    return;
  }
  const compared = COMPARED[toolClass];
  if (compared === undefined) {
    throw invalidField('data.kind', kind, `another kind: a ${toolClass} shows nothing to compare`);
  }
  if (comparisons.length === 0) throw invalidField('data.comparisons', '', 'at least one comparison');
  if (limit === null)
    throw invalidField('data.limit', '', 'needed with comparisons: the largest permissible error');
  for (const [index, comparison] of comparisons.entries()) {
    checkComparison(comparison, `data.comparisons.${index}`, compared, toolClass);
  }
}

function checkComparison(
  { pressure, reference, intended }: Comparison,
  field: string,
  compared: 'torque' | 'pressure',
  toolClass: ToolClass,
): void {
  for (const [name, value] of Object.entries({ reference, intended })) {
    if (UNITS[value.unit].quantity !== compared) {
      throw invalidField(`${field}.${name}`, showEntered(value), `a ${compared}, as it is a ${toolClass}`);
    }
  }
  if (intended.si <= 0)
    throw invalidField(
      `${field}.intended`,
      showEntered(intended),
      'more than 0: the error is a fraction of it',
    );
  if (toolClass === 'drive unit' && pressure === null) {
    throw invalidField(`${field}.pressure`, '', 'needed: where the wrench was dialled');
  }
  if (toolClass === 'hand torque wrench' && pressure !== null) {
    throw invalidField(`${field}.pressure`, showEntered(pressure), 'none for a hand torque wrench');
  }
}

function checkLeak({ kind, leak }: CheckData): void {
  if (leak === null) return;
  if (kind !== 'leak test' && kind !== 'pressure test') {
    throw invalidField('data.leak', showEntered(leak.pressure), `none in a check of the kind "${kind}"`);
  }
  const falls: readonly (readonly [string, Entered | null])[] = [
    ['fallAdvance', leak.fallAdvance],
    ['fallRetract', leak.fallRetract],
  ];
  for (const [name, fall] of falls) {
    if (fall !== null && fall.si > leak.pressure.si) {
      throw invalidField(
        `data.leak.${name}`,
        showEntered(fall),
        `no more than was held, ${showEntered(leak.pressure)}`,
      );
    }
  }
}

/** Delivered over intended less one. */
export const comparisonError = ({ reference, intended }: Pick<Comparison, 'reference' | 'intended'>) =>
  reference.si / intended.si - 1;

/** Error of the comparison that lies farthest out. */
function largestError(comparisons: readonly Comparison[]): number | null {
  const errors = comparisons.map(comparisonError);
  return errors.reduce<number | null>(
    (worst, error) => (worst === null || Math.abs(error) > Math.abs(worst) ? error : worst),
    null,
  );
}

/** A check can fail for what no number shows; it can't pass against its own numbers. */
function checkResult(
  { result, answers, limit }: CheckData,
  list: ChecklistData | null,
  error: number | null,
): void {
  if (result === 'failed') {
    // Answers of the wrong kind are a slip whatever the result.
    const slip = list === null ? undefined : answerFaults(list, answers).find(({ wrongKind }) => wrongKind);
    if (slip !== undefined) throw invalidField(slip.field, slip.value, slip.allowed);
    return;
  }
  const faults = list === null ? [] : answerFaults(list, answers);
  const [first] = faults;
  if (first !== undefined) {
    const rest = faults.length > 1 ? ` (and ${faults.length - 1} more)` : '';
    const details = faults.map(({ field, value, allowed }) => ({ field, value, allowed }));
    throw new RequestFailure('invalid_input', `${first.field}: ${first.allowed}${rest}`, details);
  }
  if (error !== null && limit !== null && Math.abs(error) > limit.si) {
    const percent = (fraction: number) => `${Number((100 * fraction).toPrecision(3))} %`;
    throw invalidField(
      'data.result',
      'passed',
      `failed: the largest error is ${percent(error)}, its limit ${percent(limit.si)}`,
    );
  }
}
