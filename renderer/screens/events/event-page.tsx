import { Link } from 'wouter';
import type { BatchUsed, EventDetail } from '../../../core/contract/event.ts';
import { useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { count } from '../../app/text/number.ts';
import { moment } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { SeverityMark } from '../../components/marks.tsx';
import { Measure } from '../../components/number.tsx';
import { StandingMark } from '../cases/standing-mark.tsx';
import { Signatures } from '../history/signatures.tsx';
import { JointIndex } from '../joints/joint-index.tsx';
import { RecordSection } from '../record/record-section.tsx';
import { EventPasses } from './event-passes.tsx';

export function EventPage({ id }: { readonly id: string }) {
  const event = useAsk('event.get', { id });
  return (
    <Desk
      indexLabel="Joints"
      index={<JointIndex {...(event.data ? { current: event.data.jointId } : {})} />}
      doings={
        event.data && (
          <Link className="quiet" href={`/joints/${event.data.jointId}`}>
            Joint {event.data.tag}
          </Link>
        )
      }
      margin={event.data && <EventMargin event={event.data} />}
    >
      <Asked asking={event} what="the record">
        {(detail) => <EventBody event={detail} />}
      </Asked>
    </Desk>
  );
}

function EventBody({ event }: { readonly event: EventDetail }) {
  const { timeZone } = useRegister();
  return (
    <>
      <Title
        name={event.tag}
        beside={event.kind}
        under={`Done ${moment(event.happenedAt, timeZone)}, recorded ${moment(event.recordedAt, timeZone)}`}
        kind={`record ${count(event.sequence)}`}
      />
      <dl className="lines narrow">
        <div>
          <dt>Done by</dt>
          <dd>{event.people.join(', ')}</dd>
        </div>
        <div>
          <dt>Done with</dt>
          <dd>{event.method}</dd>
        </div>
        {event.boltSet !== null && (
          <div>
            <dt>Bolt set</dt>
            <dd>{event.boltSet}</dd>
          </div>
        )}
        {event.method === 'tensioner' && event.kind === 'tightening' && (
          <div>
            <dt>Load left in each stud</dt>
            <dd>
              <Measure si={event.load} unit="kN" />
            </dd>
          </div>
        )}
        {event.boltsTightened !== null && (
          <div>
            <dt>Studs tightened</dt>
            <dd>{event.boltsTightened}</dd>
          </div>
        )}
        {event.finalPassNoTurn !== null && (
          <div>
            <dt>No nut turned in the final round</dt>
            <dd>{event.finalPassNoTurn ? 'confirmed' : 'not confirmed'}</dd>
          </div>
        )}
        {event.batches.map(({ kind, name, number }) => (
          <div key={`${kind} ${name} ${number}`}>
            <dt>{BATCH_WORDS[kind]}</dt>
            <dd>
              {number} <span className="small">{name}</span>
            </dd>
          </div>
        ))}
        <div>
          <dt>Setting</dt>
          <dd>
            {event.settingId === null ? (
              'none'
            ) : (
              <Link href={`/settings/${event.settingId}`}>the issued setting</Link>
            )}
          </dd>
        </div>
      </dl>
      <section>
        <h2>Torque</h2>
        <TorqueTable event={event} />
      </section>
      <EventPasses passes={event.passes} />
      <section>
        <h2>Tools used</h2>
        <UsedTools event={event} />
      </section>
      {event.cases.length > 0 && (
        <section aria-label="Cases">
          <h2>Out of tolerance</h2>
          <ul className="plain-list">
            {event.cases.map((each) => (
              <li key={each.id}>
                <Link href={`/cases/${each.id}`}>{each.number}</Link>, {each.state}.{' '}
                <StandingMark standing={each.worst} />
              </li>
            ))}
          </ul>
        </section>
      )}
      <RecordSection jointId={event.jointId} eventId={event.id} />
      <Signatures eventId={event.id} />
      {event.remarks && (
        <section>
          <h2>Remarks</h2>
          <p>{event.remarks}</p>
        </section>
      )}
    </>
  );
}

const BATCH_WORDS: Readonly<Record<BatchUsed['kind'], string>> = {
  stud: 'Stud batch',
  nut: 'Nut batch',
  gasket: 'Gasket batch',
  lubricant: 'Lubricant batch',
};

function UsedTools({ event: { tools, torqueTool } }: { readonly event: EventDetail }) {
  if (tools.length === 0 && torqueTool === null) return <p className="small">No tool was named.</p>;
  return (
    <ul className="plain-list">
      {torqueTool && (
        <li>
          <b>{torqueTool.number}</b>{' '}
          <span className="small">
            {torqueTool.certificate === '' ? 'no certificate named' : `certificate ${torqueTool.certificate}`}
          </span>
        </li>
      )}
      {tools.map((tool) => (
        <li key={tool.id}>
          <Link href={`/tools/${tool.id}`}>{tool.number}</Link> <span className="small">{tool.role}</span>
        </li>
      ))}
    </ul>
  );
}

function TorqueTable({ event }: { readonly event: EventDetail }) {
  const dialled = event.torques.some((row) => row.dialled !== null);
  return (
    <table className="tab narrow">
      <thead>
        <tr>
          <th scope="col">Stud</th>
          {dialled && (
            <th scope="col" className="num">
              Dialled
            </th>
          )}
          <th scope="col" className="num">
            Torque
          </th>
          {event.kind === 'breakout' && <th scope="col">Outcome</th>}
          <th scope="col">Known from</th>
        </tr>
      </thead>
      <tbody>
        {event.torques.map((row) => (
          <tr key={row.bolt ?? 'all'}>
            <th scope="row">{row.bolt ?? 'all'}</th>
            {dialled && <td className="num">{row.dialled ?? 'not read'}</td>}
            <td className="num">
              <Measure si={row.torque} unit="N.m" />
            </td>
            {event.kind === 'breakout' && <td>{row.outcome}</td>}
            <td className="small">{row.basis}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function EventMargin({ event }: { readonly event: EventDetail }) {
  return (
    <>
      <section>
        <h2>Flags</h2>
        {event.flags.length === 0 && <p className="small">Nothing was flagged.</p>}
        {event.flags.map((flag) => (
          <article className="f warning" key={flag}>
            <SeverityMark severity="warning" />
            <div>
              <p>{flag}</p>
            </div>
          </article>
        ))}
        {event.notes.map((note) => (
          <article className="f note" key={note}>
            <SeverityMark severity="note" />
            <div>
              <p>{note}</p>
            </div>
          </article>
        ))}
      </section>
      <section>
        <h2>In the chain</h2>
        <p className="faint seal">
          <span>Record {event.hash}</span>
          <span>After {event.previousHash}</span>
        </p>
        <p className="small no-print">
          <Link href={`/records/${event.id}`}>The record as it was hashed</Link>
        </p>
      </section>
    </>
  );
}
