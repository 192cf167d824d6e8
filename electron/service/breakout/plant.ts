import { type Kysely, sql } from 'kysely';
import { type PlantOpenings, plantOpenings } from '../../../core/breakout/plant.ts';
import { plantOpening, type RecordedOpening, yearsBetween } from '../../../core/breakout/recorded.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { type JointRow, jointsById, traitsOf } from './joints.ts';
import { type InstalledNow, workedJoints, workOf } from './openings.ts';

type Db = Kysely<RegisterSchema>;

/** Everything a plant's openings say, read once for each state of the register. */
export interface PlantKnowledge {
  readonly openings: readonly RecordedOpening[];
  readonly installed: ReadonlyMap<string, InstalledNow>;
  /** Joints that were ever opened. */
  readonly joints: ReadonlyMap<string, JointRow>;
  readonly plant: PlantOpenings;
}

interface Kept {
  readonly newest: number;
  readonly knowledge: Promise<PlantKnowledge>;
}

const kept = new WeakMap<Db, Kept>();

/** Openings of the whole plant. They change with the register's events only: until the next one they are kept. */
export async function plantKnowledge(db: Db): Promise<PlantKnowledge> {
  const newest = await newestEvent(db);
  const known = kept.get(db);
  if (known?.newest === newest) return known.knowledge;
  const knowledge = read(db);
  kept.set(db, { newest, knowledge });
  // What failed is asked for again the next time.
  knowledge.catch(() => kept.delete(db));
  return knowledge;
}

/** Events are never deleted, so the newest row's number tells of every change. */
async function newestEvent(db: Db): Promise<number> {
  const row = await db
    .selectFrom('event')
    .select(sql<number>`coalesce(max(event.rowid), 0)`.as('newest'))
    .executeTakeFirstOrThrow();
  return row.newest;
}

async function read(db: Db): Promise<PlantKnowledge> {
  const { openings, installed } = await workOf(db, await workedJoints(db));
  const joints = await jointsById(db, [...new Set(openings.map(({ jointId }) => jointId))]);
  const plant = plantOpenings(
    openings.flatMap((opening) => {
      const joint = joints.get(opening.jointId);
      return joint === undefined ? [] : [plantOpening(opening, traitsAt(opening, joint))];
    }),
  );
  return { openings, installed, joints, plant };
}

export function traitsAt(opening: RecordedOpening, joint: JointRow) {
  const years =
    opening.installed === null ? null : yearsBetween(opening.installed.happenedAt, opening.happenedAt);
  return traitsOf(joint.data, opening.boltSet, opening.lubricant, years);
}
