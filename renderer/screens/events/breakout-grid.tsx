import type { KeyboardEvent } from 'react';
import { useFieldArray, useFormContext, useWatch } from 'react-hook-form';
import { enter } from '../../../core/units/entered.ts';
import { type Unit, unitsOf } from '../../../core/units/units.ts';
import { unitLabel } from '../../app/text/number.ts';
import { useFault } from '../../components/faults.ts';
import { Choice } from '../../components/fields.tsx';
import type { BreakoutForm } from './record-form-values.ts';

/** One line per stud: first movement, and what became of it. Enter goes to the next stud, as on a keypad. */
export function BreakoutGrid({ countKnown }: { readonly countKnown: boolean }) {
  const { control, register, setValue } = useFormContext<BreakoutForm>();
  const { fields, append } = useFieldArray({ control, name: 'readings' });
  const [readAs, unit, readings] = useWatch({ control, name: ['readAs', 'unit', 'readings'] });
  const fault = useFault('readings');
  const quantity = readAs === 'dialled' ? 'pressure' : 'torque';
  const units = unitsOf(quantity);
  const readAsField = register('readAs', {
    onChange: (event: { target: { value: string } }) => {
      const [first] = unitsOf(event.target.value === 'dialled' ? 'pressure' : 'torque');
      if (first !== undefined) setValue('unit', first);
    },
  });
  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    if (event.key !== 'Enter' || !(event.target instanceof HTMLInputElement)) return;
    event.preventDefault();
    const inputs = [...event.currentTarget.querySelectorAll('input')];
    inputs[inputs.indexOf(event.target) + 1]?.focus();
  };
  return (
    <fieldset>
      <legend>First movement of each stud</legend>
      <div className="fields">
        <div className="field">
          <label htmlFor="readAs">Read as</label>
          <select id="readAs" {...readAsField}>
            <option value="dialled">pressure on the gauge</option>
            <option value="torque">torque</option>
          </select>
        </div>
        <Choice
          name="unit"
          label="Unit of the readings"
          options={units.map((each) => ({ value: each, words: unitLabel(each) }))}
        />
      </div>
      <p className="small lead-in">
        A stud left empty was not loosened. The decimal sign is a point. Enter goes to the next stud.
      </p>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: Enter only moves the focus between the fields inside */}
      <div className="studs" onKeyDown={onKeyDown}>
        {fields.map((field, at) => {
          const text = readings?.[at]?.text ?? '';
          const wrong = text.trim() !== '' && enter(text, unit as Unit) === null;
          return (
            <div className="stud" key={field.id}>
              <span aria-hidden="true">{at + 1}</span>
              <input
                aria-label={`Stud ${at + 1} reading`}
                inputMode="decimal"
                autoComplete="off"
                aria-invalid={wrong || undefined}
                {...register(`readings.${at}.text`)}
              />
              <select aria-label={`Stud ${at + 1} outcome`} {...register(`readings.${at}.outcome`)}>
                <option value="">{text.trim() === '' ? 'not loosened' : 'turned'}</option>
                {text.trim() === '' && <option value="turned">turned, not read</option>}
                <option value="would not turn">would not turn</option>
                <option value="cut">cut</option>
              </select>
            </div>
          );
        })}
      </div>
      {!countKnown && (
        <button type="button" className="quiet" onClick={() => append({ text: '', outcome: '' })}>
          Add a stud
        </button>
      )}
      {fault && <p className="fault-line">{fault.allowed}</p>}
    </fieldset>
  );
}
