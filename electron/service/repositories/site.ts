import type { Kysely } from 'kysely';
import type { Site } from '../context.ts';
import type { RegisterSchema } from '../register/schema.ts';

export async function readSite(db: Kysely<RegisterSchema>): Promise<Site> {
  const site = await db.selectFrom('site').selectAll().orderBy('id').limit(1).executeTakeFirstOrThrow();
  return { id: site.id, name: site.name, timeZone: site.time_zone, demo: site.demo === 1 };
}

/** The chain this PC writes to. */
export async function readOrigin(db: Kysely<RegisterSchema>): Promise<string> {
  const origin = await db
    .selectFrom('origin')
    .select('id')
    .orderBy('created_at')
    .orderBy('id')
    .limit(1)
    .executeTakeFirstOrThrow();
  return origin.id;
}
