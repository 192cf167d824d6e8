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
import { Choice, Quantity } from '../../components/fields.tsx';
import { JointIndex } from '../joints/joint-index.tsx';
import { JointTitle } from '../joints/joint-page.tsx';
import { askedOf, emptyValues, type ScatterValues } from './scatter-form-values.ts';
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
  const run = useAsk('scatter.simulate', asked, { keep: true });
  const options = plans.map((plan) => ({ value: plan.id, words: plan.name }));
  const faults = (run.error?.error.details ?? []).map((fault) => ({
    ...fault,
    field: fault.field.startsWith('ring.') ? fault.field : `rest.${fault.field}`,
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
            onSubmit={form.handleSubmit((values) => setAsked(askedOf(jointId, values)))}
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
      {run.data && !run.error && <ScatterResult view={run.data} />}
    </section>
  );
}
