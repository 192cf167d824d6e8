import { type FormEvent, useState } from 'react';
import type { RequestFailure } from '../app/ask.ts';
import { Failure } from './failure.tsx';

export interface NamedRow {
  readonly id: string;
  readonly version: number;
  readonly name: string;
  readonly second: string;
  /** Said beside the row: how many joints, for instance. */
  readonly words: string;
}

interface NameListProps {
  readonly rows: readonly NamedRow[];
  readonly noun: string;
  /** Label of the second field; without it there is only a name. */
  readonly secondLabel?: string;
  readonly error: RequestFailure | null;
  readonly busy: boolean;
  readonly onSave: (row: NamedRow | null, name: string, second: string, done: () => void) => void;
}

/** A short list of named things: add one, rename one. */
export function NameList({ rows, noun, secondLabel, error, busy, onSave }: NameListProps) {
  const [edited, setEdited] = useState<NamedRow | null>(null);
  return (
    <>
      {rows.length > 0 && (
        <table className="tab narrow">
          <tbody>
            {rows.map((row) => (
              <tr key={row.id}>
                <th scope="row">{row.name}</th>
                <td>{row.second}</td>
                <td className="small">{row.words}</td>
                <td className="num">
                  <button type="button" className="link" onClick={() => setEdited(row)}>
                    Edit<span className="unseen"> {row.name}</span>
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <section>
        <NameForm
          key={edited?.id ?? 'new'}
          row={edited}
          noun={noun}
          {...(secondLabel === undefined ? {} : { secondLabel })}
          busy={busy}
          onSave={(name, second, done) =>
            onSave(edited, name, second, () => {
              setEdited(null);
              done();
            })
          }
          onLeave={() => setEdited(null)}
        />
        {error && <Failure error={error.error} what="It was not saved." />}
      </section>
    </>
  );
}

interface NameFormProps {
  readonly row: NamedRow | null;
  readonly noun: string;
  readonly secondLabel?: string;
  readonly busy: boolean;
  readonly onSave: (name: string, second: string, done: () => void) => void;
  /** Null where the row stands on a page of its own, to be left otherwise. */
  readonly onLeave: (() => void) | null;
}

/** Fields of one of them; nothing chosen is a new one. */
export function NameForm({ row, noun, secondLabel, busy, onSave, onLeave }: NameFormProps) {
  const [name, setName] = useState(row?.name ?? '');
  const [second, setSecond] = useState(row?.second ?? '');
  const onSubmit = (event: FormEvent) => {
    event.preventDefault();
    onSave(name, second, () => {
      setName('');
      setSecond('');
    });
  };
  return (
    <form className="form" onSubmit={onSubmit}>
      <fieldset>
        <legend>{row === null ? `New ${noun}` : `Edit ${row.name}`}</legend>
        <div className="fields">
          <div className="field">
            <label htmlFor="name">Name</label>
            <input id="name" value={name} onChange={(event) => setName(event.target.value)} />
          </div>
          {secondLabel && (
            <div className="field">
              <label htmlFor="second">{secondLabel}</label>
              <input id="second" value={second} onChange={(event) => setSecond(event.target.value)} />
            </div>
          )}
        </div>
      </fieldset>
      <div className="row">
        <button type="submit" className="act" disabled={busy}>
          Save {noun}
        </button>
        {row !== null && onLeave && (
          <button type="button" className="quiet" onClick={onLeave}>
            Leave as it is
          </button>
        )}
      </div>
    </form>
  );
}
