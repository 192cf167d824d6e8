import { type KeyboardEvent, useCallback, useEffect } from 'react';
import { useFieldArray, useFormContext, useWatch } from 'react-hook-form';
import type { JointDetail } from '../../../core/contract/joint.ts';
import { enter } from '../../../core/units/entered.ts';
import { type Unit, unitsOf } from '../../../core/units/units.ts';
import { unitLabel } from '../../app/text/number.ts';
import { useFault } from '../../components/faults.ts';
import { Choice } from '../../components/fields.tsx';
import { type BreakoutForm, readableAs, rowsFor, studsOf } from './record-form-values.ts';

/** One line per stud: first movement, and what became of it. Enter goes to the next stud, as on a keypad. */
export function BreakoutGrid({ joint }: { readonly joint: JointDetail }) {
  const { control, register } = useFormContext<BreakoutForm>();
  const { fields, append } = useFieldArray({ control, name: 'readings' });
  const [readAs, unit, readings, method, boltSet] = useWatch({
    control,
    name: ['readAs', 'unit', 'readings', 'method', 'boltSet'],
  });
  const studs = studsOf(joint, boltSet);
  const readable = readableAs(method);
  useMatchingRows(studs);
  const readIn = useReadIn(readable, readAs);
  const fault = useFault('readings');
  const units = unitsOf(QUANTITY[readAs]);
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
          <select
            id="readAs"
            value={readAs}
            onChange={(event) => readIn(event.target.value === 'dialled' ? 'dialled' : 'torque')}
          >
            {readable.map((each) => (
              <option key={each} value={each}>
                {READ_AS[each]}
              </option>
            ))}
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
      {studs === null && (
        <button type="button" className="quiet" onClick={() => append({ text: '', outcome: '' })}>
          Add a stud
        </button>
      )}
      {fault && <p className="fault-line">{fault.allowed}</p>}
    </fieldset>
  );
}

const READ_AS = { dialled: 'pressure on the gauge', torque: 'torque' };
const QUANTITY = { dialled: 'pressure', torque: 'torque' } as const;

/** Another bolt set has another number of studs. */
function useMatchingRows(studs: number | null) {
  const { getValues, setValue } = useFormContext<BreakoutForm>();
  useEffect(() => {
    if (studs === null) return;
    const rows = getValues('readings');
    const matching = rowsFor(studs, rows);
    if (matching.length !== rows.length) setValue('readings', matching);
  }, [studs, getValues, setValue]);
}

/** Sets what is read together with a unit of it, also where another method no longer has what was read before. */
function useReadIn(readable: readonly BreakoutForm['readAs'][], readAs: BreakoutForm['readAs']) {
  const { setValue } = useFormContext<BreakoutForm>();
  const readIn = useCallback(
    (next: BreakoutForm['readAs']) => {
      setValue('readAs', next);
      const [first] = unitsOf(QUANTITY[next]);
      if (first !== undefined) setValue('unit', first);
    },
    [setValue],
  );
  const [only] = readable;
  const lost = only !== undefined && !readable.includes(readAs);
  useEffect(() => {
    if (lost) readIn(only);
  }, [lost, only, readIn]);
  return readIn;
}
