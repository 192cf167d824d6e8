import { FormProvider, useFieldArray, useForm, useFormContext } from 'react-hook-form';
import { Link, useLocation } from 'wouter';
import type { SiteRow, SiteRowKind } from '../../../core/contract/site.ts';
import { useAsk, useWrite } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { Failure } from '../../components/failure.tsx';
import { Faults } from '../../components/faults.ts';
import { Check, Choice, Quantity, same, Text } from '../../components/fields.tsx';
import { EvidenceIndex } from '../evidence/evidence-index.tsx';
import { KINDS } from './kinds.ts';
import {
  blankBand,
  emptyRow,
  GASKET_VALUES,
  LUBRICANT_VALUES,
  type RowValue,
  type SiteRowForm,
  siteRowForm,
  siteRowInput,
} from './site-row-form-values.ts';

export function NewSiteRow({ path }: { readonly path: string }) {
  const found = KINDS.find((each) => each.path === path);
  return (
    <Desk indexLabel="Evidence" index={<EvidenceIndex />}>
      {found === undefined ? (
        <Title
          name="There is no such table"
          under="The site keeps flanges, stud grades, gaskets and lubricants."
        />
      ) : (
        <>
          <Title name={`New ${found.noun}`} under="A row of the site’s own, with the source it comes from." />
          <RowEditor kind={found.kind} row={null} />
        </>
      )}
    </Desk>
  );
}

export function EditSiteRow({ id }: { readonly id: string }) {
  const asking = useAsk('siteRow.list', { kind: null, text: '' });
  return (
    <Desk indexLabel="Evidence" index={<EvidenceIndex />}>
      <Asked asking={asking} what="the row">
        {({ rows }) => {
          const row = rows.find((each) => each.id === id);
          return row === undefined ? (
            <Title name="There is no such row" under="The address names a row this site does not have." />
          ) : (
            <>
              <Title
                name={`Edit ${row.data.key}`}
                under="Saving makes a new version; settings already issued keep the one they were computed from."
              />
              <RowEditor kind={row.data.kind} row={row} />
            </>
          );
        }}
      </Asked>
    </Desk>
  );
}

interface RowEditorProps {
  readonly kind: SiteRowKind;
  readonly row: SiteRow | null;
}

function RowEditor({ kind, row }: RowEditorProps) {
  const form = useForm<SiteRowForm>({ defaultValues: row === null ? emptyRow() : siteRowForm(row.data) });
  const save = useWrite('siteRow.save');
  const [, goTo] = useLocation();
  const onSubmit = form.handleSubmit((values) =>
    save.mutate(
      {
        id: row?.id ?? null,
        version: row?.version ?? null,
        data: siteRowInput(kind, values, row?.data ?? null),
      },
      { onSuccess: () => goTo('/site-tables') },
    ),
  );
  return (
    <FormProvider {...form}>
      <Faults value={save.error?.error.details ?? []}>
        <form className="form" onSubmit={onSubmit} noValidate>
          <fieldset>
            <legend>What it is</legend>
            <div className="fields">
              <Text
                name="key"
                label="Name"
                hint={
                  row === null ? 'Stays as it is: joints name it' : 'Can’t be changed; retire the row instead'
                }
              />
              <Text name="source" label="Source" hint="Drawing, data sheet or approved procedure" whole />
            </div>
          </fieldset>
          <KindFields kind={kind} />
          {row !== null && <Check name="retired" label="Retired: not offered any more" />}
          {save.error && <Failure error={save.error.error} what="The row was not saved." />}
          <div className="row">
            <button type="submit" className="act" disabled={save.isPending}>
              Save row
            </button>
            <Link className="quiet" href="/site-tables">
              Leave without saving
            </Link>
          </div>
        </form>
      </Faults>
    </FormProvider>
  );
}

function KindFields({ kind }: { readonly kind: SiteRowKind }) {
  switch (kind) {
    case 'flange':
      return <FlangeFields />;
    case 'stud grade':
      return <Bands />;
    case 'gasket':
      return <Values legend="Values of the gasket" values={GASKET_VALUES} />;
    case 'lubricant':
      return <Values legend="Friction" values={LUBRICANT_VALUES} evidence />;
  }
}

function FlangeFields() {
  const choices = useAsk('reference.choices', {});
  return (
    <fieldset>
      <legend>Bolting</legend>
      <p className="small lead-in">
        What is left empty stays not known. Joints on this flange take the rest.
      </p>
      <div className="fields">
        <Text name="count" label="Number of studs" inputMode="numeric" />
        <Text
          name="thread"
          label="Thread"
          offers={choices.data?.threads ?? []}
          hint="As 7/8-9 UNC or M24x3"
        />
        <Quantity name="circle" label="Bolt circle" quantity="length" />
        <Quantity name="studLength" label="Stud length" quantity="length" />
        <Quantity name="grip" label="Grip length" quantity="length" hint="Between the two nuts" />
      </div>
    </fieldset>
  );
}

function Bands() {
  const { control } = useFormContext<SiteRowForm>();
  const { fields, append, remove } = useFieldArray({ control, name: 'bands' });
  return (
    <>
      {fields.map((field, at) => (
        <fieldset key={field.id}>
          <legend>Diameter range {at + 1}</legend>
          <div className="fields">
            <Quantity name={`bands.${at}.over`} label="Diameter over" quantity="length" />
            <Quantity name={`bands.${at}.upTo`} label="Up to and including" quantity="length" />
            <Quantity name={`bands.${at}.yieldStrength`} label="Least yield strength" quantity="stress" />
            <Quantity name={`bands.${at}.tensileStrength`} label="Least tensile strength" quantity="stress" />
          </div>
          {fields.length > 1 && (
            <button type="button" className="link small" onClick={() => remove(at)}>
              Remove<span className="unseen"> range {at + 1}</span>
            </button>
          )}
        </fieldset>
      ))}
      <button type="button" className="quiet" onClick={() => append(blankBand())}>
        Add a range
      </button>
    </>
  );
}

interface ValuesProps {
  readonly legend: string;
  readonly values: readonly RowValue[];
  readonly evidence?: boolean;
}

function Values({ legend, values, evidence }: ValuesProps) {
  return (
    <fieldset>
      <legend>{legend}</legend>
      <div className="fields">
        {values.map(({ name, label, quantity }) => (
          <Quantity key={name} name={`values.${name}`} label={label} quantity={quantity} />
        ))}
        {evidence && (
          <Choice
            name="evidence"
            label="Evidence for friction"
            options={same(['published', 'measured', 'assumed'])}
          />
        )}
      </div>
    </fieldset>
  );
}
