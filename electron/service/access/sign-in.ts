import type { FirstAdministrator } from '../../../core/contract/access.ts';
import type { ParsedInput } from '../../../core/contract/requests.ts';
import { append } from '../chain/append.ts';
import type { EventDraft } from '../chain/events.ts';
import type { WriteContext } from '../context.ts';
import { invalidField, KeptFailure, RequestFailure } from '../failure.ts';
import { nameKey } from '../fold.ts';
import { checkPerson } from '../operations/who-and-when.ts';
import { checkNameIsFree } from './names.ts';
import { isSecret, keepSecret, keptSecret } from './secret.ts';
import { verifySecret } from './verify.ts';
import { checkWait, countWrong, forgetWrong } from './wrong-secrets.ts';

/** Names the first administrator. From here on the register asks who is there. */
export async function beginSignIn(context: WriteContext, input: FirstAdministrator): Promise<string> {
  const { db, newId } = context;
  if (await db.selectFrom('sign_in').select('event_id').executeTakeFirst()) {
    throw new RequestFailure('conflict', 'Sign-in has begun on this register already; it is never undone');
  }
  const personId = input.personId ?? newId();
  if (input.personId !== null) await checkPerson(context, 'personId', input.personId);
  const named: EventDraft[] =
    input.personId !== null
      ? []
      : [
          {
            kind: 'person saved',
            id: newId(),
            data: { id: personId, version: 1, data: { name: input.name, role: '' }, importId: null },
          },
        ];
  const roles = ['administrator'] as const;
  await append({ ...context, actor: { personId, roles } }, [
    ...named,
    { kind: 'person roles saved', id: newId(), data: { personId, version: 1, roles } },
    { kind: 'secret changed', id: newId(), data: { personId, by: 'the person', toBeChanged: false } },
    { kind: 'sign-in begun', id: newId(), data: { personId } },
  ]);
  await keepSecret(context, personId, input.secret, false);
  return personId;
}

/** Answers with the person; a wrong secret and a name that nobody has are the same answer after the same time. */
export async function signIn(context: WriteContext, input: ParsedInput<'access.signIn'>): Promise<string> {
  const key = nameKey(input.name);
  await checkWait(context, key);
  const kept = await keptSecret(context.db, { nameKey: key });
  if (!(await isSecret(kept, input.secret, context.secretCost)) || kept === null) {
    await countWrong(context, key, kept?.personId ?? null, 'sign-in');
    throw new KeptFailure('not_signed_in', 'Name or secret is not right');
  }
  const { personId } = kept;
  await forgetWrong(context, key);
  await append({ ...context, actor: { personId, roles: [] } }, [
    { kind: 'signed in', id: context.newId(), data: { personId } },
  ]);
  return personId;
}

/** One's own, with the one before it. */
export async function changeSecret(
  context: WriteContext,
  { currentSecret, secret }: ParsedInput<'access.changeSecret'>,
): Promise<string> {
  const personId = context.actor?.personId;
  if (personId === undefined) {
    throw new RequestFailure('refused', 'The register works without sign-in; there are no secrets to change');
  }
  await verifySecret(context, personId, currentSecret, 'change of the secret', 'currentSecret');
  if (currentSecret.normalize('NFKC') === secret.normalize('NFKC')) {
    throw invalidField('secret', '', 'another one than before');
  }
  await keepSecret(context, personId, secret, false);
  await append(context, [
    {
      kind: 'secret changed',
      id: context.newId(),
      data: { personId, by: 'the person', toBeChanged: false },
    },
  ]);
  return personId;
}

/** An administrator gives a secret to somebody who has none, or has forgotten theirs. */
export async function giveSecret(
  context: WriteContext,
  { personId, secret }: ParsedInput<'access.giveSecret'>,
): Promise<void> {
  await checkBegun(context);
  await checkPerson(context, 'personId', personId);
  if (personId === context.actor?.personId) {
    throw invalidField('personId', '', 'somebody else; one’s own secret is changed with the one before it');
  }
  await checkNameIsFree(context, personId);
  await keepSecret(context, personId, secret, true);
  await append(context, [
    {
      kind: 'secret changed',
      id: context.newId(),
      data: { personId, by: 'an administrator', toBeChanged: true },
    },
  ]);
}

/** Before an administrator is named anybody could give themselves roles and a secret for later. */
export async function checkBegun({ db }: Pick<WriteContext, 'db'>): Promise<void> {
  if (await db.selectFrom('sign_in').select('event_id').executeTakeFirst()) return;
  throw new RequestFailure(
    'refused',
    'The register works without sign-in: roles and secrets are given once an administrator has begun it',
  );
}
