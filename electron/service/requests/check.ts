import { isDeepStrictEqual } from 'node:util';
import type { ToolRuleData } from '../../../core/contract/check.ts';
import { append } from '../chain/append.ts';
import { invalidField, RequestFailure } from '../failure.ts';
import { nameKey } from '../fold.ts';
import { recordCheck } from '../operations/check.ts';
import { assessCheck } from '../operations/check-assessment.ts';
import { checkDistinct } from '../operations/distinct.ts';
import { duplicateOf, nextVersion, saved } from '../operations/edit.ts';
import { checklists, findChecklist, toolRuleRows } from '../repositories/checklist.ts';
import type { Read, Write } from './handler.ts';

/** What the numbers say before they are recorded; nothing is. */
export const assessToolCheck: Read<'check.assess'> = (context, { data }) => assessCheck(context, data);

export const checkTool: Write<'tool.check'> = async (context, { data }) => {
  const { id, quarantined } = await recordCheck(context, data);
  return { ...saved(id, null), quarantined };
};

export const listChecklists: Read<'checklist.list'> = async ({ db }) => {
  const rows = await checklists(db);
  return { rows, total: rows.length };
};

export const saveChecklist: Write<'checklist.save'> = async (context, { id, version, data }) => {
  const { db, newId } = context;
  const current = id === null ? null : await findChecklist(db, id);
  const next = nextVersion('checklist', id, version, current);
  checkDistinct('data.classes', data.classes);
  if (current && current.data.kind !== data.kind) {
    throw invalidField(
      'data.kind',
      data.kind,
      `${current.data.kind}, as checks on record followed this list; retire it and enter another`,
    );
  }
  const namesake = await db
    .selectFrom('checklist')
    .select('id')
    .where('name_key', '=', nameKey(data.name))
    .executeTakeFirst();
  if (namesake && namesake.id !== id) throw duplicateOf('checklist', 'data.name', data.name);
  if (current && isDeepStrictEqual(current.data, data)) return saved(current.id, current.version);
  const listId = id ?? newId();
  await append(context, [
    { kind: 'checklist saved', id: newId(), data: { id: listId, version: next, data } },
  ]);
  return saved(listId, next);
};

export const listToolRules: Read<'toolRule.list'> = async ({ db }) => {
  const rows = await toolRuleRows(db);
  return { rows, total: rows.length };
};

export const saveToolRule: Write<'toolRule.save'> = async (context, { id, version, data }) => {
  const { db, newId } = context;
  const rules = await toolRuleRows(db);
  const current = id === null ? null : rules.find((rule) => rule.id === id);
  const next = nextVersion('rule', id, version, current);
  if (current && current.data.class !== data.class) {
    throw invalidField(
      'data.class',
      data.class,
      `${current.data.class}: a rule stays with its class of tool`,
    );
  }
  const namesake = rules.find((rule) => rule.data.class === data.class);
  if (namesake && namesake.id !== id) {
    throw new RequestFailure(
      'duplicate',
      `There is a rule for the class "${data.class}" already; change that one`,
      [{ field: 'data.class', value: data.class, allowed: 'a class without a rule' }],
    );
  }
  checkFits(data);
  if (current && isDeepStrictEqual(current.data, data)) return saved(current.id, current.version);
  const ruleId = id ?? newId();
  await append(context, [
    { kind: 'tool rule saved', id: newId(), data: { id: ruleId, version: next, data } },
  ]);
  return saved(ruleId, next);
};

/** A value that no tool of the class can be held against would be lost. */
function checkFits(data: ToolRuleData): void {
  const hose = ['hoseUseMonths', 'hoseAgeMonths', 'hoseTestMonths', 'hoseTestFactor'] as const;
  for (const name of hose) {
    const value = data[name];
    if (data.class !== 'hose' && value !== null) {
      throw invalidField(`data.${name}`, String(value), `none for a ${data.class}: it is a rule for hoses`);
    }
  }
  if (data.hoseTestFactor !== null && data.hoseTestMonths === null) {
    throw invalidField('data.hoseTestMonths', '', 'needed with the test factor: how often the test is due');
  }
  if (data.class !== 'drive unit' && data.lineAgreement !== null) {
    throw invalidField(
      'data.lineAgreement',
      data.lineAgreement.text,
      `none for a ${data.class}: it is for drive units`,
    );
  }
}
