import { isDeepStrictEqual } from 'node:util';
import { chartFinding } from '../../../core/breakout/history.ts';
import type { JointData } from '../../../core/contract/joint.ts';
import { resolveJoint } from '../../../core/joint/resolve.ts';
import { downsample } from '../../../core/series/downsample.ts';
import { append } from '../chain/append.ts';
import type { WriteContext } from '../context.ts';
import { invalidField, notFound, RequestFailure } from '../failure.ts';
import { nameKey } from '../fold.ts';
import { duplicateOf, nextVersion, saved } from '../operations/edit.ts';
import { attachmentsOf } from '../repositories/attachment.ts';
import { chartPoints } from '../repositories/chart.ts';
import { historyPage } from '../repositories/history.ts';
import { findJoint, jointIdByTag, jointPage } from '../repositories/joint.ts';
import { siteRowByName, siteTablesFor } from '../repositories/site-tables.ts';
import type { Read, Write } from './handler.ts';

/** Columns of the chart's drawing; two points each at most. */
const CHART_WIDTH = 300;

export const listJoints: Read<'joint.list'> = ({ db }, input) => jointPage(db, input);

export const getJoint: Read<'joint.get'> = async ({ db }, { id }) => {
  const joint = await findJoint(db, id);
  if (joint === null) throw notFound('joint', 'id', id);
  const resolved = resolveJoint(joint.data, await siteTablesFor(db, joint.data));
  return {
    id,
    version: joint.version,
    unitName: joint.unitName,
    data: joint.data,
    resolved: [...resolved.values()],
    boltCount: resolved.boltCount,
  };
};

export const saveJoint: Write<'joint.save'> = async (context, { id, version, data }) => {
  const { db, newId } = context;
  const current = id === null ? null : await findJoint(db, id);
  const next = nextVersion('joint', id, version, current);
  const unit = await db
    .selectFrom('plant_unit')
    .select('id')
    .where('id', '=', data.unitId)
    .executeTakeFirst();
  if (!unit) throw notFound('unit', 'data.unitId', data.unitId);
  await checkSiteFlange(context, data);
  await checkPhoto(context, id, data);
  const namesake = await jointIdByTag(db, nameKey(data.tag));
  if (namesake !== null && namesake !== id) throw duplicateOf('joint', 'data.tag', data.tag);
  if (current && isDeepStrictEqual(current.data, data)) return saved(current.id, current.version);
  const jointId = id ?? newId();
  await append(context, [
    { kind: 'joint saved', id: newId(), data: { id: jointId, version: next, data, importId: null } },
  ]);
  return saved(jointId, next);
};

async function checkSiteFlange({ db }: WriteContext, { flange }: JointData): Promise<void> {
  if (flange.kind !== 'custom' || flange.siteRow === null) return;
  const row = await siteRowByName(db, 'flange', flange.siteRow);
  if (!row) {
    throw new RequestFailure('not_found', `The site’s flange table has no row "${flange.siteRow}"`, [
      { field: 'data.flange.siteRow', value: flange.siteRow, allowed: 'a row of the site’s flange table' },
    ]);
  }
}

/** A joint's photo is one of the pictures kept with it, so that it lies beside the register under its hash. */
async function checkPhoto({ db }: WriteContext, id: string | null, { identity }: JointData): Promise<void> {
  if (identity.photo === null) return;
  const files = id === null ? [] : await attachmentsOf(db, { kind: 'joint', id });
  const kept = files.find(({ hash }) => hash === identity.photo);
  if (kept?.mediaType.startsWith('image/')) return;
  throw invalidField('data.identity.photo', identity.photo, 'a picture that is kept with this joint');
}

export const jointHistory: Read<'joint.history'> = async ({ db }, input) => {
  if ((await findJoint(db, input.id)) === null) throw notFound('joint', 'id', input.id);
  return historyPage(db, input);
};

export const jointChart: Read<'joint.chart'> = async ({ db }, { id }) => {
  if ((await findJoint(db, id)) === null) throw notFound('joint', 'id', id);
  const all = await chartPoints(db, id);
  const points = downsample(all, CHART_WIDTH);
  return { finding: chartFinding(all), points, shown: points.length, total: all.length };
};
