import { randomUUID } from 'node:crypto';
import type { Role } from '../../core/contract/roles.ts';
import { ask, key, type TestService } from './ask.ts';

export type Asking = Pick<TestService, 'service'>;

/** The same service, asked from a window at which somebody is signed in. */
export function at(started: Asking, token: string | null): Asking {
  const { service } = started;
  return {
    service: { ...service, handle: (name, input) => service.handle(name, input, token) },
  };
}

export interface Member {
  readonly personId: string;
  readonly name: string;
  readonly secret: string;
  /** A window at which they are signed in. */
  readonly window: Asking;
}

/** As long as it has to be, and nowhere else in a register. */
export const someSecret = () => `secret ${randomUUID()}`;

/** The first administrator begins sign-in under a new name. */
export async function beginWith(started: Asking, name = 'Ada Administrator'): Promise<Member> {
  const secret = someSecret();
  const { token, person } = await ask(started, 'access.begin', { personId: null, name, secret });
  return { personId: person.personId, name, secret, window: at(started, token) };
}

export async function signInAs(started: Asking, name: string, secret: string): Promise<Asking> {
  const { token } = await ask(started, 'access.signIn', { name, secret });
  return at(started, token);
}

/** A person with roles and a secret of their own, signed in. */
export async function addMember(
  started: Asking,
  administrator: Member,
  name: string,
  roles: readonly Role[],
): Promise<Member> {
  const { window } = administrator;
  const data = { name, role: '' };
  const { id } = await ask(window, 'person.save', { key: key(), id: null, version: null, data });
  if (roles.length > 0) {
    await ask(window, 'person.saveRoles', { key: key(), id, version: null, roles: [...roles] });
  }
  const given = someSecret();
  await ask(window, 'access.giveSecret', { key: key(), personId: id, secret: given });
  const first = await signInAs(started, name, given);
  const secret = someSecret();
  const { token } = await ask(first, 'access.changeSecret', { currentSecret: given, secret });
  return { personId: id, name, secret, window: at(started, token) };
}
