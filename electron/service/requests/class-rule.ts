import { isDeepStrictEqual } from 'node:util';
import type { ClassRuleRow } from '../../../core/contract/life.ts';
import { CLASS_RULES } from '../../../core/joint/life/class-rules.ts';
import { append } from '../chain/append.ts';
import { invalidField } from '../failure.ts';
import { nameKey } from '../fold.ts';
import { duplicateOf, nextVersion, saved } from '../operations/edit.ts';
import { classRules } from '../repositories/class-rule.ts';
import type { Read, Write } from './handler.ts';

export const listClassRules: Read<'classRule.list'> = async ({ db }) => {
  const shipped: ClassRuleRow[] = Object.values(CLASS_RULES).map((data) => ({
    origin: 'shipped',
    id: null,
    data,
  }));
  const rows = [...shipped, ...(await classRules(db))];
  return { rows, total: rows.length };
};

/** A rule changed later counts for steps from then on; what was held against the old one stays as it was recorded. */
export const saveClassRule: Write<'classRule.save'> = async (context, { id, version, data }) => {
  const { db, newId } = context;
  const rules = await classRules(db);
  const current = id === null ? null : rules.find((rule) => rule.id === id);
  const next = nextVersion('class', id, version, current);
  if (current && current.data.level !== data.level) {
    throw invalidField(
      'data.level',
      data.level,
      `${current.data.level}: a class stays on the level its joints were assessed at; retire it and enter another`,
    );
  }
  const key = nameKey(data.name);
  const shipped = Object.values(CLASS_RULES).some(({ name }) => nameKey(name) === key);
  const namesake = rules.find((rule) => nameKey(rule.data.name) === key);
  if (shipped || (namesake && namesake.id !== id)) throw duplicateOf('class', 'data.name', data.name);
  if (current && isDeepStrictEqual(current.data, data)) return saved(current.id, current.version);
  const ruleId = id ?? newId();
  await append(context, [
    { kind: 'class rule saved', id: newId(), data: { id: ruleId, version: next, data } },
  ]);
  return saved(ruleId, next);
};
