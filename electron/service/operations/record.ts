import { isDeepStrictEqual } from 'node:util';
import type { Kysely } from 'kysely';
import type { BatchUsed, BreakoutData, TighteningData } from '../../../core/contract/event.ts';
import type { SettingCard, SettingData, ToolSetInput, WorkKind } from '../../../core/contract/setting.ts';
import { jointOfSet } from '../../../core/joint/bolt-set.ts';
import { resolveJoint } from '../../../core/joint/resolve.ts';
import { PASS_PLANS } from '../../../core/sequence/plans.ts';
import { type Assessment, assess } from '../../../core/setting/assessment.ts';
import { recordFlags } from '../../../core/setting/flags.ts';
import type { CardInput } from '../../../core/setting/input.ts';
import { showEntered } from '../../../core/text/number.ts';
import type { Entered } from '../../../core/units/entered.ts';
import { CORE_VERSION } from '../../../core/version.ts';
import { append } from '../chain/append.ts';
import type { BatchUse, EventBody, EventDataByKind, Overload } from '../chain/events.ts';
import type { WriteContext } from '../context.ts';
import { invalidField, notFound } from '../failure.ts';
import { nameKey } from '../fold.ts';
import { lifeOfBreakout, lifeOfTightening } from '../life/events.ts';
import { orderFlagsOf, tighteningLife } from '../life/work.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { dateAtSite, toUtc } from '../time.ts';
import { gatherCardInput } from './card-input.ts';
import { competencesOf } from './competence.ts';
import { checkDistinct } from './distinct.ts';
import { type Overloaded, overloadsOf } from './overload.ts';
import { passesOfTightening } from './passes-of-tightening.ts';
import { knownTorque } from './torque.ts';

/** Records a tightening. Nothing that stands against it blocks it: it is kept and flagged. */
export async function recordTightening(context: WriteContext, data: TighteningData): Promise<string> {
  checkWhatWasReached(data);
  const facts = await gatherFacts(context, 'tightening', data);
  const passes = await passesOfTightening(context, data);
  const overloads = overloadsOf(facts.cardInput, { dialled: [data.dialled], torques: [data.torque] });
  const life = await tighteningLife(context, data, facts);
  const people = await competencesOf(context, data.personIds, data.method, facts.date);
  const id = context.newId();
  const told = lifeOfTightening(id, data.happenedAt, { data, life });
  await append(context, [
    {
      kind: 'tightening recorded',
      id,
      happenedAt: data.happenedAt,
      data: {
        ...facts.frozen,
        data,
        flags: [
          ...flagsOf(facts, data.boltsTightened),
          ...dialFlag(facts.setting, data.dialled),
          ...passes.flags,
          ...(told === null ? [] : await orderFlagsOf(context, data.jointId, told)),
          ...people.flags,
          ...overloads.map(({ flag }) => flag),
        ],
        overloads: overloads.map(kept),
        passTools: passes.tools,
        torque: knownTorque(data, facts.cardInput),
        life,
        competences: people.competences,
      },
    },
  ]);
  return id;
}

function checkWhatWasReached({ method, dialled, torque, load }: TighteningData): void {
  if (method === 'tensioner') {
    if (load === null) throw invalidField('data.load', '', 'needed for a tensioned joint');
    return;
  }
  if (dialled === null && torque === null) {
    throw invalidField('data.torque', '', 'needed when no pressure was dialled');
  }
}

/** Records a breakout, stud by stud, whatever the readings are. */
export async function recordBreakout(context: WriteContext, data: BreakoutData): Promise<string> {
  checkDistinct(
    'data.readings',
    data.readings.map(({ bolt }) => bolt),
  );
  const facts = await gatherFacts(context, 'breakout', data);
  const overloads = overloadsOf(facts.cardInput, {
    dialled: data.readings.map(({ dialled }) => dialled),
    torques: data.readings.map(({ torque }) => torque),
  });
  const people = await competencesOf(context, data.personIds, data.method, facts.date);
  const id = context.newId();
  await append(context, [
    {
      kind: 'breakout recorded',
      id,
      happenedAt: data.happenedAt,
      data: {
        ...facts.frozen,
        data,
        flags: [
          ...flagsOf(facts, null),
          ...unknownStuds(data.readings, facts.boltCount),
          ...(await orderFlagsOf(context, data.jointId, lifeOfBreakout(id, data.happenedAt, data))),
          ...people.flags,
          ...overloads.map(({ flag }) => flag),
        ],
        overloads: overloads.map(kept),
        torques: data.readings.map((reading) => knownTorque(reading, facts.cardInput)),
        competences: people.competences,
      },
    },
  ]);
  return id;
}

export const kept = ({ toolId, text }: Overloaded): Overload => ({ toolId, text });

export interface FollowedSetting extends Pick<EventDataByKind['setting issued'], 'overrides' | 'personId'> {
  readonly number: string;
  readonly input: SettingData;
  readonly card: SettingCard;
}

export interface Facts {
  readonly date: string;
  readonly cardInput: CardInput;
  /** What was really used, held against the checks; null while nobody told with what it was done. */
  readonly assessed: Pick<Assessment, 'findings'> | null;
  readonly tools: ToolSetInput;
  readonly setting: FollowedSetting | null;
  readonly boltCount: number | null;
  readonly frozen: { jointVersion: number; coreVersion: string; batches: BatchUse[] };
}

/** What every record of work tells. */
type Told = Pick<
  TighteningData,
  'jointId' | 'settingId' | 'happenedAt' | 'personIds' | 'tools' | 'method' | 'torqueTool' | 'boltSet'
> &
  Partial<Pick<TighteningData, 'batches'>>;

/** The joint, the tools as they stood and the setting that was followed; faults of the input are refused here. */
export async function gatherFacts(context: WriteContext, kind: WorkKind, data: Told): Promise<Facts> {
  const { db, site } = context;
  await checkPeople(db, data.personIds);
  const setting =
    data.settingId === null ? null : await followedSetting(db, data.settingId, kind, data.jointId);
  const date = dateAtSite(data.happenedAt, site.timeZone);
  const planId = setting?.input.planId ?? PASS_PLANS[0]?.id ?? '';
  const cardInput = await gatherCardInput(
    db,
    {
      jointId: data.jointId,
      kind,
      startsOn: date,
      endsOn: date,
      tools: data.tools,
      planId,
      boltSet: data.boltSet,
      method: data.method,
      torqueTool: data.torqueTool,
      withUncertainty: false,
    },
    toUtc(data.happenedAt),
    'data.',
  );
  return {
    date,
    cardInput,
    assessed: toolsKnown(data) ? assess(cardInput) : null,
    tools: data.tools,
    setting,
    boltCount: studsOf(cardInput, data.boltSet),
    frozen: {
      jointVersion: cardInput.joint.version,
      coreVersion: CORE_VERSION,
      batches: await batchesOf(context, batchesUsed(cardInput, data)),
    },
  };
}

/** A set that the joint does not have has no number of studs either. */
function studsOf({ joint, site }: CardInput, boltSet: number): number | null {
  const data = jointOfSet(joint.data, boltSet);
  return data === null ? null : resolveJoint(data, site).boltCount;
}

function toolsKnown({ method, torqueTool, tools }: Told): boolean {
  return method === 'hydraulic wrench' ? hasTools(tools) : method === 'tensioner' || torqueTool !== null;
}

const hasTools = (tools: ToolSetInput) =>
  [tools.driveId, tools.cassetteId, tools.pumpId, tools.gaugeId].some((id) => id !== null) ||
  tools.reducerIds.length + tools.hoseIds.length > 0;

async function checkPeople(db: Kysely<RegisterSchema>, personIds: readonly string[]): Promise<void> {
  checkDistinct('data.personIds', personIds);
  const known = await db
    .selectFrom('person')
    .select('id')
    .where('id', 'in', [...personIds])
    .execute();
  const missing = personIds.find((id) => !known.some((person) => person.id === id));
  if (missing !== undefined) throw notFound('person', 'data.personIds', missing);
}

async function followedSetting(
  db: Kysely<RegisterSchema>,
  id: string,
  kind: WorkKind,
  jointId: string,
): Promise<FollowedSetting> {
  const row = await db
    .selectFrom('setting')
    .innerJoin('event', 'event.id', 'setting.id')
    .select(['setting.kind', 'setting.joint_id', 'event.body'])
    .where('setting.id', '=', id)
    .executeTakeFirst();
  if (!row) throw notFound('setting', 'data.settingId', id);
  const setting = (JSON.parse(row.body) as EventBody).data as EventDataByKind['setting issued'];
  if (row.joint_id !== jointId) {
    throw invalidField(
      'data.settingId',
      setting.number,
      `a setting of this joint; ${setting.number} is for ${setting.card.tag}`,
    );
  }
  if (row.kind !== kind) {
    throw invalidField(
      'data.settingId',
      setting.number,
      `a setting for ${kind}; ${setting.number} is for ${row.kind}`,
    );
  }
  return setting;
}

/** What stands against a record that is kept all the same. */
export function flagsOf(facts: Facts, boltsDone: number | null): string[] {
  const { assessed, setting, boltCount } = facts;
  const { overrides = [] } = setting ?? {};
  const flags = recordFlags({
    assessed,
    settingIssued: setting !== null,
    boltsDone,
    boltCount,
    setAside: setting && { setting: setting.number, codes: overrides.map(({ code }) => code) },
  });
  if (assessed === null) flags.push('tools not recorded');
  if (setting === null) return flags;
  const { number, input } = setting;
  if (!isDeepStrictEqual(comparable(input.tools), comparable(facts.tools)))
    flags.push(`other tools than setting ${number} names`);
  if (input.method !== facts.cardInput.method) {
    flags.push(`done with a ${facts.cardInput.method}; setting ${number} is for a ${input.method}`);
  }
  if (input.boltSet !== facts.cardInput.boltSet) flags.push(`other bolt set than setting ${number} is for`);
  if (facts.date < input.startsOn || facts.date > input.endsOn) {
    flags.push(`done on ${facts.date}; setting ${number} is for ${input.startsOn} to ${input.endsOn}`);
  }
  if (setting.card.jointVersion !== facts.frozen.jointVersion) {
    flags.push(`the joint was edited after setting ${number} was issued`);
  }
  return flags;
}

/** Hoses and couplers have no order; reducers do. A setting issued before a kind of part existed names none of it. */
const comparable = ({ couplerIds = [], counterholdId = null, further = [], ...tools }: ToolSetInput) => ({
  ...tools,
  hoseIds: tools.hoseIds.toSorted(),
  couplerIds: couplerIds.toSorted(),
  counterholdId,
  further: further.map((wrench) => ({ ...wrench, hoseIds: wrench.hoseIds.toSorted() })),
});

/** Two pressures are told apart from here on; below, they are the same number in two units. */
const SAME_PRESSURE = 1e-3;

/** Says that another pressure was dialled than the setting gives for this pass; the last one where none is named. */
export function dialFlag(
  setting: FollowedSetting | null,
  dialled: Entered | null,
  dial = setting?.card.dial ?? null,
): string[] {
  if (setting === null || dial === null || dialled === null) return [];
  if (Math.abs(dialled.si - dial.pressure) <= SAME_PRESSURE * dial.pressure) return [];
  const said = showEntered({ text: String(dial.value), unit: dial.unit });
  return [`dialled ${showEntered(dialled)}; setting ${setting.number} says ${said}`];
}

function unknownStuds(readings: BreakoutData['readings'], boltCount: number | null): string[] {
  if (boltCount === null) return [];
  return readings
    .filter(({ bolt }) => bolt > boltCount)
    .map(({ bolt }) => `stud ${bolt} recorded; the joint has ${boltCount}`);
}

/** So that a batch can be traced to every joint it went on: as recorded, else as the joint's data name it. */
function batchesUsed({ joint }: CardInput, data: Told): BatchUsed[] {
  const recorded = data.batches ?? [];
  const { lubricant, gasket, furtherGaskets } = jointOfSet(joint.data, data.boltSet) ?? joint.data;
  const planned: BatchUsed[] =
    lubricant === null ? [] : [{ kind: 'lubricant', name: lubricant.name, number: lubricant.batch }];
  for (const { type, batch } of gasket === null ? [] : [gasket, ...furtherGaskets]) {
    planned.push({ kind: 'gasket', name: type, number: batch });
  }
  const known = [
    ...recorded,
    ...planned.filter(({ kind, number }) => number !== '' && !recorded.some((one) => one.kind === kind)),
  ];
  // Two gaskets of a joint may come from one batch.
  return known.filter((one, index) => known.findIndex((other) => isDeepStrictEqual(one, other)) === index);
}

async function batchesOf({ db, newId }: WriteContext, used: readonly BatchUsed[]): Promise<BatchUse[]> {
  const batches: BatchUse[] = [];
  for (const batch of used) {
    const known = await db
      .selectFrom('batch')
      .select('id')
      .where('kind', '=', batch.kind)
      .where('name_key', '=', nameKey(batch.name))
      .where('number_key', '=', nameKey(batch.number))
      .executeTakeFirst();
    batches.push({ id: known?.id ?? newId(), ...batch });
  }
  return batches;
}
