import { Link } from 'wouter';
import type { LoggedRecord } from '../../../core/contract/signature.ts';
import { useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { inFours } from '../../app/text/head.ts';
import { count } from '../../app/text/number.ts';
import { moment } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { EvidenceIndex } from '../evidence/evidence-index.tsx';
import { Signatures } from './signatures.tsx';

/** Any record as it stands in the log: its text, its place in the chain, who signed it. */
export function RecordPage({ id }: { readonly id: string }) {
  const record = useAsk('history.record', { id });
  return (
    <Desk
      indexLabel="Evidence"
      index={<EvidenceIndex />}
      doings={record.data && <RecordDoings record={record.data} />}
      margin={record.data && <InTheChain record={record.data} />}
    >
      <Asked asking={record} what="the record">
        {(found) => <RecordBody record={found} />}
      </Asked>
    </Desk>
  );
}

const OF_WORK = ['tightening recorded', 'breakout recorded'];

function RecordDoings({ record }: { readonly record: LoggedRecord }) {
  return (
    <>
      {OF_WORK.includes(record.kind) && (
        <Link className="quiet" href={`/events/${record.id}`}>
          The record as a page
        </Link>
      )}
      {record.kind === 'setting issued' && (
        <Link className="quiet" href={`/settings/${record.id}`}>
          The issued setting
        </Link>
      )}
      {record.joints.slice(0, 4).map(({ id, tag }) => (
        <Link className="quiet" key={id} href={`/joints/${id}`}>
          Joint {tag}
        </Link>
      ))}
    </>
  );
}

function RecordBody({ record }: { readonly record: LoggedRecord }) {
  const { timeZone } = useRegister();
  return (
    <>
      <Title
        name={`Record ${count(record.sequence)}`}
        beside={record.kind}
        under={`Happened ${moment(record.happenedAt, timeZone)}, recorded ${moment(record.recordedAt, timeZone)}`}
      />
      <dl className="lines narrow">
        <div>
          <dt>Recorded by</dt>
          <dd>{record.recordedBy ?? 'nobody was signed in'}</dd>
        </div>
        <div>
          <dt>Recorded on</dt>
          <dd>{record.originName}</dd>
        </div>
        {record.people.map(({ id, name, part }) => (
          <div key={`${id} ${part}`}>
            <dt>{part}</dt>
            <dd>{name}</dd>
          </div>
        ))}
        {record.supersedes && (
          <div>
            <dt>Takes the place of</dt>
            <dd>
              <Link href={`/records/${record.supersedes}`}>an earlier record</Link>, which stays
            </dd>
          </div>
        )}
        {record.supersededBy && (
          <div>
            <dt>Corrected by</dt>
            <dd>
              <Link href={`/records/${record.supersededBy}`}>a later record</Link>
            </dd>
          </div>
        )}
      </dl>
      <Signatures eventId={record.id} />
      <h2>Text</h2>
      <p className="small">The same text, line by line; what is hashed has no line ends.</p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls has to take the focus. */}
      <section className="text" tabIndex={0} aria-label="Text of the record">
        <pre>{JSON.stringify(JSON.parse(record.body), null, 1)}</pre>
      </section>
    </>
  );
}

function InTheChain({ record }: { readonly record: LoggedRecord }) {
  return (
    <section>
      <h2>In the chain</h2>
      <p className="small seal">
        <span>Record {inFours(record.hash)}</span>
        <span>After {inFours(record.previousHash)}</span>
      </p>
    </section>
  );
}
