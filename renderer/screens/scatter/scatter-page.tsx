import { useState } from 'react';
import { FormProvider, useForm } from 'react-hook-form';
import { Link } from 'wouter';
import type { RequestInput, RequestOutput } from '../../../core/contract/requests.ts';
import { useAsk } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { Busy } from '../../components/busy.tsx';
import { Desk } from '../../components/desk.tsx';
import { Failure } from '../../components/failure.tsx';
import { Faults } from '../../components/faults.ts';
import { Check, Choice, LongText, Quantity, Text } from '../../components/fields.tsx';
import { JointIndex } from '../joints/joint-index.tsx';
import { JointTitle } from '../joints/joint-page.tsx';
import { askedOf, emptyValues, measuredFault, type ScatterValues } from './scatter-form-values.ts';
import { ScatterResult } from './scatter-result.tsx';

/** Loads of this joint's bolts under one or two pass plans, by a model whose inputs are stated. */
export function ScatterPage({ id }: { readonly id: string }) {
  const joint = useAsk('joint.get', { id });
  const plans = useAsk('plan.list', {});
  return (
    <Desk
      indexLabel="Joints"
      index={<JointIndex current={id} />}
      below={
        joint.data && (
          <>
            <Asked asking={plans} what="the pass plans">
              {({ rows }) => <Model jointId={id} plans={rows} />}
            </Asked>
            <p className="no-print">
              <Link href={`/joints/${id}`}>Back to the joint</Link>
            </p>
          </>
        )
      }
    >
      <Asked asking={joint} what="the joint">
        {(detail) => <JointTitle joint={detail} />}
      </Asked>
    </Desk>
  );
}

interface ModelProps {
  readonly jointId: string;
  readonly plans: RequestOutput<'plan.list'>['rows'];
}

function Model({ jointId, plans }: ModelProps) {
  const form = useForm<ScatterValues>({ defaultValues: emptyValues(plans[0]?.id ?? '') });
  const [asked, setAsked] = useState<RequestInput<'scatter.simulate'>>(
    askedOf(jointId, emptyValues(plans[0]?.id ?? '')),
  );
  const [fault, setFault] = useState<string | null>(null);
  const run = useAsk('scatter.simulate', asked, { keep: true });
  const options = plans.map((plan) => ({ value: plan.id, words: plan.name }));
  const faults = (run.error?.error.details ?? []).map((fault) => ({
    ...fault,
    field: placeOf(fault.field),
  }));
  return (
    <section aria-labelledby="model">
      <h2 id="model">Load between the bolts, by a model</h2>
      <FormProvider {...form}>
        <Faults value={faults}>
          <form
            className="form no-print"
            aria-label="The model"
            noValidate
            onSubmit={form.handleSubmit((values) => {
              const wrong = measuredFault(values.measured);
              setFault(wrong);
              if (wrong === null) setAsked(askedOf(jointId, values));
            })}
          >
            <fieldset>
              <legend>Pass plans</legend>
              <div className="fields">
                <Choice name="first" label="Plan" options={options} />
                <Choice name="second" label="Beside it" options={options} blank="none" />
              </div>
            </fieldset>
            <fieldset>
              <legend>Gasket and flange; blank takes what the joint’s data and the tables have</legend>
              <div className="fields">
                <Quantity
                  name="rest.gasketStiffness"
                  label="Stiffness of the gasket"
                  quantity="stress"
                  hint="Per length of its circumference: 1 MPa is 1 N/mm for each mm"
                />
                <Quantity
                  name="rest.gasketRadius"
                  label="Radius of the gasket’s reaction"
                  quantity="length"
                />
                <Quantity name="rest.gasketWidth" label="Width of the gasket" quantity="length" />
                <Quantity name="ring.width" label="Radial width of the ring" quantity="length" />
                <Quantity name="ring.thickness" label="Thickness of the ring" quantity="length" />
                <Quantity name="ring.radius" label="Radius of the ring’s centroid" quantity="length" />
                <Quantity name="ring.modulus" label="Modulus of the ring" quantity="stress" />
              </div>
            </fieldset>
            <fieldset>
              <legend>Bolts</legend>
              <div className="fields">
                <Quantity name="rest.target" label="Load to set" quantity="force" />
                <Quantity name="rest.limit" label="Largest load of one bolt" quantity="force" />
                <Quantity name="rest.boltStiffness" label="Stiffness of one bolt" quantity="stiffness" />
                <Quantity name="rest.boltRadius" label="Radius of the bolt circle" quantity="length" />
              </div>
            </fieldset>
            <fieldset>
              <legend>What is looked for beside it; blank is not</legend>
              <div className="fields">
                <Text
                  name="trips"
                  label="Loads to set that end even, trips around"
                  inputMode="numeric"
                  hint="1 to 20: what to set bolt by bolt so that the last trip ends even"
                />
                <Quantity
                  name="rest.tolerance"
                  label="At rest when no load moves by more than"
                  quantity="ratio"
                  hint="Part of the load to set in one pass"
                />
                <Quantity
                  name="rest.scatter"
                  label="Scatter of one bolt’s load"
                  quantity="ratio"
                  hint="Added before a load is held against the most one bolt may carry"
                />
                <Check name="sensitivity" label="With a gasket a quarter to four times as stiff" />
                <LongText
                  name="measured"
                  label="Loads that were measured, kN"
                  hint="While the first plan was followed. A line each: pass, bolt, load, as 3 1 104.5. The stiffness of the gasket is fitted to them."
                  whole
                />
              </div>
              {fault && (
                <p className="fault-line" role="alert">
                  {fault}
                </p>
              )}
            </fieldset>
            {run.error && <Failure error={run.error.error} what="The model was not run." />}
            <div className="row">
              <button type="submit" className="act">
                Run the model
              </button>
            </div>
          </form>
        </Faults>
      </FormProvider>
      {run.data === undefined && !run.error && <Busy what="Running the model" />}
      {run.data && !run.error && <ScatterResult view={run.data} measured={asked.measured ?? []} />}
    </section>
  );
}

/** Field of the form that a field of the request was made from. */
function placeOf(field: string): string {
  if (field.startsWith('even')) return 'trips';
  if (field.startsWith('measured')) return 'measured';
  return field.startsWith('ring.') ? field : `rest.${field}`;
}
