import { type FormEvent, useId, useState } from 'react';
import type { LoggedRecord, SignatureMeaning } from '../../../core/contract/signature.ts';
import { MEANING_WORDS } from '../../../core/text/signature.ts';
import { useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { inFours } from '../../app/text/head.ts';
import { count } from '../../app/text/number.ts';
import { moment } from '../../app/text/time.ts';
import { Busy } from '../../components/busy.tsx';
import { Failure } from '../../components/failure.tsx';
import { PersonChoice } from '../../components/people-choice.tsx';
import { useSign } from './use-sign.ts';

interface SignFormProps {
  readonly record: LoggedRecord;
  readonly onDone: () => void;
}

export function SignForm({ record, onDone }: SignFormProps) {
  const { timeZone } = useRegister();
  const access = useAsk('access.state', {});
  const [meaning, setMeaning] = useState<SignatureMeaning | null>(null);
  const [chosen, setChosen] = useState('');
  const [secret, setSecret] = useState('');
  const [missing, setMissing] = useState<string | null>(null);
  const { sign, busy, error } = useSign(onDone);
  const secretId = useId();
  const signer = access.data?.person ?? null;
  const withSecret = access.data?.signIn === 'required';
  const personId = withSecret ? (signer?.personId ?? '') : chosen;

  const onSubmit = (submitted: FormEvent) => {
    submitted.preventDefault();
    const lacks = whatLacks(meaning, personId, withSecret && secret === '');
    setMissing(lacks);
    if (lacks !== null || meaning === null) return;
    const typed = withSecret ? secret : null;
    setSecret('');
    void sign({ eventId: record.id, hash: record.hash, meaning, personId }, typed);
  };
  return (
    <form className="form" aria-label="Signature" onSubmit={onSubmit} noValidate>
      <h2>Sign record {count(record.sequence)}</h2>
      <p className="small">
        {record.kind}, {record.joints.map(({ tag }) => tag).join(', ')} {moment(record.happenedAt, timeZone)}.
        The signature binds to exactly this content:
      </p>
      <p className="small seal">{inFours(record.hash)}</p>
      <fieldset>
        <legend>What the signature says</legend>
        {record.signable.map((each) => (
          <label className="check" key={each}>
            <input type="radio" name="meaning" checked={meaning === each} onChange={() => setMeaning(each)} />
            {MEANING_WORDS[each]}
          </label>
        ))}
      </fieldset>
      {withSecret ? (
        <div className="fields">
          <p>
            Signed by <b>{signer?.name ?? 'nobody: sign in first'}</b>
          </p>
          <div className="field">
            <label htmlFor={secretId}>Your secret, once more</label>
            <input
              id={secretId}
              type="password"
              autoComplete="off"
              value={secret}
              onChange={(event) => setSecret(event.target.value)}
            />
          </div>
        </div>
      ) : (
        <div className="fields">
          <PersonChoice label="Signed by" chosen={chosen} onChoose={setChosen} />
          <p className="small">
            This register works without sign-in: the signature is a claim, and is shown as one.
          </p>
        </div>
      )}
      {missing && (
        <p className="fault-line" role="alert">
          {missing}
        </p>
      )}
      {error && <Failure error={error} what="It was not signed." />}
      <p className="small">A signature stays for ever; it can not be taken back.</p>
      {busy && <Busy what="Signing" />}
      <div className="row">
        <button type="submit" className="act" disabled={busy || access.data === undefined}>
          Sign
        </button>
        <button type="button" className="quiet" onClick={onDone}>
          Cancel
        </button>
      </div>
    </form>
  );
}

function whatLacks(meaning: SignatureMeaning | null, personId: string, noSecret: boolean): string | null {
  if (meaning === null) return 'Choose what the signature says.';
  if (personId === '') return 'Nobody is chosen. A signature is one person’s.';
  return noSecret ? 'The secret is asked for with each signature.' : null;
}
