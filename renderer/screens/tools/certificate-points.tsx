import type { ClipboardEvent, KeyboardEvent } from 'react';
import { useFieldArray, useFormContext, useWatch } from 'react-hook-form';
import { bare, useFaultsUnder } from '../../components/faults.ts';
import {
  blankRow,
  type CertificateForm,
  type Measured,
  pastedRows,
  readable,
} from './certificate-form-values.ts';

const HEADINGS: Readonly<Record<Measured, readonly [string, string]>> = {
  'pressure-torque': ['Pressure', 'Torque'],
  gauge: ['Gauge showed', 'Reference'],
  'hand torque': ['Wrench set to', 'Reference'],
};

/** The two lists of points on a form, and what a fault's path calls them. */
const SERIES = {
  rows: { legend: 'Points', path: 'points', said: '' },
  foundRows: { legend: 'Points as found, before adjustment', path: 'asFound', said: ' as found' },
} as const;

interface PointsProps {
  readonly kind: Measured;
  readonly series: keyof typeof SERIES;
}

/** "points.2.torque" → "Point 3, torque". */
function pointWords(path: string, said: string): string {
  const [, row, part] = /points\.(\d+)\.?(\w*)/.exec(path) ?? [];
  return row === undefined
    ? `Points${said}`
    : [`Point ${Number(row) + 1}${said}`, part].filter(Boolean).join(', ');
}

/** The certificate's points, typed row by row or pasted from a sheet into the first cell. */
export function CertificatePoints({ kind, series }: PointsProps) {
  const { control, register } = useFormContext<CertificateForm>();
  const { fields, append, remove, replace } = useFieldArray({ control, name: series });
  const rows = useWatch({ control, name: series });
  const [pressureUnit, torqueUnit] = useWatch({ control, name: ['pressureUnit', 'torqueUnit'] });
  const { legend, path, said } = SERIES[series];
  const faults = useFaultsUnder(path);
  const [first, second] = HEADINGS[kind];
  const wrench = kind === 'pressure-torque';
  const units = { first: kind === 'hand torque' ? torqueUnit : pressureUnit, second: torqueUnit };

  const onPaste = (event: ClipboardEvent) => {
    const pasted = pastedRows(event.clipboardData.getData('text'));
    if (pasted === null) return;
    event.preventDefault();
    replace(pasted);
  };
  // Enter goes down the column, as it does in a sheet, and makes the next row at the end; it never sends the form.
  const onKeyDown = (event: KeyboardEvent<HTMLTableElement>) => {
    const { target } = event;
    if (event.key !== 'Enter' || !(target instanceof HTMLInputElement)) return;
    event.preventDefault();
    const [, at = '0', column] = /\.(\d+)\.(\w+)$/.exec(target.name) ?? [];
    const next = Number(at) + 1;
    const focusName = `${series}.${next}.${column}`;
    if (next === fields.length) append(blankRow(), { shouldFocus: true, focusName });
    else document.querySelector<HTMLInputElement>(`input[name="${focusName}"]`)?.focus();
  };
  const cell = (at: number, column: 'first' | 'second' | 'uncertainty', label: string, unit: string) => (
    <td className="num">
      <input
        aria-label={`${label}, point ${at + 1}${said}`}
        inputMode="decimal"
        autoComplete="off"
        aria-invalid={readable(rows?.[at]?.[column] ?? '', unit) ? undefined : true}
        {...(column === 'first' ? { onPaste } : {})}
        {...register(`${series}.${at}.${column}`)}
      />
    </td>
  );

  return (
    <fieldset>
      <legend>{legend}</legend>
      <p className="small lead-in">
        Type the points, or paste rows of a sheet into the first cell. The decimal sign is a point; Enter goes
        down the column.
      </p>
      <table className="grid-in points" onKeyDown={onKeyDown}>
        <thead>
          <tr>
            <th scope="col">
              <span className="unseen">Point</span>
            </th>
            <th scope="col">{first}</th>
            <th scope="col">{second}</th>
            {wrench && <th scope="col">Pressure was</th>}
            {wrench && <th scope="col">Own uncertainty, ±</th>}
            <th scope="col">
              <span className="unseen">Remove</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {fields.map((field, at) => (
            <tr key={field.id}>
              <th scope="row">{at + 1}</th>
              {cell(at, 'first', first, units.first)}
              {cell(at, 'second', second, units.second)}
              {wrench && (
                <td>
                  <select
                    aria-label={`Direction, point ${at + 1}${said}`}
                    {...register(`${series}.${at}.direction`)}
                  >
                    <option value="up">rising</option>
                    <option value="down">falling</option>
                  </select>
                </td>
              )}
              {wrench && cell(at, 'uncertainty', 'Own uncertainty', torqueUnit)}
              <td>
                <button type="button" className="link small" onClick={() => remove(at)}>
                  Remove
                  <span className="unseen">
                    {' '}
                    point {at + 1}
                    {said}
                  </span>
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {faults.map((fault) => (
        <p className="fault-line" key={fault.field}>
          {pointWords(bare(fault.field), said)}: {fault.allowed}
        </p>
      ))}
      <button type="button" className="quiet" onClick={() => append(blankRow())}>
        Add a point{said}
      </button>
    </fieldset>
  );
}
