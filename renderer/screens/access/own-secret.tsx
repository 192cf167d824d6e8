import { type FormEvent, useState } from 'react';
import { useSignedIn } from '../../app/session.ts';
import { changeSecret, signOut, useAttempt } from '../../app/sign-in.ts';
import { Desk, Title } from '../../components/desk.tsx';
import { Failure } from '../../components/failure.tsx';
import { EvidenceIndex } from '../evidence/evidence-index.tsx';
import { SecretField } from './secret-field.tsx';

/** One's own secret, with the one before it. `given`: the one before came from an administrator. */
export function OwnSecretForm({ given }: { readonly given?: boolean }) {
  const [before, setBefore] = useState('');
  const [secret, setSecret] = useState('');
  const [done, setDone] = useState(false);
  const { busy, error, attempt } = useAttempt();
  const onSubmit = async (event: FormEvent) => {
    event.preventDefault();
    setDone(false);
    if ((await attempt(() => changeSecret(before, secret))) === null) return;
    setBefore('');
    setSecret('');
    setDone(true);
  };
  return (
    <>
      {given && (
        <div>
          <h1>Choose a secret of your own</h1>
          <p>
            The one you signed in with was given by an administrator, who knows it. Nothing else is answered
            until you have another.
          </p>
        </div>
      )}
      <form className="form" onSubmit={onSubmit} noValidate>
        <div className="fields">
          <SecretField
            label={given ? 'Secret you were given' : 'Secret until now'}
            name="currentSecret"
            value={before}
            onChange={setBefore}
          />
          <SecretField label="New secret" name="secret" fresh value={secret} onChange={setSecret} />
        </div>
        {error && <Failure error={error} what="The secret was not changed." />}
        {done && (
          <p className="said" role="status">
            The secret is changed. Other windows at which you were signed in are signed out.
          </p>
        )}
        <div className="row">
          <button type="submit" className="act" disabled={busy}>
            Change the secret
          </button>
          {given && (
            <button type="button" className="quiet" onClick={signOut}>
              Sign out
            </button>
          )}
        </div>
      </form>
    </>
  );
}

export function OwnSecretPage() {
  const person = useSignedIn();
  return (
    <Desk indexLabel="Evidence" index={<EvidenceIndex />}>
      <Title name="Own secret" {...(person ? { under: person.name } : {})} />
      {person === null ? (
        <p className="empty">This register works without sign-in: nobody has a secret.</p>
      ) : (
        <OwnSecretForm />
      )}
    </Desk>
  );
}
