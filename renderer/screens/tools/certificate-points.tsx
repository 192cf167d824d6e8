import type { ClipboardEvent } from 'react';
import { useFieldArray, useFormContext, useWatch } from 'react-hook-form';
import { unitsOf } from '../../../core/units/units.ts';
import { unitLabel } from '../../app/text/number.ts';
import { useFaultsUnder } from '../../components/faults.ts';
import { Choice } from '../../components/fields.tsx';
import {
  blankRow,
  type CertificateForm,
  type Measured,
  pastedRows,
  readable,
} from './certificate-form-values.ts';

const HEADINGS: Record<Measured, readonly [string, string]> = {
  'pressure-torque': ['Pressure', 'Torque'],
  gauge: ['Gauge showed', 'Reference'],
  'hand torque': ['Wrench set to', 'Reference'],
};

/** "data.measured.points.2.torque" → "point 3, torque". */
function pointWords(path: string): string {
  const [, row, part] = /points\.(\d+)\.?(\w*)/.exec(path) ?? [];
  return row === undefined ? 'Points' : [`Point ${Number(row) + 1}`, part].filter(Boolean).join(', ');
}

const offered = (quantity: 'pressure' | 'torque') =>
  unitsOf(quantity).map((unit) => ({ value: unit, words: unitLabel(unit) }));

/** The certificate's points, typed row by row or pasted from a sheet into the first cell. */
export function CertificatePoints({ kind }: { readonly kind: Measured }) {
  const { control, register } = useFormContext<CertificateForm>();
  const { fields, append, remove, replace } = useFieldArray({ control, name: 'rows' });
  const rows = useWatch({ control, name: 'rows' });
  const [pressureUnit, torqueUnit] = useWatch({ control, name: ['pressureUnit', 'torqueUnit'] });
  const faults = useFaultsUnder('points');
  const [first, second] = HEADINGS[kind];
  const wrench = kind === 'pressure-torque';
  const hand = kind === 'hand torque';

  const onPaste = (event: ClipboardEvent) => {
    const pasted = pastedRows(event.clipboardData.getData('text'));
    if (pasted === null) return;
    event.preventDefault();
    replace(pasted);
  };
  const wrong = (text: string | undefined, unit: string) => (readable(text ?? '', unit) ? undefined : true);

  return (
    <fieldset>
      <legend>Points</legend>
      <div className="fields">
        {!hand && (
          <Choice
            name="pressureUnit"
            label="Unit of pressure"
            options={offered('pressure')}
            blank="Choose the unit"
          />
        )}
        {(wrench || hand) && (
          <Choice
            name="torqueUnit"
            label="Unit of torque"
            options={offered('torque')}
            blank="Choose the unit"
          />
        )}
      </div>
      <p className="small lead-in">
        Type the points, or paste rows of a sheet into the first cell. The decimal sign is a point.
      </p>
      <table className="grid-in points">
        <thead>
          <tr>
            <th scope="col">
              <span className="unseen">Point</span>
            </th>
            <th scope="col">{first}</th>
            <th scope="col">{second}</th>
            {wrench && <th scope="col">Pressure was</th>}
            <th scope="col">
              <span className="unseen">Remove</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {fields.map((field, at) => (
            <tr key={field.id}>
              <th scope="row">{at + 1}</th>
              <td className="num">
                <input
                  aria-label={`${first}, point ${at + 1}`}
                  inputMode="decimal"
                  aria-invalid={wrong(rows?.[at]?.first, pressureUnit)}
                  onPaste={onPaste}
                  {...register(`rows.${at}.first`)}
                />
              </td>
              <td className="num">
                <input
                  aria-label={`${second}, point ${at + 1}`}
                  inputMode="decimal"
                  aria-invalid={wrong(rows?.[at]?.second, torqueUnit)}
                  {...register(`rows.${at}.second`)}
                />
              </td>
              {wrench && (
                <td>
                  <select aria-label={`Direction, point ${at + 1}`} {...register(`rows.${at}.direction`)}>
                    <option value="up">rising</option>
                    <option value="down">falling</option>
                  </select>
                </td>
              )}
              <td>
                <button type="button" className="link small" onClick={() => remove(at)}>
                  Remove<span className="unseen"> point {at + 1}</span>
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {faults.map((fault) => (
        <p className="fault-line" key={fault.field}>
          {pointWords(fault.field)}: {fault.allowed}
        </p>
      ))}
      <button type="button" className="quiet" onClick={() => append(blankRow())}>
        Add a point
      </button>
    </fieldset>
  );
}
