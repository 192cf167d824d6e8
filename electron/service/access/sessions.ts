import { randomBytes } from 'node:crypto';
import { toHex } from '../../../core/audit/hash.ts';
import { sha256 } from '../chain/sha256.ts';

/** Long enough for a pass at the joint, short enough for a tablet that was put down. */
export const IDLE_MINUTES = 30;

/** A shift. */
const LONGEST_HOURS = 12;

const TOKEN_BYTES = 32;

export interface Session {
  readonly personId: string;
  /** Version of the secret it began with; it ends when the secret is changed. */
  readonly secretVersion: number;
}

/** Moments in ms since 1970. */
export interface OpenSession extends Session {
  readonly began: number;
  readonly lastAsked: number;
}

interface KeptSession extends OpenSession {
  lastAsked: number;
}

/** Who is signed in at which window. In memory alone: a token is worth nothing after a restart, nor to who reads the file. */
export interface Sessions {
  begin(session: Session): string;
  find(token: string): Session | null;
  /** A request of the window counts as being there. */
  touch(token: string): void;
  end(token: string): void;
  /** Every session that is not over. */
  all(): readonly OpenSession[];
}

export function createSessions(clock: () => Date): Sessions {
  const sessions = new Map<string, KeptSession>();
  const now = () => clock().getTime();
  const nameOf = (token: string) => toHex(sha256(token));

  function isOver({ began, lastAsked }: KeptSession): boolean {
    return now() - lastAsked > IDLE_MINUTES * 60_000 || now() - began > LONGEST_HOURS * 3_600_000;
  }

  function current(token: string): KeptSession | null {
    const session = sessions.get(nameOf(token));
    if (session === undefined) return null;
    if (!isOver(session)) return session;
    sessions.delete(nameOf(token));
    return null;
  }

  return {
    begin(session) {
      for (const [name, kept] of sessions) if (isOver(kept)) sessions.delete(name);
      const token = randomBytes(TOKEN_BYTES).toString('base64url');
      sessions.set(nameOf(token), { ...session, began: now(), lastAsked: now() });
      return token;
    },
    find: current,
    touch(token) {
      const session = current(token);
      if (session !== null) session.lastAsked = now();
    },
    end: (token) => {
      sessions.delete(nameOf(token));
    },
    all: () => [...sessions.values()].filter((session) => !isOver(session)),
  };
}
