import { type FormEvent, useId, useRef, useState } from 'react';
import { type AttachmentData, LARGEST_ATTACHMENT } from '../../../core/contract/attachment.ts';
import { useWrite } from '../../app/ask.ts';
import { Failure } from '../../components/failure.tsx';
import { SignerChoice } from '../../components/people-choice.tsx';
import { base64Of } from '../imports/file-text.ts';
import { ENDINGS, fileFault, mediaTypeOf, sizeWords } from './file-kinds.ts';

/** A file to keep: read here, hashed and stored by the register. */
export function AddAttachment({ owner }: { readonly owner: AttachmentData['owner'] }) {
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const [file, setFile] = useState<File | null>(null);
  const [personId, setPersonId] = useState('');
  const [remarks, setRemarks] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  const [missing, setMissing] = useState(false);
  const [reading, setReading] = useState(false);
  const add = useWrite('attachment.add');
  const onChoose = (chosen: File | null) => {
    setFile(chosen);
    setFault(chosen && fileFault(chosen.name, chosen.size));
  };
  const onSubmit = (event: FormEvent) => {
    event.preventDefault();
    setMissing(personId === '');
    const type = file && mediaTypeOf(file.name);
    if (file === null || type === null) {
      setFault(fault ?? 'No file is chosen.');
      return;
    }
    if (personId === '' || fault !== null) return;
    setReading(true);
    base64Of(file)
      .then((content) =>
        add.mutateAsync({ data: { owner, name: file.name, mediaType: type, content, personId, remarks } }),
      )
      .then(
        () => {
          setFile(null);
          setRemarks('');
          if (field.current) field.current.value = '';
        },
        // What the register refused stands in add.error; what is left is a file the browser could not read.
        (reason: unknown) => {
          if (!(reason instanceof Error && 'error' in reason))
            setFault(`“${file.name}” could not be read: ${String(reason)}`);
        },
      )
      .finally(() => setReading(false));
  };
  return (
    <details className="folded no-print">
      <summary>Add a file</summary>
      <form className="form fold" onSubmit={onSubmit}>
        <div className="fields">
          <div className="field">
            <label htmlFor={id}>File</label>
            <input
              id={id}
              type="file"
              accept={ENDINGS.join(',')}
              ref={field}
              aria-invalid={fault ? true : undefined}
              aria-describedby={`${id}-hint`}
              onChange={(event) => onChoose(event.target.files?.[0] ?? null)}
            />
            {fault && <span className="fault">{fault}</span>}
            <span className="hint" id={`${id}-hint`}>
              {ENDINGS.join(', ')}, at most {sizeWords(LARGEST_ATTACHMENT)}
            </span>
          </div>
          <SignerChoice
            label="Added by"
            chosen={personId}
            onChoose={setPersonId}
            fault={missing && personId === '' ? 'Nobody is chosen.' : null}
          />
          <div className="field">
            <label htmlFor={`${id}-remarks`}>What it is</label>
            <input
              id={`${id}-remarks`}
              type="text"
              autoComplete="off"
              value={remarks}
              onChange={(event) => setRemarks(event.target.value)}
            />
          </div>
        </div>
        {add.error && <Failure error={add.error.error} what="The file was not kept." />}
        <div>
          <button type="submit" className="act" disabled={reading || add.isPending}>
            Keep this file
          </button>
        </div>
      </form>
    </details>
  );
}
