import { FormProvider, useFieldArray, useForm, useFormContext } from 'react-hook-form';
import { Link, useLocation } from 'wouter';
import type { PlanRow } from '../../../core/contract/site.ts';
import { useAsk, useWrite } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { Failure } from '../../components/failure.tsx';
import { Faults } from '../../components/faults.ts';
import { Check, Choice, LongText, Quantity, same, Text } from '../../components/fields.tsx';
import { EvidenceIndex } from '../evidence/evidence-index.tsx';
import { blankStep, emptyPlan, type PlanForm, planForm, planInput } from './plan-form-values.ts';

type SitePlan = Extract<PlanRow, { origin: 'site' }>;

export function NewPlan() {
  return (
    <Desk indexLabel="Evidence" index={<EvidenceIndex />}>
      <Title name="New pass plan" under="It is used once somebody has approved it." />
      <PlanEditor plan={null} />
    </Desk>
  );
}

export function EditPlan({ id }: { readonly id: string }) {
  const plans = useAsk('plan.list', {});
  return (
    <Desk indexLabel="Evidence" index={<EvidenceIndex />}>
      <Asked asking={plans} what="the pass plan">
        {({ rows }) => {
          const plan = rows.find((row) => row.id === id);
          return plan?.origin !== 'site' ? (
            <Title name="There is no such plan" under="Plans that come with the program are not edited." />
          ) : (
            <>
              <Title
                name={`Edit ${plan.name}`}
                under="Saving makes a new version that has to be approved again."
              />
              <PlanEditor plan={plan} />
            </>
          );
        }}
      </Asked>
    </Desk>
  );
}

function PlanEditor({ plan }: { readonly plan: SitePlan | null }) {
  const form = useForm<PlanForm>({ defaultValues: plan === null ? emptyPlan() : planForm(plan.data) });
  const save = useWrite('plan.save');
  const [, goTo] = useLocation();
  const onSubmit = form.handleSubmit((values) =>
    save.mutate(
      { id: plan?.id ?? null, version: plan?.version ?? null, data: planInput(values) },
      { onSuccess: () => goTo('/plans') },
    ),
  );
  return (
    <FormProvider {...form}>
      <Faults value={save.error?.error.details ?? []}>
        <form className="form" onSubmit={onSubmit} noValidate>
          <fieldset>
            <legend>Plan</legend>
            <div className="fields">
              <Text name="name" label="Name" />
              <Text
                name="groupSize"
                label="Studs in a group"
                inputMode="numeric"
                hint="Only for steps in groups of neighbouring studs"
              />
              <Text name="source" label="Source" hint="The site’s procedure it carries out" whole />
            </div>
          </fieldset>
          <Steps />
          <fieldset>
            <legend>Checks</legend>
            <div className="fields">
              <LongText
                name="checks"
                label="Checks"
                hint="What is looked at between or after the steps, one a line"
                whole
              />
            </div>
          </fieldset>
          {plan !== null && <Check name="retired" label="Retired: not offered any more" />}
          {save.error && <Failure error={save.error.error} what="The plan was not saved." />}
          <div className="row">
            <button type="submit" className="act" disabled={save.isPending}>
              Save plan
            </button>
            <Link className="quiet" href="/plans">
              Leave without saving
            </Link>
          </div>
        </form>
      </Faults>
    </FormProvider>
  );
}

function Steps() {
  const { control } = useFormContext<PlanForm>();
  const { fields, append, remove } = useFieldArray({ control, name: 'steps' });
  return (
    <>
      <p className="small lead-in">
        Every plan begins with the nuts snug by hand; that step is not written down here. The last step
        reaches 100 %.
      </p>
      {fields.map((field, at) => (
        <fieldset key={field.id}>
          <legend>Step {at + 1}</legend>
          <div className="fields">
            <Text name={`steps.${at}.name`} label={`Name of step ${at + 1}`} />
            <Quantity
              name={`steps.${at}.fraction`}
              label={`Share of the target, step ${at + 1}`}
              quantity="ratio"
            />
            <Choice
              name={`steps.${at}.order`}
              label={`Order of step ${at + 1}`}
              options={same(['star', 'circular', 'groups'])}
            />
            <Choice
              name={`steps.${at}.tools`}
              label={`Tools in step ${at + 1}`}
              options={same(['1', '2', '4'])}
            />
            <Text name={`steps.${at}.stopWhen`} label={`Step ${at + 1} is done when`} whole />
          </div>
          {fields.length > 1 && (
            <button type="button" className="link small" onClick={() => remove(at)}>
              Remove<span className="unseen"> step {at + 1}</span>
            </button>
          )}
        </fieldset>
      ))}
      <button type="button" className="quiet" onClick={() => append(blankStep())}>
        Add a step
      </button>
    </>
  );
}
