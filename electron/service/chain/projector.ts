import type { Kysely } from 'kysely';
import type { RegisterSchema } from '../register/schema.ts';
import type { EventKind, RecordedEvent } from './events.ts';

/** Brings the columns up to date with events of one kind, from their bodies alone. */
export type Projector<K extends EventKind> = (
  db: Kysely<RegisterSchema>,
  events: readonly RecordedEvent<K>[],
) => Promise<void>;
