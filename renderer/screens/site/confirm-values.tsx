import { useId, useState } from 'react';
import type { TableCells } from '../../../core/contract/site.ts';
import { useWrite } from '../../app/ask.ts';
import { Failure } from '../../components/failure.tsx';
import { SignerChoice } from '../../components/people-choice.tsx';

/** Beside a finding about a table's value: a person says against which source they held it. */
export function ConfirmValues({ cells }: { readonly cells: TableCells }) {
  const id = useId();
  const [open, setOpen] = useState(false);
  const [personId, setPersonId] = useState('');
  const [sourceSeen, setSourceSeen] = useState('');
  const [tried, setTried] = useState(false);
  const confirm = useWrite('tableValue.confirm');
  const words = cells.values.map(({ field, value }) => `${fieldWords(field)} ${value}`).join(', ');
  if (!open) {
    return (
      <p>
        <button type="button" className="link" onClick={() => setOpen(true)}>
          Confirm {words}
        </button>
      </p>
    );
  }
  const noSource = tried && sourceSeen.trim() === '';
  const onConfirm = () => {
    setTried(true);
    if (personId === '' || sourceSeen.trim() === '') return;
    confirm.mutate({ data: { ...cells, personId, sourceSeen } });
  };
  return (
    <fieldset className="stack">
      <legend>
        {cells.table}, {cells.key.replaceAll(' | ', ', ')}: {words}
      </legend>
      <div className="field">
        <label htmlFor={id}>Compared with</label>
        <input
          id={id}
          value={sourceSeen}
          aria-invalid={noSource || undefined}
          aria-describedby={noSource ? `${id}-fault` : `${id}-hint`}
          onChange={(event) => setSourceSeen(event.target.value)}
        />
        {noSource ? (
          <span className="fault" id={`${id}-fault`}>
            Name the document the value was compared with.
          </span>
        ) : (
          <span className="hint" id={`${id}-hint`}>
            The standard’s own print, with its edition and table
          </span>
        )}
      </div>
      <SignerChoice
        label="Confirmed by"
        chosen={personId}
        onChoose={setPersonId}
        fault={
          tried && personId === '' ? 'Nobody is chosen. A value is confirmed in one person’s name.' : null
        }
      />
      <div className="row">
        <button type="button" className="quiet" disabled={confirm.isPending} onClick={onConfirm}>
          Confirm these values
        </button>
        <button type="button" className="link" onClick={() => setOpen(false)}>
          Leave it open
        </button>
      </div>
      {confirm.error && <Failure error={confirm.error.error} what="Nothing was confirmed." />}
    </fieldset>
  );
}

/** "acrossFlats" → "across flats". */
function fieldWords(field: string): string {
  return field.replace(/([A-Z])/g, ' $1').toLowerCase();
}
