import { useId, useState } from 'react';

interface SecretFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  /** Field of the request, by which a fault finds its label. */
  readonly name: 'secret' | 'currentSecret' | 'administrator.secret';
  /** A new one is typed to be kept, the other to be compared. */
  readonly fresh?: boolean;
}

/** Held by the form alone while it is typed; never a draft. */
export function SecretField({ label, value, onChange, name, fresh }: SecretFieldProps) {
  const id = useId();
  const [shown, setShown] = useState(false);
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        name={name}
        type={shown ? 'text' : 'password'}
        autoComplete={fresh ? 'new-password' : 'current-password'}
        spellCheck={false}
        value={value}
        aria-describedby={fresh ? `${id}-hint` : undefined}
        onChange={(event) => onChange(event.target.value)}
      />
      {fresh && (
        <span className="hint" id={`${id}-hint`}>
          At least 12 characters; several words are easier to keep than one with signs in it
        </span>
      )}
      <label className="check small">
        <input type="checkbox" checked={shown} onChange={(event) => setShown(event.target.checked)} />
        Show what is typed
      </label>
    </div>
  );
}
