import { Link } from 'wouter';
import type { LeakRow } from '../../../core/contract/leak-log.ts';
import { useRegister } from '../../app/register.ts';
import { moment } from '../../app/text/time.ts';
import { SeverityMark } from '../../components/marks.tsx';
import { Unknown } from '../../components/number.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { LeakPosition } from './leak-position.tsx';
import { causesNow, causeWords, clockWords, closedWords } from './leak-words.ts';

interface LeakTableProps {
  readonly rows: readonly LeakRow[];
  /** On a joint's own page its tag is not said again. */
  readonly withJoint: boolean;
}

export function LeakTable({ rows, withJoint }: LeakTableProps) {
  return (
    <SideScroll>
      <table className="tab links leak-table">
        <thead>
          <tr>
            {withJoint && <th scope="col">Joint</th>}
            <th scope="col">Found</th>
            <th scope="col">Where on the circle</th>
            <th scope="col">What leaked</th>
            <th scope="col">Put down to</th>
            <th scope="col">Repair</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((leak) => (
            <Row key={leak.id} leak={leak} withJoint={withJoint} />
          ))}
        </tbody>
      </table>
    </SideScroll>
  );
}

function Row({ leak, withJoint }: { readonly leak: LeakRow; readonly withJoint: boolean }) {
  const { timeZone } = useRegister();
  return (
    <tr>
      {withJoint && (
        <th scope="row">
          <Link href={`/joints/${leak.jointId}`}>{leak.tag}</Link>
          <div className="small">{leak.unitName}</div>
          {leak.repeated && <Repeated />}
        </th>
      )}
      <td className="date">
        {moment(leak.happenedAt, timeZone)}
        <div className="small">
          {leak.origin === 'failed test' ? 'leak test failed' : leak.phase}; {leak.by}
        </div>
        {!withJoint && leak.repeated && <Repeated />}
      </td>
      <td>
        <LeakPosition leak={leak} />
      </td>
      <td>
        {leak.medium || <Unknown />}
        <div className="small">{leak.rate ?? 'rate not known'}</div>
      </td>
      <td>
        <Causes leak={leak} />
      </td>
      <td>
        <span className={leak.closed === null ? 'due-overdue' : undefined}>{clockWords(leak)}</span>
        <div className="small">{closedWords(leak) || leak.action}</div>
      </td>
    </tr>
  );
}

const Repeated = () => (
  <div className="repeated">
    <SeverityMark severity="warning" /> repeated leaker
  </div>
);

function Causes({ leak }: { readonly leak: LeakRow }) {
  const now = causesNow(leak);
  return (
    <>
      {now.length === 0 && <Unknown />}
      {now.map((each) => (
        <div key={each.cause}>{causeWords(each)}</div>
      ))}
      {leak.foundCauses !== null && leak.firstCauses.length > 0 && (
        <div className="small">first: {leak.firstCauses.map(causeWords).join('; ')}</div>
      )}
    </>
  );
}
