import { type ReactNode, useId } from 'react';
import { useFormContext, useWatch } from 'react-hook-form';
import { type QuantityKind, unitsOf } from '../../core/units/units.ts';
import { unitLabel } from '../app/text/number.ts';
import { day } from '../app/text/time.ts';
import { described, useFault } from './faults.ts';

interface FieldProps {
  readonly name: string;
  readonly label: string;
  readonly hint?: string;
  readonly whole?: boolean;
}

interface ShellProps extends FieldProps {
  readonly id: string;
  readonly children: ReactNode;
}

function Shell({ id, name, label, hint, whole, children }: ShellProps) {
  const fault = useFault(name);
  return (
    <div className={whole ? 'field whole' : 'field'}>
      <label htmlFor={id}>{label}</label>
      {children}
      {fault && (
        <span className="fault" id={`${id}-fault`}>
          {fault.allowed}
        </span>
      )}
      {hint && (
        <span className="hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
    </div>
  );
}

interface TextProps extends FieldProps {
  readonly type?: 'text' | 'date' | 'datetime-local';
  readonly inputMode?: 'decimal' | 'numeric';
  /** Offered while typing; anything else may be typed too. */
  readonly offers?: readonly string[];
}

export function Text(given: TextProps) {
  const id = useId();
  const { register, control } = useFormContext();
  const fault = useFault(given.name);
  const value: unknown = useWatch({ control, name: given.name });
  const words = dateWords(given.type, value);
  const hint = [words, given.hint].filter(Boolean).join(' · ');
  const props = hint === '' ? given : { ...given, hint };
  return (
    <Shell {...props} id={id}>
      <input
        id={id}
        type={props.type ?? 'text'}
        autoComplete="off"
        inputMode={props.inputMode}
        list={props.offers && `${id}-offers`}
        {...described(id, fault, props.hint)}
        {...register(props.name)}
      />
      {props.offers && (
        <datalist id={`${id}-offers`}>
          {props.offers.map((offer) => (
            <option key={offer} value={offer} />
          ))}
        </datalist>
      )}
    </Shell>
  );
}

/** The browser may write a date month first; the words beside it can't be misread. */
function dateWords(type: TextProps['type'], value: unknown): string | null {
  if (type === undefined || type === 'text' || typeof value !== 'string' || value === '') return null;
  const [date = '', time] = value.split('T');
  return [day(date), time?.slice(0, 5)].filter(Boolean).join(' ');
}

export function LongText(props: FieldProps) {
  const id = useId();
  const { register } = useFormContext();
  const fault = useFault(props.name);
  return (
    <Shell {...props} id={id}>
      <textarea id={id} rows={3} {...described(id, fault, props.hint)} {...register(props.name)} />
    </Shell>
  );
}

export interface Option {
  readonly value: string;
  readonly words: string;
}

export const same = (values: readonly string[]): Option[] => values.map((value) => ({ value, words: value }));

interface ChoiceProps extends FieldProps {
  readonly options: readonly Option[];
  /** Words of the empty choice. */
  readonly blank?: string;
}

export function Choice(props: ChoiceProps) {
  const id = useId();
  const { register } = useFormContext();
  const fault = useFault(props.name);
  return (
    <Shell {...props} id={id}>
      <select id={id} {...described(id, fault, props.hint)} {...register(props.name)}>
        {props.blank !== undefined && <option value="">{props.blank}</option>}
        {props.options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.words}
          </option>
        ))}
      </select>
    </Shell>
  );
}

interface QuantityProps extends FieldProps {
  readonly quantity: QuantityKind;
}

/** A typed number and the unit it is in. Fractions such as 1-7/16 stay as typed. */
export function Quantity(props: QuantityProps) {
  const id = useId();
  const { register } = useFormContext();
  const fault = useFault(props.name);
  return (
    <Shell {...props} id={id}>
      <div className="quantity">
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          {...described(id, fault, props.hint)}
          {...register(`${props.name}.text`)}
        />
        <select aria-label={`Unit of ${props.label.toLowerCase()}`} {...register(`${props.name}.unit`)}>
          {unitsOf(props.quantity).map((unit) => (
            <option key={unit} value={unit}>
              {unit === 'one' ? 'number' : unitLabel(unit)}
            </option>
          ))}
        </select>
      </div>
    </Shell>
  );
}

export function Check({ name, label }: FieldProps) {
  const { register } = useFormContext();
  return (
    <label className="check">
      <input type="checkbox" {...register(name)} />
      {label}
    </label>
  );
}
