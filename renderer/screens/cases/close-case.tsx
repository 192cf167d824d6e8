import { FormProvider, useForm } from 'react-hook-form';
import type { CaseSummary } from '../../../core/contract/recall.ts';
import { useWrite } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { nowAtSite } from '../../app/text/time.ts';
import { Failure } from '../../components/failure.tsx';
import { Faults } from '../../components/faults.ts';
import { LongText } from '../../components/fields.tsx';
import { ChosenPerson } from './chosen-person.tsx';

/** Approves the decisions and ends the case; what is missing for it is the service's to say. */
export function CloseCase({ summary }: { readonly summary: CaseSummary }) {
  const { timeZone } = useRegister();
  const form = useForm({ defaultValues: { personId: '', conclusion: '', measures: '' } });
  const close = useWrite('case.close');
  const onSubmit = form.handleSubmit((values) =>
    close.mutate({ data: { caseId: summary.id, ...values, happenedAt: nowAtSite(timeZone) } }),
  );
  return (
    <FormProvider {...form}>
      <Faults value={close.error?.error.details ?? []}>
        <form className="form no-print" aria-label="Closure" onSubmit={onSubmit} noValidate>
          <fieldset>
            <legend>Approve and close</legend>
            <p className="small">
              The list is frozen as it stands. A closed case is not opened again, and nobody approves what
              they alone decided.
            </p>
            <div className="fields">
              <ChosenPerson label="Approved by" />
              <LongText name="conclusion" label="Conclusion" whole />
              <LongText
                name="measures"
                label="What was changed so that it does not come back"
                hint="Interval, repair, procedure"
                whole
              />
            </div>
          </fieldset>
          {close.error && <Failure error={close.error.error} what={`${summary.number} was not closed.`} />}
          <div className="row">
            <button type="submit" className="quiet" disabled={close.isPending}>
              Close {summary.number} for good
            </button>
          </div>
        </form>
      </Faults>
    </FormProvider>
  );
}
