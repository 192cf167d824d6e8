import type { Kysely } from 'kysely';
import type { RegisterSchema } from '../register/schema.ts';

export interface OpenCase {
  readonly id: string;
  readonly number: string;
}

/** Open cases by the tool they name; a tool without one is left out. */
export async function openCases(
  _db: Kysely<RegisterSchema>,
  _toolIds: readonly string[],
): Promise<ReadonlyMap<string, readonly OpenCase[]>> {
  return new Map();
}
