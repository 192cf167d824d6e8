import { isDeepStrictEqual } from 'node:util';
import type { ConfirmData, PassPlanData, PlanRow } from '../../../core/contract/site.ts';
import { shippedPlanNamed, shippedRowNamed } from '../../../core/reference/shipped-names.ts';
import { tableCells } from '../../../core/reference/table-cells.ts';
import { PASS_PLANS } from '../../../core/sequence/plans.ts';
import { append } from '../chain/append.ts';
import type { WriteContext } from '../context.ts';
import { invalidField, notFound, RequestFailure } from '../failure.ts';
import { nameKey } from '../fold.ts';
import { checkDistinct } from '../operations/distinct.ts';
import { duplicateOf, nextVersion, saved } from '../operations/edit.ts';
import { checkPerson } from '../operations/who-and-when.ts';
import {
  confirmations,
  findSitePlan,
  sitePlans,
  siteRowByName,
  siteRows,
} from '../repositories/site-tables.ts';
import type { Read, Write } from './handler.ts';

export const listSiteRows: Read<'siteRow.list'> = async ({ db }, input) => {
  const rows = await siteRows(db, input);
  return { rows, total: rows.length };
};

export const saveSiteRow: Write<'siteRow.save'> = async (context, { id, version, data }) => {
  const { db, newId } = context;
  const current =
    id === null ? null : (await siteRows(db, { kind: null, text: '' })).find((row) => row.id === id);
  const next = nextVersion('row', id, version, current);
  const shipped = shippedRowNamed(data.kind, data.key);
  if (shipped !== null) throw shippedAlready(`${data.kind} table`, 'data.key', data.key, shipped);
  if (current && (current.data.kind !== data.kind || current.data.key !== data.key)) {
    throw invalidField(
      current.data.kind === data.kind ? 'data.key' : 'data.kind',
      current.data.kind === data.kind ? data.key : data.kind,
      `"${current.data.key}" in the ${current.data.kind} table, as joints may name it; retire this row and add another`,
    );
  }
  const namesake = await siteRowByName(db, data.kind, data.key);
  if (namesake && namesake.id !== id) throw duplicateOf(data.kind, 'data.key', data.key);
  if (current && isDeepStrictEqual(current.data, data)) return saved(current.id, current.version);
  const rowId = id ?? newId();
  await append(context, [{ kind: 'site row saved', id: newId(), data: { id: rowId, version: next, data } }]);
  return saved(rowId, next);
};

export const listPlans: Read<'plan.list'> = async ({ db }) => {
  const rows: PlanRow[] = [...PASS_PLANS.map(shippedPlan), ...(await sitePlans(db))];
  return { rows, total: rows.length };
};

function shippedPlan({ id, name, source, steps, checks = [] }: (typeof PASS_PLANS)[number]): PlanRow {
  return {
    origin: 'shipped',
    id,
    name,
    source,
    steps: steps.map(({ wait: _, ...step }) => step),
    checks: [...checks],
  };
}

/** An edit makes a new version that nobody has approved yet, also of a plan that was approved before. */
export const savePlan: Write<'plan.save'> = async (context, { id, version, data }) => {
  const { db, newId } = context;
  const current = id === null ? null : await findSitePlan(db, id);
  if (id !== null && current === null) {
    const shipped = PASS_PLANS.find((plan) => plan.id === id);
    if (shipped) throw shippedAlready('pass plans', 'id', id, shipped.name);
  }
  const next = nextVersion('pass plan', id, version, current);
  await checkPlanName(context, data, id);
  if (current && isDeepStrictEqual(current.data, data)) return saved(current.id, current.version);
  const planId = id ?? newId();
  await append(context, [
    { kind: 'pass plan saved', id: newId(), data: { id: planId, version: next, data } },
  ]);
  return saved(planId, next);
};

async function checkPlanName({ db }: WriteContext, { name }: PassPlanData, id: string | null): Promise<void> {
  const shipped = shippedPlanNamed(name);
  if (shipped !== null) throw shippedAlready('pass plans', 'data.name', name, shipped);
  const namesake = await db
    .selectFrom('pass_plan')
    .select('id')
    .where('name_key', '=', nameKey(name))
    .executeTakeFirst();
  if (namesake && namesake.id !== id) throw duplicateOf('pass plan', 'data.name', name);
}

/** Approves the version a person has seen; approving twice changes nothing. */
export const approvePlan: Write<'plan.approve'> = async (context, { id, version, personId }) => {
  const { db, newId } = context;
  const current = await findSitePlan(db, id);
  if (current === null) throw notFound('pass plan', 'id', id);
  nextVersion('pass plan', id, version, current);
  await checkPerson(context, 'personId', personId);
  if (current.data.retired) throw invalidField('id', current.name, 'a plan that is not retired');
  if (current.approved !== null) {
    throw new RequestFailure(
      'conflict',
      `${current.approved.person} has approved this version already; nothing was written`,
      [{ field: 'version', value: String(version), allowed: 'a version nobody has approved yet' }],
    );
  }
  await append(context, [{ kind: 'pass plan approved', id: newId(), data: { id, version, personId } }]);
  return saved(id, version);
};

export const listConfirmations: Read<'tableValue.list'> = async ({ db }) => {
  const rows = await confirmations(db);
  return { rows, total: rows.length };
};

export const confirmTableValues: Write<'tableValue.confirm'> = async (context, { data }) =>
  saved(await confirmValues(context, data), null);

/** Keeps that a person held values of a shipped table against a source of their own. */
export async function confirmValues(context: WriteContext, data: ConfirmData): Promise<string> {
  const { table, key, values, personId } = data;
  await checkPerson(context, 'data.personId', personId);
  checkDistinct(
    'data.values',
    values.map(({ field }) => field),
  );
  const cells = tableCells(table, key);
  if (cells.length === 0) throw notFound('table row', 'data.key', `${table}, ${key}`);
  values.forEach(({ field, value }, index) => {
    const cell = cells.find((one) => one.field === field);
    if (cell === undefined) {
      const allowed = `one of: ${cells.map((one) => one.field).join(', ')}`;
      throw invalidField(`data.values.${index}.field`, field, allowed);
    }
    if (cell.value !== value) {
      throw invalidField(`data.values.${index}.value`, value, `${cell.value}, as the table has it now`);
    }
  });
  const id = context.newId();
  await append(context, [{ kind: 'table values confirmed', id, data: { data } }]);
  return id;
}

function shippedAlready(where: string, field: string, value: string, name: string): RequestFailure {
  return new RequestFailure(
    'duplicate',
    `"${name}" comes with the program; nothing that ships is edited in place. Give the site's own another name`,
    [{ field, value, allowed: `a name that is not in the shipped ${where}` }],
  );
}
