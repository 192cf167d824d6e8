import { type FormEvent, type Ref, useId, useState } from 'react';
import { scannedName } from '../../core/text/scan-code.ts';
import { usePreview } from '../app/ask.ts';
import { Failure } from './failure.tsx';

export interface FoundTool {
  readonly id: string;
  readonly number: string;
}

interface ScanFieldProps {
  readonly label: string;
  /** Words of the button beside the field. */
  readonly act: string;
  /** What is to be done with the tool that was found; its answer is said beside the field. */
  readonly onFound: (tool: FoundTool) => string;
  readonly field?: Ref<HTMLInputElement>;
}

/**
 * A text field and Enter: what a scanner types, or a number typed by hand. It is cleared for the next one whether a
 * tool was found or not, and says which text it was about.
 */
export function ScanField({ label, act, onFound, field }: ScanFieldProps) {
  const id = useId();
  const [text, setText] = useState('');
  const [said, setSaid] = useState<{ readonly words: string; readonly found: boolean } | null>(null);
  const find = usePreview('tool.find');
  const onSubmit = (event: FormEvent) => {
    event.preventDefault();
    // A scan must not be handed on to a form around the field.
    event.stopPropagation();
    const scanned = text.trim();
    if (scanned === '') return;
    setText('');
    setSaid(null);
    find.mutate(
      { text: scanned },
      {
        onSuccess: (found) =>
          setSaid(
            found === null
              ? { found: false, words: nothingFound(scanned) }
              : { found: true, words: onFound(found) },
          ),
      },
    );
  };
  return (
    <form className="scan no-print" onSubmit={onSubmit}>
      <div className="field">
        <label htmlFor={id}>{label}</label>
        <div className="scan-line">
          <input
            id={id}
            type="text"
            autoComplete="off"
            autoCapitalize="off"
            spellCheck={false}
            placeholder="Label or number, then Enter"
            aria-describedby={`${id}-said`}
            ref={field}
            value={text}
            onChange={(event) => setText(event.target.value)}
          />
          <button type="submit" className="quiet">
            {act}
          </button>
        </div>
      </div>
      <p id={`${id}-said`} role="status" className={said?.found === false ? 'fault-line' : 'small'}>
        {said?.words}
      </p>
      {find.error && <Failure error={find.error.error} what="The tool was not looked up." />}
    </form>
  );
}

function nothingFound(scanned: string): string {
  const number = scannedName('T', scanned);
  const from = number === scanned ? '' : `, from the code “${scanned}”`;
  return `No tool has the number “${number}”${from}. Look at the label, or find the tool in the list.`;
}
