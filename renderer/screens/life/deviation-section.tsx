import { FormProvider, useForm } from 'react-hook-form';
import {
  type DeviationDecision,
  deviationDecision,
  type JointStandingView,
} from '../../../core/contract/life.ts';
import { useWrite } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { moment, nowAtSite } from '../../app/text/time.ts';
import { Failure } from '../../components/failure.tsx';
import { Faults } from '../../components/faults.ts';
import { Choice, LongText, same } from '../../components/fields.tsx';
import { SeverityMark } from '../../components/marks.tsx';
import { FormPerson } from './form-fields.tsx';

interface DeviationProps {
  readonly standing: JointStandingView;
  readonly deviation: NonNullable<JointStandingView['deviation']>;
}

/** Work out of order on a joint, and what becomes of it. */
export function DeviationSection({ standing, deviation }: DeviationProps) {
  const { timeZone } = useRegister();
  return (
    <section aria-labelledby="deviation">
      <h2 id="deviation">Deviation to decide</h2>
      <p>
        The joint stays {standing.state}. Accepted as done, it would be {deviation.ifAccepted}.
      </p>
      {deviation.works.map((work) => (
        <article className="f warning" key={work.eventId}>
          <SeverityMark severity="warning" />
          <div>
            <h3>
              {work.what} <span className="small">{moment(work.happenedAt, timeZone)}</span>
            </h3>
            {work.reasons.map((reason) => (
              <p key={reason}>{reason}</p>
            ))}
          </div>
        </article>
      ))}
      <DecideDeviation standing={standing} deviationId={deviation.id} />
    </section>
  );
}

interface Decision {
  decision: DeviationDecision | '';
  reason: string;
  personId: string;
}

interface DecideProps {
  readonly standing: JointStandingView;
  readonly deviationId: string;
}

function DecideDeviation({ standing, deviationId }: DecideProps) {
  const { timeZone } = useRegister();
  const form = useForm<Decision>({ defaultValues: { decision: '', reason: '', personId: '' } });
  const decide = useWrite('deviation.decide');
  const onSubmit = form.handleSubmit(({ decision, reason, personId }) =>
    decide.mutate({
      seen: standing.seen,
      data: {
        jointId: standing.jointId,
        deviationId,
        decision: decision as DeviationDecision,
        reason,
        personId,
        happenedAt: nowAtSite(timeZone),
      },
    }),
  );
  return (
    <FormProvider {...form}>
      <Faults value={decide.error?.error.details ?? []}>
        <form className="form no-print" aria-label="Decision on the deviation" onSubmit={onSubmit} noValidate>
          <fieldset>
            <legend>Decide</legend>
            <div className="fields">
              <Choice
                name="decision"
                label="Decision"
                options={same(deviationDecision.options)}
                blank="Choose what becomes of it"
              />
              <FormPerson name="personId" label="Decided by" signs />
              <LongText name="reason" label="Why" whole />
            </div>
            <p className="small">
              For an engineer who did none of the work. A decision is not taken back; what follows is recorded
              after it.
            </p>
          </fieldset>
          {decide.error && <Failure error={decide.error.error} what="Nothing was decided." />}
          <div className="row">
            <button type="submit" className="act" disabled={decide.isPending}>
              Decide on {standing.tag}
            </button>
          </div>
        </form>
      </Faults>
    </FormProvider>
  );
}
