import { useSyncExternalStore } from 'react';
import type { SignedIn, SignedInPerson } from '../../core/contract/access.ts';

/** Who is at this window. "Over": somebody was, and their page still stands beneath with what they typed. */
export type Presence =
  | { readonly is: 'nobody' }
  | { readonly is: 'here'; readonly person: SignedInPerson }
  | { readonly is: 'over'; readonly person: SignedInPerson };

/** In memory alone: it must not lie on this PC, and a reload signs out. */
let token: string | null = null;
let presence: Presence = { is: 'nobody' };
const listeners = new Set<() => void>();

function become(next: Presence): void {
  presence = next;
  for (const listener of listeners) listener();
}

export const sessionToken = (): string | null => token;

export function sessionBegins(signedIn: SignedIn): void {
  ({ token } = signedIn);
  become({ is: 'here', person: signedIn.person });
}

/** Roles may have been given or taken since. */
export function sessionSeen(person: SignedInPerson): void {
  if (presence.is !== 'here' || JSON.stringify(presence.person) === JSON.stringify(person)) return;
  become({ is: 'here', person });
}

/** The register no longer knows the session that a request was sent with. */
export function sessionOver(asked: string): void {
  if (asked !== token || presence.is !== 'here') return;
  token = null;
  become({ is: 'over', person: presence.person });
}

export function sessionEnds(): void {
  token = null;
  become({ is: 'nobody' });
}

const subscribe = (listener: () => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};

export const usePresence = (): Presence => useSyncExternalStore(subscribe, () => presence);

/** Whoever is signed in, or was until a moment ago; null where the register works without sign-in. */
export function useSignedIn(): SignedInPerson | null {
  const now = usePresence();
  return now.is === 'nobody' ? null : now.person;
}
