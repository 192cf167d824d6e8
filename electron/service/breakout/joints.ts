import type { Kysely } from 'kysely';
import { type OpeningTraits, temperatureBandOf } from '../../../core/breakout/classes.ts';
import { cleanRatio, nearWidth } from '../../../core/breakout/clean.ts';
import type { LooseningFacts } from '../../../core/breakout/opening-view.ts';
import type { JointData } from '../../../core/contract/joint.ts';
import type { SiteFlange, SiteGrade } from '../../../core/contract/site.ts';
import { jointOfSet } from '../../../core/joint/bolt-set.ts';
import type { SiteTables } from '../../../core/joint/site-tables.ts';
import { jointLimits } from '../../../core/recall/joint-limits.ts';
import { type Basis, basisOf, loadOf } from '../../../core/setting/basis.ts';
import { chunks } from '../register/insert.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { confirmations, siteRows } from '../repositories/site-tables.ts';

type Db = Kysely<RegisterSchema>;

export interface JointRow {
  readonly id: string;
  readonly tag: string;
  readonly unitName: string;
  readonly data: JointData;
}

const JOINTS_AT_ONCE = 500;

/** Joints by id, as their data stand now. */
export async function jointsById(db: Db, ids: readonly string[]): Promise<Map<string, JointRow>> {
  const found = new Map<string, JointRow>();
  for (const part of chunks(ids, JOINTS_AT_ONCE)) {
    const rows = await db
      .selectFrom('joint')
      .innerJoin('plant_unit', 'plant_unit.id', 'joint.unit_id')
      .select(['joint.id', 'joint.tag', 'joint.data', 'plant_unit.name as unitName'])
      .where('joint.id', 'in', part)
      .execute();
    for (const row of rows) found.set(row.id, { ...row, data: JSON.parse(row.data) as JointData });
    await new Promise((resolve) => setImmediate(resolve));
  }
  return found;
}

/** All of the site's own tables, for work on many joints. */
export async function allSiteTables(db: Db): Promise<SiteTables> {
  const rows = (await siteRows(db, { kind: null, text: '' })).map(({ data }) => data);
  return {
    flanges: rows.filter((row): row is SiteFlange => row.kind === 'flange'),
    grades: rows.filter((row): row is SiteGrade => row.kind === 'stud grade'),
    plan: null,
    confirmations: await confirmations(db),
  };
}

/** What a bolt set's openings are looked at together with others by; service and temperature as the joint's data say now. */
export function traitsOf(
  data: JointData,
  boltSet: number,
  lubricant: string | null,
  years: number | null,
): OpeningTraits {
  const set = jointOfSet(data, boltSet) ?? data;
  return {
    service: data.service,
    band: temperatureBandOf(data.serviceTemperature?.si ?? null),
    lubricant: lubricant ?? set.lubricant?.name ?? null,
    years,
  };
}

/** A bolt set as its loosening sees it. */
export interface SetBasis {
  readonly data: JointData;
  readonly basis: Basis;
}

export function setBasis(id: string, data: JointData, boltSet: number, site: SiteTables): SetBasis | null {
  const set = jointOfSet(data, boltSet);
  if (set === null) return null;
  return { data: set, basis: basisOf({ joint: { id, version: 1, data: set }, site }) };
}

const NO_FACTS: LooseningFacts = {
  clean: null,
  near: nearWidth(null),
  thread: null,
  friction: null,
  loadOf: () => null,
  least: null,
};

export function looseningFacts(set: SetBasis | null): LooseningFacts {
  if (set === null) return NO_FACTS;
  const { data, basis } = set;
  const { joint, friction } = basis;
  const thread = joint.thread?.value ?? null;
  const nutFactor = friction.nutFactor?.value ?? null;
  const { pair, bearingDiameter } = friction;
  const least = jointLimits(data, basis)
    .filter(({ side }) => side === 'least')
    .toSorted((a, b) => b.limit - a.limit)[0];
  return {
    clean:
      thread === null || nutFactor === null ? null : cleanRatio(thread.pitch, nutFactor, thread.diameter),
    near: nearWidth(friction.scatter),
    thread,
    friction:
      pair === null || bearingDiameter === null
        ? null
        : { thread: pair.thread, bearing: pair.bearing, bearingDiameter },
    loadOf: (torque) => loadOf(basis, torque),
    least: least === undefined ? null : { load: least.limit, name: least.name },
  };
}
