import { useState } from 'react';
import { Link } from 'wouter';
import type { CaseDetail } from '../../../core/contract/recall.ts';
import { useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { count } from '../../app/text/number.ts';
import { dayOf, moment } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { RoomIndex } from '../tools/room-index.tsx';
import { AffectedTable } from './affected-table.tsx';
import { CloseCase } from './close-case.tsx';
import { DecideForm } from './decide-form.tsx';
import { affectedWords, OtherUses, WindowSection } from './recall-sections.tsx';

/** One case: what was wrong, which joints it reached, what was decided on each, and how it ended. */
export function CasePage({ id }: { readonly id: string }) {
  const found = useAsk('case.get', { id });
  return (
    <Desk indexLabel="Tool room" index={<RoomIndex />}>
      <Asked asking={found} what="the case">
        {(detail) => <CaseBody detail={detail} />}
      </Asked>
    </Desk>
  );
}

function CaseBody({ detail }: { readonly detail: CaseDetail }) {
  const { timeZone } = useRegister();
  const { summary, data, recall, closed } = detail;
  const [chosen, setChosen] = useState<readonly string[]>([]);
  return (
    <>
      <Title
        name={summary.number}
        beside="out of tolerance"
        under={`${summary.subject}: ${summary.basis}`}
        kind={
          <>
            {summary.state}
            <span className="small">
              opened {dayOf(summary.openedAt, timeZone)} by {summary.openedBy}
            </span>
          </>
        }
      />
      <p>
        {affectedWords(recall)} {count(summary.decided)} of {count(summary.affected)} decided.{' '}
        {summary.toolId && <Link href={`/tools/${summary.toolId}`}>Page of the tool</Link>}
      </p>
      {data.remarks && <p>{data.remarks}</p>}
      {closed && <Closure closed={closed} />}
      <WindowSection recall={recall} />
      <section aria-label="Affected joints">
        <h2>Affected joints, worst first</h2>
        <p className="small">
          Loads are per bolt. “Not sure” and “not known” are not kept: somebody has to decide on them. A real
          load is calculated from the records; it is no measurement.
        </p>
        <AffectedTable
          affected={recall.affected}
          choosing={closed ? null : { chosen, onChange: setChosen }}
        />
      </section>
      {!closed && recall.affected.length > 0 && (
        <DecideForm
          caseId={summary.id}
          chosen={recall.affected.filter(({ eventId }) => chosen.includes(eventId))}
          onDecided={() => setChosen([])}
        />
      )}
      <OtherUses recall={recall} />
      {!closed && <CloseCase summary={summary} />}
      <footer className="foot small">
        <p className="seal">Recorded in the register under {detail.hash}</p>
        <p>
          From what was entered. The site procedure and the competent person decide; this is no permit to work
          on a joint.
        </p>
        <p className="only-print">Decided: ______________________ &nbsp; Approved: ______________________</p>
      </footer>
      <p className="exports no-print">
        <button type="button" className="link small" onClick={() => window.print()}>
          Print the report
        </button>
      </p>
    </>
  );
}

function Closure({ closed }: { readonly closed: NonNullable<CaseDetail['closed']> }) {
  const { timeZone } = useRegister();
  return (
    <section aria-label="Closure">
      <h2>Closed</h2>
      <dl className="lines words">
        <div>
          <dt>Conclusion</dt>
          <dd>{closed.conclusion}</dd>
        </div>
        <div>
          <dt>Measures</dt>
          <dd>{closed.measures || 'none stated'}</dd>
        </div>
        <div>
          <dt>Approved</dt>
          <dd>
            {closed.person}, {moment(closed.happenedAt, timeZone)}
          </dd>
        </div>
      </dl>
      {closed.since.length > 0 && (
        <>
          <p>Recorded since it was closed:</p>
          <ul className="plain-list">
            {closed.since.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
