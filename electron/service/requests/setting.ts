import { sql } from 'kysely';
import type { Override } from '../../../core/contract/access.ts';
import type { Dial, SettingData } from '../../../core/contract/setting.ts';
import { findPlan } from '../../../core/sequence/plans.ts';
import { settingCard } from '../../../core/setting/card.ts';
import { recompute } from '../../../core/setting/recompute.ts';
import { suitsOf } from '../../../core/setting/suits.ts';
import { freeze } from '../../../core/units/round.ts';
import { UNITS, type Unit } from '../../../core/units/units.ts';
import { append } from '../chain/append.ts';
import type { EventBody, EventDataByKind } from '../chain/events.ts';
import type { ReadContext, WriteContext } from '../context.ts';
import { invalidField, notFound } from '../failure.ts';
import { gatherCandidates, gatherCardInput } from '../operations/card-input.ts';
import { competenceOf } from '../operations/competence.ts';
import { saved } from '../operations/edit.ts';
import { refusalsSetAside } from '../operations/overrides.ts';
import { checkPerson } from '../operations/who-and-when.ts';
import { findSitePlan } from '../repositories/site-tables.ts';
import type { Read, Write } from './handler.ts';

async function checkPlan({ db }: ReadContext, input: SettingData, field = ''): Promise<void> {
  if (findPlan(input.planId) === null && (await findSitePlan(db, input.planId)) === null) {
    throw invalidField(`${field}planId`, input.planId, 'a pass plan of the program or of the site');
  }
}

export const computeSetting: Read<'setting.compute'> = async (context, input) => {
  await checkPlan(context, input);
  return settingCard(await gatherCardInput(context.db, input));
};

/** Looked up for the choice of tools; nothing is recorded. */
export const suitTools: Read<'setting.suits'> = async (context, input) => {
  await checkPlan(context, input);
  const { input: given, candidates } = await gatherCandidates(context.db, input);
  return suitsOf(given, candidates);
};

export const issueSetting: Write<'setting.issue'> = async (context, { data, personId, overrides }) => {
  await checkPlan(context, data, 'data.');
  const id = await issue(context, data, personId, overrides);
  return saved(id, null);
};

/**
 * Computes the card again from the register as it stands and freezes it with what it was computed from. A standing
 * refusal blocks it, unless somebody entitled to it sets it aside with a reason.
 */
export async function issue(
  context: WriteContext,
  input: SettingData,
  personId: string,
  overrides: readonly Override[] = [],
): Promise<string> {
  const { db, newId, actor } = context;
  await checkPerson(context, 'personId', personId);
  const cardInput = await gatherCardInput(db, input, null, 'data.');
  const card = settingCard(cardInput);
  const aside = refusalsSetAside(context, card, overrides);
  const issuerCompetence =
    actor === null ? null : await competenceOf(db, personId, input.method, input.startsOn);
  const id = newId();
  const number = await nextNumber(context);
  await append(context, [
    {
      kind: 'setting issued',
      id,
      data: {
        number,
        personId,
        input,
        cardInput: { ...cardInput, onRegister: { cassettes: [], reducers: [] } },
        card: freeze(card),
        overrides: aside,
        issuerCompetence,
      },
    },
  ]);
  return id;
}

/** Numbers run on over the whole register: S-0001, S-0002, … */
async function nextNumber({ db }: WriteContext): Promise<string> {
  const { last } = await db
    .selectFrom('setting')
    .select(sql<number | null>`max(cast(substr(number, 3) as integer))`.as('last'))
    .executeTakeFirstOrThrow();
  return `S-${String((last ?? 0) + 1).padStart(4, '0')}`;
}

export const getSetting: Read<'setting.get'> = async ({ db }, { id }) => {
  const row = await db
    .selectFrom('setting')
    .innerJoin('event', 'event.id', 'setting.id')
    .innerJoin('person', 'person.id', 'setting.issued_by')
    .select([
      'setting.number',
      'setting.issued_at as issuedAt',
      'person.name as issuedBy',
      'event.hash',
      'event.body',
    ])
    .where('setting.id', '=', id)
    .executeTakeFirst();
  if (!row) throw notFound('setting', 'id', id);
  const { body, ...setting } = row;
  const { input, card, overrides, issuerCompetence } = (JSON.parse(body) as EventBody)
    .data as EventDataByKind['setting issued'];
  return {
    id,
    ...setting,
    input,
    card,
    overrides: (overrides ?? []).map((aside) => ({ ...aside, findings: [...aside.findings] })),
    issuerCompetence: issuerCompetence ?? null,
  };
};

export const recomputeSetting: Read<'setting.recompute'> = async ({ db }, { id }) => {
  const row = await db
    .selectFrom('setting')
    .innerJoin('event', 'event.id', 'setting.id')
    .select('event.body')
    .where('setting.id', '=', id)
    .executeTakeFirst();
  if (!row) throw notFound('setting', 'id', id);
  const { cardInput, card } = (JSON.parse(row.body) as EventBody).data as EventDataByKind['setting issued'];
  return recompute(cardInput, card);
};

export const listSettings: Read<'setting.list'> = async ({ db }, { jointId, page, pageSize }) => {
  const matching = db
    .selectFrom('setting')
    .$if(jointId !== null, (query) => query.where('setting.joint_id', '=', jointId));
  const { total } = await matching
    .select(({ fn }) => fn.countAll<number>().as('total'))
    .executeTakeFirstOrThrow();
  const rows = await matching
    .innerJoin('joint', 'joint.id', 'setting.joint_id')
    .innerJoin('person', 'person.id', 'setting.issued_by')
    .select(({ exists, or, selectFrom, val }) => [
      'setting.id',
      'setting.number',
      'setting.kind',
      'joint.tag',
      'setting.joint_id as jointId',
      'setting.starts_on as startsOn',
      'setting.ends_on as endsOn',
      'setting.issued_at as issuedAt',
      'person.name as issuedBy',
      'setting.dial_value',
      'setting.dial_unit',
      'setting.dial_pa',
      or([
        exists(selectFrom('tightening').select(val(1).as('one')).whereRef('setting_id', '=', 'setting.id')),
        exists(selectFrom('breakout').select(val(1).as('one')).whereRef('setting_id', '=', 'setting.id')),
      ])
        .$castTo<number>()
        .as('recorded'),
      selectFrom('setting_override')
        .select(({ fn }) => fn.countAll<number>().as('count'))
        .whereRef('setting_id', '=', 'setting.id')
        .as('overrides'),
    ])
    .orderBy('setting.issued_at', 'desc')
    .orderBy('setting.number', 'desc')
    .limit(pageSize)
    .offset((page - 1) * pageSize)
    .execute();
  return {
    rows: rows.map(({ dial_value, dial_unit, dial_pa, recorded, overrides, ...row }) => ({
      ...row,
      overrides: overrides ?? 0,
      dial: dialOf(dial_value, dial_unit, dial_pa),
      recorded: recorded === 1,
    })),
    total,
  };
};

function dialOf(value: number | null, unit: string | null, pressure: number | null): Dial | null {
  if (value === null || unit === null || pressure === null) return null;
  if (!Object.hasOwn(UNITS, unit)) throw new Error(`setting with the unknown unit ${unit}`);
  return { value, unit: unit as Unit, pressure };
}
