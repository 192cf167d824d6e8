import { type FormEvent, useState } from 'react';
import { queryClient } from '../../app/ask.ts';
import { send } from '../../app/send.ts';
import { useAttempt } from '../../app/sign-in.ts';
import { Failure } from '../../components/failure.tsx';
import { SecretField } from '../access/secret-field.tsx';
import type { Person } from './person.ts';

/** A first secret, or another for one that was forgotten: known to two people, so it opens nothing but its own change. */
export function SecretForm({ person }: { readonly person: Person }) {
  const [secret, setSecret] = useState('');
  const [given, setGiven] = useState(false);
  const { busy, error, attempt } = useAttempt();
  const first = person.secret === 'none';
  const onSubmit = async (event: FormEvent) => {
    event.preventDefault();
    setGiven(false);
    // Each try under a key of its own: a repeated key would be taken for the first try, with the secret it had.
    const key = crypto.randomUUID();
    const done = await attempt(() => send('access.giveSecret', { key, personId: person.id, secret }));
    if (done === null) return;
    setSecret('');
    setGiven(true);
    await queryClient.invalidateQueries();
  };
  return (
    <form className="form" onSubmit={onSubmit} noValidate>
      <fieldset>
        <legend>{first ? `First secret of ${person.name}` : `New secret for ${person.name}`}</legend>
        <p className="lead-in small">
          Tell it to nobody else. At the next sign-in it has to be changed before anything else is answered.
          {!first && ` The secret until now ends, and ${person.name} is signed out everywhere.`}
        </p>
        <div className="fields">
          <SecretField label="Secret to give" name="secret" fresh value={secret} onChange={setSecret} />
        </div>
      </fieldset>
      {error && <Failure error={error} what="No secret was given." />}
      {given && (
        <p className="said" role="status">
          The secret is given. {person.name} signs in with it and chooses another.
        </p>
      )}
      <div>
        <button type="submit" className="act" disabled={busy || secret === ''}>
          {first ? 'Give the secret' : `Replace the secret of ${person.name}`}
        </button>
      </div>
    </form>
  );
}
