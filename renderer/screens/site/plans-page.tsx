import { useState } from 'react';
import { Link } from 'wouter';
import type { PlanRow } from '../../../core/contract/site.ts';
import { useAsk, useWrite } from '../../app/ask.ts';
import { useForWhom } from '../../app/for-whom.ts';
import { useRegister } from '../../app/register.ts';
import { sensible } from '../../app/text/number.ts';
import { moment } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { Failure } from '../../components/failure.tsx';
import { SignerChoice } from '../../components/people-choice.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { EvidenceIndex } from '../evidence/evidence-index.tsx';

/** Pass plans that ship with the program and the site's own, which are used once somebody has approved them. */
export function PlansPage() {
  const plans = useAsk('plan.list', {});
  return (
    <Desk indexLabel="Evidence" index={<EvidenceIndex />}>
      <Title name="Pass plans" under="A site’s own plan is used once somebody has approved its version." />
      <p>
        <Link className="quiet" href="/plans/new">
          Add a pass plan
        </Link>
      </p>
      <Asked asking={plans} what="the pass plans">
        {({ rows }) => rows.toReversed().map((plan) => <Plan key={plan.id} plan={plan} />)}
      </Asked>
    </Desk>
  );
}

function Plan({ plan }: { readonly plan: PlanRow }) {
  return (
    <section aria-label={plan.name}>
      <h2>{plan.name}</h2>
      <p className="small">Source: {plan.source}</p>
      <Standing plan={plan} />
      <SideScroll>
        <table className="tab">
          <thead>
            <tr>
              <th scope="col">Step</th>
              <th scope="col" className="num">
                Of the target <span className="unit">%</span>
              </th>
              <th scope="col">Order</th>
              <th scope="col" className="num">
                Tools
              </th>
              <th scope="col">Stop when</th>
            </tr>
          </thead>
          <tbody>
            {plan.steps.map((step) => (
              <tr key={step.name}>
                <th scope="row">{step.name}</th>
                <td className="num">
                  {step.fraction === null ? 'by feel' : sensible(step.fraction * 100, 3)}
                </td>
                <td>{step.order}</td>
                <td className="num">{step.tools}</td>
                <td>{step.stopWhen}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </SideScroll>
      {plan.checks.length > 0 && (
        <>
          <p className="small">Checks</p>
          <ul>
            {plan.checks.map((check) => (
              <li key={check}>{check}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

function Standing({ plan }: { readonly plan: PlanRow }) {
  const { timeZone } = useRegister();
  if (plan.origin === 'shipped') return <p className="small">Comes with the program; it is not edited.</p>;
  return (
    <>
      <p className="small">
        Version {plan.version},{' '}
        {plan.data.retired
          ? 'retired: not offered any more'
          : plan.approved === null
            ? 'not approved: no setting can be issued with it'
            : `approved by ${plan.approved.person} ${moment(plan.approved.at, timeZone)}`}
        .{' '}
        <Link href={`/plans/${plan.id}/edit`}>
          Edit<span className="unseen"> {plan.name}</span>
        </Link>
      </p>
      {plan.approved === null && !plan.data.retired && (
        <Approve id={plan.id} version={plan.version} name={plan.name} />
      )}
    </>
  );
}

interface ApproveProps {
  readonly id: string;
  readonly version: number;
  readonly name: string;
}

function Approve({ id, version, name }: ApproveProps) {
  const [personId, setPersonId] = useState('');
  const [missing, setMissing] = useState(false);
  const approve = useWrite('plan.approve');
  const forWhom = useForWhom('plan.approve');
  const onApprove = () => {
    setMissing(personId === '');
    if (personId !== '') approve.mutate({ id, version, personId });
  };
  if (forWhom !== null) return <p className="small">Not approved; plans are approved by {forWhom}.</p>;
  return (
    <div className="stack">
      <SignerChoice
        label="Approved by"
        chosen={personId}
        onChoose={setPersonId}
        fault={
          missing && personId === '' ? 'Nobody is chosen. A plan is approved in one person’s name.' : null
        }
      />
      <button type="button" className="act" disabled={approve.isPending} onClick={onApprove}>
        Approve {name}, version {version}
      </button>
      {approve.error && <Failure error={approve.error.error} what="The plan was not approved." />}
    </div>
  );
}
