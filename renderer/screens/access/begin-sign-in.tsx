import { type FormEvent, useId, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { useRegister } from '../../app/register.ts';
import { beginSignIn, useAttempt } from '../../app/sign-in.ts';
import { Desk, Title } from '../../components/desk.tsx';
import { Failure } from '../../components/failure.tsx';
import { PersonChoice } from '../../components/people-choice.tsx';
import { EvidenceIndex } from '../evidence/evidence-index.tsx';
import { RolesTold } from './roles-told.tsx';
import { SecretField } from './secret-field.tsx';

/** From names that are claims to people who sign in. Never undone, so it says so and asks once more. */
export function BeginSignIn() {
  const { signIn } = useRegister();
  return (
    <Desk indexLabel="Evidence" index={<EvidenceIndex />}>
      <Title name="Sign-in" under="Who may do what, and whose name stands under it." />
      {signIn === 'required' ? (
        <p className="empty">
          Sign-in has begun on this register. <Link href="/people">People, roles and secrets</Link>
        </p>
      ) : (
        <>
          <p className="said block">
            This register works without sign-in. Whoever works at it chooses a name from the list: names in
            its records are claims, and nobody can override a refusal.
          </p>
          <BeginForm />
        </>
      )}
      <RolesTold />
    </Desk>
  );
}

function BeginForm() {
  const id = useId();
  const [, goTo] = useLocation();
  const [personId, setPersonId] = useState('');
  const [name, setName] = useState('');
  const [secret, setSecret] = useState('');
  const [known, setKnown] = useState(false);
  const { busy, error, attempt } = useAttempt();
  const onSubmit = async (event: FormEvent) => {
    event.preventDefault();
    const begun = await attempt(() =>
      beginSignIn(personId === '' ? null : personId, personId === '' ? name : '', secret),
    );
    if (begun !== null) goTo('/people');
  };
  return (
    <form className="form" onSubmit={onSubmit} noValidate>
      <fieldset>
        <legend>First administrator</legend>
        <p className="lead-in small">
          Names people, gives roles and secrets. From then on everybody signs in; the administrator gives them
          their first secret.
        </p>
        <div className="fields">
          <PersonChoice
            label="Somebody on the register"
            none="Somebody new"
            chosen={personId}
            onChoose={setPersonId}
          />
          {personId === '' && (
            <div className="field">
              <label htmlFor={id}>Name</label>
              <input
                id={id}
                name="name"
                autoComplete="off"
                value={name}
                onChange={(event) => setName(event.target.value)}
              />
            </div>
          )}
          <SecretField label="Secret" name="secret" fresh value={secret} onChange={setSecret} />
        </div>
      </fieldset>
      <label className="check">
        <input type="checkbox" checked={known} onChange={(event) => setKnown(event.target.checked)} />
        Sign-in on this register is begun once and never undone
      </label>
      {error && <Failure error={error} what="Sign-in was not begun." />}
      <div>
        <button type="submit" className="act" disabled={busy || !known}>
          Begin sign-in
        </button>
      </div>
    </form>
  );
}
