import { FormProvider, useForm } from 'react-hook-form';
import { type AffectedEvent, type CaseDecision, caseDecision } from '../../../core/contract/recall.ts';
import { useWrite } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { counted } from '../../app/text/number.ts';
import { nowAtSite } from '../../app/text/time.ts';
import { Failure } from '../../components/failure.tsx';
import { Faults } from '../../components/faults.ts';
import { Choice, LongText, same } from '../../components/fields.tsx';
import { ChosenPerson } from './chosen-person.tsx';

interface Decision {
  decision: CaseDecision | '';
  reason: string;
  personId: string;
}

const EMPTY: Decision = { decision: '', reason: '', personId: '' };

interface DecideFormProps {
  readonly caseId: string;
  readonly chosen: readonly AffectedEvent[];
  readonly onDecided: () => void;
}

/** One decision on every row that is ticked. A later one stands beside the earlier, which is kept. */
export function DecideForm({ caseId, chosen, onDecided }: DecideFormProps) {
  const { timeZone } = useRegister();
  const form = useForm<Decision>({ defaultValues: EMPTY });
  const decide = useWrite('case.decide');
  const onSubmit = form.handleSubmit(({ decision, reason, personId }) =>
    decide.mutate(
      {
        data: {
          caseId,
          eventIds: chosen.map(({ eventId }) => eventId),
          decision: decision as CaseDecision,
          reason,
          personId,
          happenedAt: nowAtSite(timeZone),
        },
      },
      {
        onSuccess: () => {
          form.reset({ ...EMPTY, personId });
          onDecided();
        },
      },
    ),
  );
  const tags = chosen.map(({ tag }) => tag).join(', ');
  return (
    <FormProvider {...form}>
      <Faults value={decide.error?.error.details ?? []}>
        <form className="form no-print" aria-label="Decision" onSubmit={onSubmit} noValidate>
          <fieldset>
            <legend>Decide on the joints ticked</legend>
            <p className="small">{chosen.length === 0 ? 'No row is ticked.' : tags}</p>
            <div className="fields">
              <Choice
                name="decision"
                label="Decision"
                options={same(caseDecision.options)}
                blank="Choose what is to be done"
              />
              <ChosenPerson label="Decided by" />
              <LongText name="reason" label="Why" whole />
            </div>
          </fieldset>
          {decide.error && <Failure error={decide.error.error} what="Nothing was decided." />}
          <div className="row">
            <button type="submit" className="act" disabled={decide.isPending || chosen.length === 0}>
              Decide on {counted(chosen.length, 'record')}
            </button>
          </div>
        </form>
      </Faults>
    </FormProvider>
  );
}
