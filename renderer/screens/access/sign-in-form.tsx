import { type FormEvent, useId, useState } from 'react';
import { signIn, useAttempt } from '../../app/sign-in.ts';
import { Failure } from '../../components/failure.tsx';
import { SecretField } from './secret-field.tsx';

/** The same answer to a wrong secret and to a name nobody has, so that names can't be tried out. */
export function SignInForm({ name: known = '' }: { readonly name?: string }) {
  const id = useId();
  const [name, setName] = useState(known);
  const [secret, setSecret] = useState('');
  const { busy, error, attempt } = useAttempt();
  const onSubmit = async (event: FormEvent) => {
    event.preventDefault();
    setSecret('');
    await attempt(() => signIn(name, secret));
  };
  return (
    <form className="stack" onSubmit={onSubmit} noValidate>
      <div className="fields">
        <div className="field">
          <label htmlFor={id}>Name</label>
          <input
            id={id}
            name="name"
            autoComplete="username"
            value={name}
            onChange={(event) => setName(event.target.value)}
          />
        </div>
        <SecretField label="Secret" name="secret" value={secret} onChange={setSecret} />
      </div>
      {error && <Failure error={error} what="Nobody is signed in." />}
      <div>
        <button type="submit" className="act" disabled={busy}>
          Sign in
        </button>
      </div>
    </form>
  );
}
