import type { Kysely, Transaction } from 'kysely';
import type { Role } from '../../core/contract/roles.ts';
import type { SecretCost } from './access/secret-cost.ts';
import type { RegisterSchema } from './register/schema.ts';

export interface Site {
  readonly id: string;
  readonly name: string;
  readonly timeZone: string;
  readonly demo: boolean;
}

/** Who is signed in at the window a request came from. */
export interface Actor {
  readonly personId: string;
  readonly roles: readonly Role[];
}

/** A message for the service's own log; people see only the id that leads to it. */
export type Log = (level: 'info' | 'error', message: string, error?: unknown) => void;

export interface ReadContext {
  readonly db: Kysely<RegisterSchema>;
  readonly site: Site;
  readonly clock: () => Date;
  readonly log: Log;
  /** Folder of the register's attachments. */
  readonly attachments: string;
}

/** Inside the one write transaction of a request. */
export interface WriteContext extends ReadContext {
  readonly db: Transaction<RegisterSchema>;
  readonly originId: string;
  readonly newId: () => string;
  /** Null where the register works without sign-in: a name in a record is then a claim. */
  readonly actor: Actor | null;
  readonly secretCost: SecretCost;
}
