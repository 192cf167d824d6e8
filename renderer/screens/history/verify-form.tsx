import { type FormEvent, useState } from 'react';
import type { RequestInput } from '../../../core/contract/requests.ts';

type Input = RequestInput<'history.verify'>;

interface VerifyFormProps {
  readonly busy: boolean;
  readonly onVerify: (input: Input) => void;
  readonly onExport: () => void;
}

export function VerifyForm({ busy, onVerify, onExport }: VerifyFormProps) {
  const [depth, setDepth] = useState<Input['depth']>('chain');
  const [head, setHead] = useState('');
  const [records, setRecords] = useState('');
  const [fault, setFault] = useState<string | null>(null);

  const onSubmit = (submitted: FormEvent) => {
    submitted.preventDefault();
    const digits = head.replace(/\s/g, '').toLowerCase();
    const events = records.replace(/\D/g, '');
    const wrong = faultOf(digits, records, events);
    setFault(wrong);
    if (wrong !== null) return;
    const earlier = digits === '' ? null : { head: digits, events: events === '' ? null : Number(events) };
    onVerify({ depth, earlier });
  };
  return (
    <form className="form no-print" aria-label="Verification" onSubmit={onSubmit} noValidate>
      <fieldset>
        <legend>How much</legend>
        <label className="check">
          <input type="radio" name="depth" checked={depth === 'chain'} onChange={() => setDepth('chain')} />
          The chain: texts, hashes, signatures, kept files, guards of the file
        </label>
        <label className="check">
          <input
            type="radio"
            name="depth"
            checked={depth === 'everything'}
            onChange={() => setDepth('everything')}
          />
          Everything: also each list and page worked out again from the texts; takes minutes on a large
          register
        </label>
      </fieldset>
      <fieldset>
        <legend>Compare with an earlier head</legend>
        <div className="fields">
          <div className="field whole">
            <label htmlFor="earlier-head">Head from a printed page, an export or a backup</label>
            <input
              id="earlier-head"
              type="text"
              autoComplete="off"
              spellCheck={false}
              value={head}
              aria-invalid={fault ? true : undefined}
              aria-describedby="earlier-head-hint"
              onChange={({ target }) => setHead(target.value)}
            />
            <span className="hint" id="earlier-head-hint">
              The first 16 digits are enough; blanks do not matter. Empty: only heads in the data folder.
            </span>
          </div>
          <div className="field">
            <label htmlFor="earlier-records">Over how many records</label>
            <input
              id="earlier-records"
              type="text"
              inputMode="numeric"
              autoComplete="off"
              value={records}
              onChange={({ target }) => setRecords(target.value)}
            />
          </div>
        </div>
        {fault && (
          <p className="fault-line" role="alert">
            {fault}
          </p>
        )}
      </fieldset>
      <div className="row">
        <button type="submit" className="act" disabled={busy}>
          Verify
        </button>
        <button type="button" className="quiet" disabled={busy} onClick={onExport}>
          Write an export
        </button>
      </div>
    </form>
  );
}

function faultOf(digits: string, records: string, events: string): string | null {
  if (digits === '' && records.trim() !== '')
    return 'The number of records says something only beside a head.';
  if (digits !== '' && !/^[0-9a-f]{16,64}$/.test(digits)) {
    return 'Head: the first 16 digits at least and 64 at most, of 0 to 9 and a to f.';
  }
  if (records.trim() !== '' && (events === '' || Number(events) < 1)) {
    return 'Over how many records: a whole number from 1.';
  }
  return null;
}
