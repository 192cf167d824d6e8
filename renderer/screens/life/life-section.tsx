import { Link } from 'wouter';
import { rolesInWords } from '../../../core/access/roles.ts';
import type { JointStandingView, OpenStep } from '../../../core/contract/life.ts';
import { useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { moment } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Unknown } from '../../components/number.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { DeviationSection } from './deviation-section.tsx';
import { GuardList } from './guard-list.tsx';
import { stepRoute, titleOf, WORK_STEPS } from './step-words.ts';

/** On the page of a joint: its state, what is open or due, and the steps that lead on. */
export function LifeSection({ id }: { readonly id: string }) {
  const standing = useAsk('joint.standing', { id });
  return (
    <Asked asking={standing} what="the state of the joint">
      {(data) => (
        <>
          <State standing={data} />
          {data.deviation && <DeviationSection standing={data} deviation={data.deviation} />}
          <Steps standing={data} />
        </>
      )}
    </Asked>
  );
}

const CONTAINMENT = {
  open: 'open: it must not see pressure',
  closed: 'closed',
  'not followed': 'not followed',
} as const;

function State({ standing }: { readonly standing: JointStandingView }) {
  const { timeZone } = useRegister();
  const { state, since, class: given, heldFrom, heldBecause, dues } = standing;
  return (
    <section aria-labelledby="state">
      <h2 id="state">State</h2>
      <dl className="facts">
        <dt>State</dt>
        <dd>
          <b>{state}</b>
          {since !== null && <span className="small"> since {moment(since, timeZone)}</span>}
          {heldFrom !== null && (
            <span className="small">
              {' '}
              · held while {heldFrom}
              {heldBecause !== null && `: ${heldBecause}`}
            </span>
          )}
        </dd>
        <dt>Class</dt>
        <dd>
          {given === null ? <Unknown /> : given.name}
          {given !== null && given.name !== given.level && <span className="small"> {given.level}</span>}
        </dd>
        <dt>Containment</dt>
        <dd>{CONTAINMENT[standing.containment]}</dd>
      </dl>
      {dues.length > 0 && (
        <ul className="plain-list" aria-label="Open or due">
          {dues.map(({ text, dueAt }) => (
            <li key={text}>
              {titleOf(text)}
              {dueAt !== null && ` ${moment(dueAt, timeZone)}`}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function Steps({ standing }: { readonly standing: JointStandingView }) {
  const { jointId, steps } = standing;
  const others = WORK_STEPS.filter((step) => !steps.some((one) => one.step === step));
  return (
    <section className="no-print" aria-labelledby="steps">
      <h2 id="steps">Steps from here</h2>
      <SideScroll>
        <table className="tab">
          <thead>
            <tr>
              <th scope="col">Step</th>
              <th scope="col">Leads to</th>
              <th scope="col">What it needs</th>
              <th scope="col">Taken by</th>
            </tr>
          </thead>
          <tbody>
            {steps.map((step) => (
              <Step key={step.step} step={step} jointId={jointId} />
            ))}
          </tbody>
        </table>
      </SideScroll>
      {others.length > 0 && standing.state !== 'unassessed' && (
        <details className="folded">
          <summary>Record work that was done out of order</summary>
          <ul className="plain-list">
            {others.map((step) => (
              <li key={step}>
                <Link href={stepRoute(jointId, step)}>{titleOf(step)}</Link>
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

function Step({ step, jointId }: { readonly step: OpenStep; readonly jointId: string }) {
  return (
    <tr>
      <th scope="row">
        <Link href={stepRoute(jointId, step.step)}>{titleOf(step.step)}</Link>
        <div className="small">{step.open ? 'open' : 'not open yet'}</div>
      </th>
      <td>{step.leadsTo ?? 'as its result says'}</td>
      <td>
        <GuardList guards={step.guards} />
      </td>
      <td className="small">{rolesInWords(step.roles)}</td>
    </tr>
  );
}
