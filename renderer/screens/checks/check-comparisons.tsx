import { useFieldArray, useFormContext, useWatch } from 'react-hook-form';
import type { ToolData } from '../../../core/contract/tool.ts';
import { type Unit, unitsOf } from '../../../core/units/units.ts';
import { unitLabel, withUnit } from '../../app/text/number.ts';
import { bare, useFaultsUnder } from '../../components/faults.ts';
import { Choice, Quantity } from '../../components/fields.tsx';
import { StandingShape } from '../../components/standing-shape.tsx';
import { signed } from '../tools/record-checks.tsx';
import type { useCheckAssessment } from './check-assessment.ts';
import { blankComparison, type CheckForm, comparedOf, sentPlace } from './check-form-values.ts';

type Column = 'pressure' | 'intended' | 'reference';
type Assessing = ReturnType<typeof useCheckAssessment>;

/** What the columns are called for each class, and what their units measure. */
const COLUMNS = {
  'torque at pressure': [
    ['pressure', 'Gauge showed', 'pressure'],
    ['intended', 'Torque it should give', 'torque'],
    ['reference', 'Reference read', 'torque'],
  ],
  torque: [
    ['intended', 'Wrench set to', 'torque'],
    ['reference', 'Reference read', 'torque'],
  ],
  pressure: [
    ['intended', 'Gauge showed', 'pressure'],
    ['reference', 'Reference read', 'pressure'],
  ],
} as const satisfies Record<
  NonNullable<ReturnType<typeof comparedOf>>,
  readonly (readonly [Column, string, 'pressure' | 'torque'])[]
>;

interface ComparisonsProps {
  readonly tool: ToolData;
  readonly assessing: Assessing;
}

/** What the tool delivered beside what it should have, each in the unit it was read in. */
export function CheckComparisons({ tool, assessing }: ComparisonsProps) {
  const { control, register } = useFormContext<CheckForm>();
  const { fields, append, remove } = useFieldArray({ control, name: 'rows' });
  const faults = useFaultsUnder('comparisons');
  const compared = comparedOf(tool);
  if (compared === null) return null;
  const columns = COLUMNS[compared];
  return (
    <fieldset>
      <legend>Comparison with the reference</legend>
      <div className="fields narrow lead-in">
        {columns.map(([column, words, quantity]) => (
          <Choice
            key={column}
            name={`${column}Unit`}
            label={`Unit: ${words.toLowerCase()}`}
            options={unitsOf(quantity).map((unit) => ({ value: unit, words: unitLabel(unit) }))}
            blank="Choose the unit"
          />
        ))}
        <Quantity
          name="limit"
          label="Largest permissible error"
          quantity="ratio"
          hint="Of what it should be, either way"
        />
      </div>
      <table className="grid-in">
        <thead>
          <tr>
            <th scope="col">
              <span className="unseen">Comparison</span>
            </th>
            {columns.map(([column, words]) => (
              <th key={column} scope="col" className="num">
                {words}
              </th>
            ))}
            <th scope="col" className="num">
              Error
            </th>
            <th scope="col">
              <span className="unseen">Remove</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {fields.map((field, at) => (
            <tr key={field.id}>
              <th scope="row">{at + 1}</th>
              {columns.map(([column, words]) => (
                <td key={column} className="num">
                  <input
                    aria-label={`${words}, comparison ${at + 1}`}
                    inputMode="decimal"
                    autoComplete="off"
                    data-field={`comparisons.${at}.${column}`}
                    aria-invalid={
                      faults.some((fault) => bare(fault.field) === `comparisons.${at}.${column}`) || undefined
                    }
                    {...register(`rows.${at}.${column}`)}
                  />
                </td>
              ))}
              <td className="num">
                <RowError at={at} assessing={assessing} />
              </td>
              <td>
                <button type="button" className="link small" onClick={() => remove(at)}>
                  Remove<span className="unseen"> comparison {at + 1}</span>
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {faults.map((fault) => (
        <p className="fault-line" key={fault.field}>
          {rowWords(bare(fault.field), columns)}: {fault.allowed}
        </p>
      ))}
      <button type="button" className="quiet" onClick={() => append(blankComparison())}>
        Add a comparison
      </button>
      {compared === 'torque at pressure' && <ByCertificate assessing={assessing} />}
    </fieldset>
  );
}

function rowWords(path: string, columns: readonly (readonly [Column, string, string])[]): string {
  const [, row, column] = /^comparisons\.(\d+)\.(\w+)$/.exec(path) ?? [];
  const words = columns.find(([name]) => name === column)?.[1];
  return row === undefined ? 'Comparisons' : `${words ?? column}, comparison ${Number(row) + 1}`;
}

function RowError({ at, assessing }: { readonly at: number; readonly assessing: Assessing }) {
  const rows: CheckForm['rows'] = useWatch({ name: 'rows' });
  const place = sentPlace(rows, at);
  const found = place === null ? undefined : assessing.data?.comparisons[place];
  if (found === undefined || found.error === null) return <span className="unknown">not known</span>;
  const standing =
    found.withinLimit === null ? 'not known' : found.withinLimit ? ('kept' as const) : ('broken' as const);
  return (
    <span className={found.withinLimit === false ? 'limit-state not-met' : 'limit-state'}>
      <StandingShape standing={standing} />
      {signed(found.error)}
      <span className="unseen">
        {standing === 'kept' ? ', within the limit' : standing === 'broken' ? ', outside the limit' : ''}
      </span>
    </span>
  );
}

/** What the certificate in force says the wrench should give, so that nobody reads it off a chart. */
function ByCertificate({ assessing }: { readonly assessing: Assessing }) {
  const [rows, pressureUnit, intendedUnit] = useWatch<CheckForm, ['rows', 'pressureUnit', 'intendedUnit']>({
    name: ['rows', 'pressureUnit', 'intendedUnit'],
  });
  const unit = (intendedUnit || 'N.m') as Unit;
  const said = rows.flatMap((row, at) => {
    const place = sentPlace(rows, at);
    const torque = place === null ? null : (assessing.data?.comparisons[place]?.byCertificate ?? null);
    return torque === null
      ? []
      : [`${withUnit(torque, unit)} at ${row.pressure} ${unitLabel((pressureUnit || 'bar') as Unit)}`];
  });
  if (assessing.data === undefined) return null;
  return (
    <p className="small after">
      {assessing.data.certificate === null
        ? 'No certificate is in force on that day; what it should give is not known from the register.'
        : said.length === 0
          ? `Certificate ${assessing.data.certificate} says what it should give once a pressure and its unit are entered.`
          : `By the line of certificate ${assessing.data.certificate}: ${said.join(', ')}.`}
    </p>
  );
}
