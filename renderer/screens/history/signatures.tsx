import { useRef, useState } from 'react';
import type { LoggedRecord, SignatureRow } from '../../../core/contract/signature.ts';
import { MEANING_SHORT } from '../../../core/text/signature.ts';
import { useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { moment } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { SignForm } from './sign-form.tsx';

/** Who signed a record and for what, and the place where it is signed. */
export function Signatures({ eventId }: { readonly eventId: string }) {
  const record = useAsk('history.record', { id: eventId });
  return (
    <section aria-label="Signatures">
      <h2>Signatures</h2>
      <Asked asking={record} what="the signatures">
        {(found) => (
          <>
            <SignatureList rows={found.signatures} />
            {found.signable.length > 0 && <SignDialog record={found} />}
          </>
        )}
      </Asked>
    </section>
  );
}

function SignatureList({ rows }: { readonly rows: readonly SignatureRow[] }) {
  const { timeZone } = useRegister();
  if (rows.length === 0) return <p className="small">Nobody has signed this record.</p>;
  return (
    <ul className="plain-list">
      {rows.map((row) => (
        <li key={row.id}>
          <b>{row.person}</b> {MEANING_SHORT[row.meaning]}
          <div className="small">
            {moment(row.signedAt, timeZone)},{' '}
            {row.knownBy === 'secret' ? 'signed with their secret' : 'by name only'}
          </div>
          {!row.matches && <p className="flag">The record no longer has the content that was signed.</p>}
        </li>
      ))}
    </ul>
  );
}

/** Opens over the page: a signature is one act, and the page behind it is what is signed. */
function SignDialog({ record }: { readonly record: LoggedRecord }) {
  const dialog = useRef<HTMLDialogElement>(null);
  // A dialog that is closed forgets what was typed in it.
  const [opened, setOpened] = useState(0);
  const onOpen = () => {
    setOpened((times) => times + 1);
    dialog.current?.showModal();
  };
  return (
    <div className="no-print">
      <button type="button" className="quiet" onClick={onOpen}>
        Sign this record
      </button>
      <dialog ref={dialog} className="sign" aria-label="Sign this record">
        {opened > 0 && <SignForm key={opened} record={record} onDone={() => dialog.current?.close()} />}
      </dialog>
    </div>
  );
}
