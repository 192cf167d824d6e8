import { type FormEvent, useEffect, useId, useRef } from 'react';
import { Key } from './parts.tsx';

const ROWS = ['7', '8', '9', '4', '5', '6', '1', '2', '3', '0', '.'];

interface KeypadProps {
  readonly label: string;
  readonly unit: string;
  readonly text: string;
  readonly onText: (text: string) => void;
  /** Words of the key that takes the value. */
  readonly takes: string;
  readonly onTake: () => void;
  readonly fault?: string | null;
  readonly disabled?: boolean;
}

/** Numbers by key or by keyboard. The field asks for no keyboard of the screen: the keys beside it are larger. */
export function Keypad({ label, unit, text, onText, takes, onTake, fault, disabled }: KeypadProps) {
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (label !== '') field.current?.focus({ preventScroll: true });
  }, [label]);
  const onSubmit = (event: FormEvent) => {
    event.preventDefault();
    if (!disabled) onTake();
  };
  return (
    <form className="keypad" onSubmit={onSubmit} noValidate>
      <div className="keypad-field">
        <label htmlFor={id}>{label}</label>
        <span>
          <input
            id={id}
            ref={field}
            type="text"
            inputMode="none"
            autoComplete="off"
            value={text}
            aria-invalid={fault ? true : undefined}
            aria-describedby={fault ? `${id}-fault` : undefined}
            onChange={(event) => onText(event.target.value)}
          />
          <b>{unit}</b>
        </span>
        {fault && (
          <span className="fault" id={`${id}-fault`} role="alert">
            {fault}
          </span>
        )}
      </div>
      <div className="pad">
        {ROWS.map((key) => (
          <Key key={key} onClick={() => onText(text + key)}>
            {key === '.' ? <span aria-hidden="true">.</span> : key}
            {key === '.' && <span className="unseen">point</span>}
          </Key>
        ))}
        <Key onClick={() => onText(text.slice(0, -1))}>
          <span aria-hidden="true">⌫</span>
          <span className="unseen">take back a digit</span>
        </Key>
      </div>
      <button type="submit" className="key done" disabled={disabled}>
        {takes}
      </button>
    </form>
  );
}
