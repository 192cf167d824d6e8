import { useState } from 'react';
import type { SignedIn } from '../../core/contract/access.ts';
import type { Answer, RequestError } from '../../core/contract/errors.ts';
import { queryClient } from './ask.ts';
import { send } from './send.ts';
import { sessionBegins, sessionEnds, sessionOver, sessionSeen, sessionToken } from './session.ts';

/**
 * A request that carries a secret: sent once and remembered nowhere, unlike those of the query library, which keeps
 * what was sent for a while.
 */
export function useAttempt() {
  const [busy, setBusy] = useState(false);
  const [error, setError] = useState<RequestError | null>(null);
  const attempt = async <T>(work: () => Promise<Answer<T>>): Promise<T | null> => {
    setBusy(true);
    setError(null);
    const answer = await work();
    setBusy(false);
    if (answer.ok) return answer.value;
    setError(answer.error);
    return null;
  };
  return { busy, error, attempt };
}

/** What the window knew was asked in another session; it is asked again. */
async function begin(asked: Promise<Answer<SignedIn>>): Promise<Answer<SignedIn>> {
  const answer = await asked;
  if (!answer.ok) return answer;
  sessionBegins(answer.value);
  await queryClient.invalidateQueries();
  return answer;
}

export const signIn = (name: string, secret: string) => begin(send('access.signIn', { name, secret }));

export const changeSecret = (currentSecret: string, secret: string) =>
  begin(send('access.changeSecret', { currentSecret, secret }));

export const beginSignIn = (personId: string | null, name: string, secret: string) =>
  begin(send('access.begin', { personId, name, secret }));

export async function signOut(): Promise<void> {
  await send('access.signOut', {});
  sessionEnds();
  queryClient.removeQueries({ predicate: ({ queryKey }) => queryKey[0] !== 'register.state' });
}

/** Asks whether the session still stands; that alone keeps nobody signed in. */
export async function lookWhetherHere(): Promise<void> {
  const asked = sessionToken();
  if (asked === null) return;
  const answer = await send('access.state', {});
  if (!answer.ok) return;
  if (answer.value.person === null) sessionOver(asked);
  else sessionSeen(answer.value.person);
}

/** Somebody types or presses here. */
export async function stay(): Promise<void> {
  await send('access.stay', {});
}
