import { FormProvider, useForm } from 'react-hook-form';
import type { RequestOutput } from '../../../core/contract/requests.ts';
import { useAsk, usePreview } from '../../app/ask.ts';
import { counted } from '../../app/text/number.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk } from '../../components/desk.tsx';
import { Failure } from '../../components/failure.tsx';
import { Faults } from '../../components/faults.ts';
import { Quantity, Text } from '../../components/fields.tsx';
import { SeverityMark } from '../../components/marks.tsx';
import { EMPTY_SHEET, type SheetForm, sheetInput } from './compare-sheet-values.ts';
import { JointIndex } from './joint-index.tsx';
import { JointTitle } from './joint-page.tsx';

/** What an instruction sheet says about a joint, held against register, standard and sister joints. */
export function CompareSheet({ id }: { readonly id: string }) {
  const joint = useAsk('joint.get', { id });
  const form = useForm<SheetForm>({ defaultValues: EMPTY_SHEET });
  const compare = usePreview('joint.compareSheet');
  const onSubmit = form.handleSubmit((values) => compare.mutate(sheetInput(id, values)));
  return (
    <Desk indexLabel="Joints" index={<JointIndex current={id} />}>
      <Asked asking={joint} what="the joint">
        {(detail) => <JointTitle joint={detail} />}
      </Asked>
      <FormProvider {...form}>
        <Faults value={compare.error?.error.details ?? []}>
          <form className="form" onSubmit={onSubmit} noValidate>
            <fieldset>
              <legend>What the instruction sheet says</legend>
              <p className="small lead-in">
                Leave empty what it does not say. Nothing is written; the sheet is only compared.
              </p>
              <div className="fields">
                <Text name="boltCount" label="Number of studs" inputMode="numeric" />
                <Text name="thread" label="Thread" hint="As 7/8-9 UNC or M24x3" />
                <Text name="grade" label="Stud grade" />
                <Text name="gasket" label="Gasket" />
                <Quantity name="torque" label="Torque" quantity="torque" />
                <Quantity name="torqueTolerance" label="Torques count as equal within" quantity="ratio" />
              </div>
            </fieldset>
            {compare.error && <Failure error={compare.error.error} what="The sheet was not compared." />}
            <div>
              <button type="submit" className="act" disabled={compare.isPending}>
                Compare the sheet
              </button>
            </div>
          </form>
        </Faults>
      </FormProvider>
      {compare.data && <Compared comparison={compare.data} />}
    </Desk>
  );
}

function Compared({ comparison }: { readonly comparison: RequestOutput<'joint.compareSheet'> }) {
  const { differences, notCompared, agreed, references } = comparison;
  const sisters = references.filter(({ against }) => against === 'sister joint').length;
  return (
    <section className="stack" aria-labelledby="compared">
      <h2 id="compared">
        {differences.length === 0 ? 'No difference found' : counted(differences.length, 'difference')}
      </h2>
      <p className="small" role="status">
        {counted(agreed, 'value')} agreed. Held against the register, the standard and{' '}
        {counted(sisters, 'sister joint')}.
      </p>
      {differences.map((difference) => (
        <article className="f warning" key={`${difference.field} ${difference.against} ${difference.name}`}>
          <SeverityMark severity="warning" />
          <div>
            <h3>{difference.text}</h3>
            <p>
              Sheet: {difference.sheet}. {difference.name}: {difference.other}.
            </p>
          </div>
        </article>
      ))}
      {notCompared.length > 0 && (
        <>
          <h3>Not compared</h3>
          <ul className="reasons small">
            {notCompared.map((each) => (
              <li key={`${each.field} ${each.against} ${each.name}`}>
                {each.name}: {each.reason}
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
