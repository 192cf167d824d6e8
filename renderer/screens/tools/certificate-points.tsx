import type { ClipboardEvent, KeyboardEvent } from 'react';
import { useFieldArray, useFormContext, useWatch } from 'react-hook-form';
import type { Unit } from '../../../core/units/units.ts';
import { unitLabel } from '../../app/text/number.ts';
import { bare, useFaultsUnder } from '../../components/faults.ts';
import { COLUMNS } from './certificate-faults.ts';
import {
  blankRow,
  type CertificateForm,
  type Measured,
  pastedRows,
  readable,
} from './certificate-form-values.ts';

/** The two lists of points on a form, and what a fault's path calls them. */
const SERIES = {
  rows: { legend: 'Points', path: 'points', said: '' },
  foundRows: { legend: 'Points as found, before adjustment', path: 'asFound.points', said: ' as found' },
} as const;

interface PointsProps {
  readonly kind: Measured;
  readonly series: keyof typeof SERIES;
}

/** "points.2.torque" → "Point 3, torque". */
function pointWords(path: string, kind: Measured, said: string): string {
  const [, row, part] = /points\.(\d+)\.?(\w*)/.exec(path) ?? [];
  const words = COLUMNS[kind].find((column) => column.path === part)?.words.toLowerCase();
  return row === undefined
    ? `Points${said}`
    : [`Point ${Number(row) + 1}${said}`, words].filter(Boolean).join(', ');
}

/** The certificate's points, typed row by row or pasted from a sheet into the first cell. */
export function CertificatePoints({ kind, series }: PointsProps) {
  const { control, register } = useFormContext<CertificateForm>();
  const { fields, append, remove, replace } = useFieldArray({ control, name: series });
  const rows = useWatch({ control, name: series });
  const [pressureUnit, torqueUnit] = useWatch({ control, name: ['pressureUnit', 'torqueUnit'] });
  const { legend, path, said } = SERIES[series];
  const faults = useFaultsUnder(path);
  const wrench = kind === 'pressure-torque';
  const units = { pressureUnit, torqueUnit };

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
  const cell = (at: number, { column, path: part, words, unit }: (typeof COLUMNS)[Measured][number]) => (
    <td key={column} className="num">
      <input
        aria-label={`${words}, point ${at + 1}${said}`}
        inputMode="decimal"
        autoComplete="off"
        data-field={`${path}.${at}.${part}`}
        aria-invalid={readable(rows?.[at]?.[column] ?? '', units[unit]) ? undefined : true}
        {...(column === 'first' ? { onPaste } : {})}
        {...register(`${series}.${at}.${column}`)}
      />
    </td>
  );
  const heading = ({ column, words, unit }: (typeof COLUMNS)[Measured][number]) => (
    <th key={column} scope="col" className="num">
      {words}
      {column === 'uncertainty' && ', ±'}{' '}
      {units[unit] !== '' && <span className="unit">{unitLabel(units[unit] as Unit)}</span>}
    </th>
  );
  const [firstColumn, secondColumn, ownColumn] = COLUMNS[kind];

  return (
    <fieldset data-field={path}>
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
            {firstColumn && heading(firstColumn)}
            {secondColumn && heading(secondColumn)}
            {wrench && <th scope="col">Pressure was</th>}
            {ownColumn && heading(ownColumn)}
            <th scope="col">
              <span className="unseen">Remove</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {fields.map((field, at) => (
            <tr key={field.id}>
              <th scope="row">{at + 1}</th>
              {firstColumn && cell(at, firstColumn)}
              {secondColumn && cell(at, secondColumn)}
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
              {ownColumn && cell(at, ownColumn)}
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
          {pointWords(bare(fault.field), kind, said)}: {fault.allowed}
        </p>
      ))}
      <button type="button" className="quiet" onClick={() => append(blankRow())}>
        Add a point{said}
      </button>
    </fieldset>
  );
}
