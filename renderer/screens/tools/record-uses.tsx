import { Link } from 'wouter';
import type { ToolRecord, UseRow } from '../../../core/contract/tool-record.ts';
import { useRegister } from '../../app/register.ts';
import { count, counted } from '../../app/text/number.ts';
import { dayOf } from '../../app/text/time.ts';
import { Measure } from '../../components/number.tsx';
import { ShortList } from './short-list.tsx';

/** Joints it was used on, newest first, and how much it did since its certificate. */
export function RecordUses({ tool }: { readonly tool: ToolRecord }) {
  const { counters } = tool;
  return (
    <section aria-label="Uses">
      <h2>Uses</h2>
      {counters.uses === 0 ? (
        <p className="small">Not used in a recorded event yet.</p>
      ) : (
        <>
          <UsesWords tool={tool} />
          <ShortList
            rows={tool.uses}
            noun="use"
            headings={<UseHeadings />}
            row={(use) => <Use key={`${use.eventId} ${use.role}`} use={use} />}
            total={counters.uses}
            elsewhere={
              counters.uses > tool.uses.length && (
                <Link className="small no-print" href={`/tools/${tool.id}/uses`}>
                  Every use, page by page
                </Link>
              )
            }
          />
        </>
      )}
    </section>
  );
}

function UsesWords({ tool: { counters } }: { readonly tool: ToolRecord }) {
  const { timeZone } = useRegister();
  const { uses, sinceCertificate, turnsSinceCertificate, firstUse, lastUse } = counters;
  return (
    <p className="small said-once">
      In {counted(uses, 'recorded event')}
      {firstUse && lastUse && `, ${dayOf(firstUse, timeZone)} to ${dayOf(lastUse, timeZone)}`}.
      {sinceCertificate !== null && ` ${count(sinceCertificate)} since the newest certificate.`}
      {turnsSinceCertificate !== null &&
        ` ${count(turnsSinceCertificate)} studs turned since then, each pass counted once.`}
    </p>
  );
}

export function UseHeadings() {
  return (
    <tr>
      <th scope="col">Done</th>
      <th scope="col">Joint</th>
      <th scope="col">What</th>
      <th scope="col">As</th>
      <th scope="col" className="num">
        Dialled
      </th>
      <th scope="col" className="num">
        Torque
      </th>
      <th scope="col">Flags</th>
    </tr>
  );
}

export function Use({ use }: { readonly use: UseRow }) {
  const { timeZone } = useRegister();
  return (
    <tr>
      <td className="date">{dayOf(use.happenedAt, timeZone)}</td>
      <th scope="row">
        <Link href={`/joints/${use.jointId}`}>{use.tag}</Link>
      </th>
      <td>
        <Link href={`/events/${use.eventId}`}>
          {use.kind}
          <span className="unseen">
            {' '}
            of {use.tag}, {dayOf(use.happenedAt, timeZone)}
          </span>
        </Link>
      </td>
      <td>{use.role}</td>
      <td className="num">
        <Measure si={use.pressure} unit="bar" />
      </td>
      <td className="num">
        <Measure si={use.torque} unit="N.m" />
      </td>
      <td>{use.flags === 0 ? '' : <span className="flag">{counted(use.flags, 'flag')}</span>}</td>
    </tr>
  );
}
