import { sql } from 'kysely';
import { forecastMany, type OneOfMany } from '../../../core/breakout/forecast-many.ts';
import { openingKey, yearsBetween } from '../../../core/breakout/recorded.ts';
import type { ForecastRow, ForecastRun } from '../../../core/contract/forecast-list.ts';
import type { ParsedInput } from '../../../core/contract/requests.ts';
import type { ReadContext } from '../context.ts';
import { invalidField, notFound } from '../failure.ts';
import { likePatterns } from '../fold.ts';
import { toolsWithCertificates } from '../repositories/tool.ts';
import { startOfDay, todayAt } from '../time.ts';
import { installedOf } from './forecast.ts';
import { capacityOn } from './history.ts';
import { allSiteTables, type JointRow, jointsById, setBasis, traitsOf } from './joints.ts';
import { plantKnowledge } from './plant.ts';

/** Joints of a run and the drive unit they are held against. */
export interface LookedAt {
  readonly joints: readonly string[];
  readonly drive: ForecastRun['drive'];
}

export async function jointsToLookAt(
  context: ReadContext,
  { unitId, text, driveId }: ParsedInput<'forecasts.start'>,
): Promise<LookedAt> {
  const { db } = context;
  let query = db.selectFrom('joint').select('joint.id').orderBy('joint.tag_sort');
  if (unitId !== null) {
    const unit = await db.selectFrom('plant_unit').select('id').where('id', '=', unitId).executeTakeFirst();
    if (!unit) throw notFound('plant unit', 'unitId', unitId);
    query = query.where('joint.unit_id', '=', unitId);
  }
  for (const pattern of likePatterns(text)) {
    query = query.where(sql<boolean>`joint.search like ${pattern} escape '\\'`);
  }
  const rows = await query.execute();
  return {
    joints: rows.map(({ id }) => id),
    drive: driveId === null ? null : await driveOf(context, driveId),
  };
}

async function driveOf(context: ReadContext, driveId: string) {
  const [tool] = await toolsWithCertificates(context.db, { ids: [driveId] });
  if (tool === undefined) throw notFound('tool', 'driveId', driveId);
  const { number, properties } = tool.data;
  if (properties.class !== 'drive unit') throw invalidField('driveId', number, 'a drive unit');
  return { number, capacity: capacityOn(tool, todayAt(context)) };
}

/** Joints read at one go, and the time after which others get their turn. */
const JOINTS_AT_ONCE = 200;
const TURN_MS = 25;

/** Short forecasts in the order of the joints, in pieces small enough to be stopped between. */
export async function* forecastsOf(
  context: ReadContext,
  { joints, drive }: LookedAt,
): AsyncGenerator<ForecastRow[]> {
  const { db } = context;
  const { plant, installed } = await plantKnowledge(db);
  const site = await allSiteTables(db);
  const one = forecastMany(plant);
  const now = startOfDay(todayAt(context), context.site.timeZone);
  for (let from = 0; from < joints.length; from += JOINTS_AT_ONCE) {
    const ids = joints.slice(from, from + JOINTS_AT_ONCE);
    const found = await jointsById(db, ids);
    let rows: ForecastRow[] = [];
    let turn = performance.now();
    for (const joint of ids.flatMap((id) => found.get(id) ?? [])) {
      for (let boltSet = 0; boltSet <= joint.data.boltSets.length; boltSet += 1) {
        rows.push(rowOf(joint, boltSet));
      }
      if (performance.now() - turn < TURN_MS) continue;
      yield rows;
      rows = [];
      await new Promise((resolve) => setImmediate(resolve));
      turn = performance.now();
    }
    yield rows;
  }

  function rowOf(joint: JointRow, boltSet: number): ForecastRow {
    const key = openingKey(joint.id, boltSet);
    const work = installed.get(key) ?? null;
    const years = work === null ? null : yearsBetween(work.happenedAt, now);
    const traits = traitsOf(joint.data, boltSet, null, years);
    const set = setBasis(joint.id, joint.data, boltSet, site);
    const bolts = set?.basis.joint.boltCount ?? null;
    const standing = set === null ? null : installedOf(set, work);
    const forecast = one(key, traits, bolts);
    return {
      jointId: joint.id,
      boltSet,
      tag: joint.tag,
      setName: boltSet === 0 ? null : (joint.data.boltSets[boltSet - 1]?.name ?? null),
      unit: joint.unitName,
      bolts,
      installed: standing?.torque ?? null,
      installedSource: standing?.source ?? 'not known',
      ...figures(forecast, standing?.torque ?? null, drive?.capacity ?? null),
      missing: [
        ...(bolts === null ? ['number of bolts'] : []),
        ...(standing === null ? ['installed torque'] : []),
        ...(drive !== null && drive.capacity === null ? [`what ${drive.number} gives`] : []),
      ],
      className: forecast.of.rule.words(traits),
    };
  }
}

function figures({ evidence, forecast, seized }: OneOfMany, torque: number | null, capacity: number | null) {
  const worst = forecast?.worst ?? null;
  return {
    sufficiency: evidence.sufficiency,
    ownOpenings: evidence.ownOpenings,
    classJoints: evidence.classJoints,
    median: forecast?.median ?? null,
    worst,
    worstTorque: worst === null || torque === null ? null : worst * torque,
    tooSmall:
      forecast === null || torque === null || capacity === null
        ? null
        : forecast.worstAbove(capacity / torque),
    seized: seized?.expected ?? null,
  };
}
