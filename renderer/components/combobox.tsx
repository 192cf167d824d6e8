import { type KeyboardEvent, useId, useRef, useState } from 'react';
import { type Standing, StandingShape } from './standing-shape.tsx';

export interface ComboOption {
  readonly id: string;
  /** Shown in the field when chosen. */
  readonly name: string;
  /** Second line of the option. */
  readonly detail: string;
  /** How it stands against the work at hand, in a shape and in words. */
  readonly standing?: { readonly shape: Standing; readonly words: string };
}

/** Stands for the entry that chooses nothing. */
const NONE = 'none';
const FIRST = { at: 0, id: null };
interface ComboboxProps {
  readonly label: string;
  readonly hideLabel?: boolean;
  readonly chosen: ComboOption | null;
  readonly options: readonly ComboOption[];
  readonly onSearch: (text: string) => void;
  readonly onChoose: (option: ComboOption | null) => void;
  /** Words of the entry that chooses nothing; without it something must stay chosen. */
  readonly none?: string;
  /** What is typed may be chosen as it stands, also where the list doesn't have it. */
  readonly ownWords?: boolean;
  readonly id?: string;
  /** Name of the form's field, by which a fault finds its label. */
  readonly name?: string;
  readonly hint?: string | undefined;
  readonly fault?: string | undefined;
}

/** A field to type in and a list to choose from. Typing searches; only an entry of the list counts, unless own words do. */
export function Combobox(props: ComboboxProps) {
  const { label, chosen, options, onSearch, onChoose, none, hint } = props;
  const ownId = useId();
  const id = props.id ?? ownId;
  const [text, setText] = useState<string | null>(null);
  // By its id: a list that is sorted anew must not move another entry under the key that chooses.
  const [active, setActive] = useState<{ readonly at: number; readonly id: string | null }>(FIRST);
  const list = useRef<HTMLDivElement>(null);
  const open = text !== null;
  const typed = text?.trim() ?? '';
  const own =
    props.ownWords && typed !== '' && !options.some((option) => option.name === typed)
      ? [{ id: typed, name: typed, detail: 'as typed' }]
      : [];
  const shown: (ComboOption | null)[] =
    none !== undefined && text === '' ? [null, ...options] : [...options, ...own];

  const place = shown.findIndex((option) => (option?.id ?? NONE) === active.id);
  const at = place >= 0 ? place : Math.min(active.at, Math.max(0, shown.length - 1));

  const begin = () => {
    onSearch('');
    setText('');
    // The entry in force, so that Enter straight away changes nothing.
    setActive({ at: 0, id: chosen?.id ?? NONE });
  };
  const choose = (option: ComboOption | null) => {
    onChoose(option);
    setText(null);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (!open) {
      if (event.key === 'ArrowDown' || event.key === 'Enter') {
        event.preventDefault();
        begin();
      }
      return;
    }
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      event.preventDefault();
      const next = Math.max(0, Math.min(shown.length - 1, at + (event.key === 'ArrowDown' ? 1 : -1)));
      setActive({ at: next, id: shown[next]?.id ?? NONE });
      list.current?.children[next]?.scrollIntoView({ block: 'nearest' });
    } else if (event.key === 'Enter') {
      event.preventDefault();
      const option = shown[at];
      if (option !== undefined) choose(option);
    } else if (event.key === 'Escape') {
      event.preventDefault();
      setText(null);
    }
  };

  return (
    <div className="field">
      <label htmlFor={id} className={props.hideLabel ? 'unseen' : undefined}>
        {label}
      </label>
      <div className="combo">
        <input
          id={id}
          role="combobox"
          name={props.name}
          aria-invalid={props.fault ? true : undefined}
          aria-describedby={props.fault ? `${id}-fault` : undefined}
          autoComplete="off"
          aria-expanded={open}
          aria-controls={`${id}-list`}
          aria-autocomplete="list"
          aria-activedescendant={open && shown.length > 0 ? `${id}-${at}` : undefined}
          placeholder={open ? (chosen?.name ?? 'Type to search') : 'none chosen'}
          value={text ?? chosen?.name ?? ''}
          onFocus={(event) => event.currentTarget.select()}
          onClick={() => !open && begin()}
          onChange={(event) => {
            setText(event.target.value);
            setActive(FIRST);
            onSearch(event.target.value);
          }}
          onBlur={() => {
            const [typedOwn] = own;
            if (typedOwn !== undefined) onChoose(typedOwn);
            setText(null);
          }}
          onKeyDown={onKeyDown}
        />
        {open && (
          <div
            role="listbox"
            id={`${id}-list`}
            aria-label={label}
            ref={list}
            // The field must keep the focus while an entry is pressed.
            onMouseDown={(event) => event.preventDefault()}
          >
            {shown.map((option, index) => (
              // biome-ignore lint/a11y/useKeyWithClickEvents: the field above handles the keys for its list
              <div
                key={option?.id ?? NONE}
                id={`${id}-${index}`}
                role="option"
                tabIndex={-1}
                aria-selected={index === at}
                onClick={() => choose(option)}
              >
                {option === null ? (
                  none
                ) : (
                  <>
                    <b>{option.name}</b>
                    <span className="small">{option.detail}</span>
                    {option.standing && (
                      <span className="standing small" data-standing={option.standing.shape}>
                        <StandingShape standing={option.standing.shape} />
                        <span>{option.standing.words}</span>
                      </span>
                    )}
                  </>
                )}
              </div>
            ))}
            {shown.length === 0 && (
              <div className="none" role="option" aria-disabled="true" aria-selected="false" tabIndex={-1}>
                Nothing matches
              </div>
            )}
          </div>
        )}
      </div>
      {props.fault && (
        <span className="fault" id={`${id}-fault`}>
          {props.fault}
        </span>
      )}
      {hint && <span className="hint">{hint}</span>}
    </div>
  );
}
