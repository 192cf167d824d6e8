import { useState } from 'react';
import { Link } from 'wouter';
import type { HistoryRow } from '../../../core/contract/joint.ts';
import { useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { moment } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Pager } from '../../components/pager.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';

const ROWS = 15;

export function JointHistory({ id }: { readonly id: string }) {
  const [page, setPage] = useState(1);
  const history = useAsk('joint.history', { id, page, pageSize: ROWS }, { keep: true });
  return (
    <section aria-labelledby="history">
      <h2 id="history">History</h2>
      <Asked asking={history} what="the history">
        {({ rows, total }) =>
          rows.length === 0 ? (
            <p className="small">Nothing has been recorded on this joint yet.</p>
          ) : (
            <>
              <SideScroll>
                <table className="tab">
                  <thead>
                    <tr>
                      <th scope="col">When</th>
                      <th scope="col">What</th>
                      <th scope="col">By</th>
                      <th scope="col">Summary</th>
                    </tr>
                  </thead>
                  <tbody>
                    {rows.map((row) => (
                      <Row key={row.eventId} row={row} />
                    ))}
                  </tbody>
                </table>
              </SideScroll>
              <Pager page={page} pageSize={ROWS} total={total} noun="record" onPage={setPage} />
            </>
          )
        }
      </Asked>
    </section>
  );
}

function Row({ row }: { readonly row: HistoryRow }) {
  const { timeZone } = useRegister();
  return (
    <tr>
      <td className="date">{moment(row.happenedAt, timeZone)}</td>
      <th scope="row">
        <HistoryLink row={row} />
      </th>
      <td>{row.by}</td>
      <td>
        {row.summary}
        {row.flags.map((flag) => (
          <div className="flag" key={flag}>
            {flag}
          </div>
        ))}
      </td>
    </tr>
  );
}

function HistoryLink({ row }: { readonly row: HistoryRow }) {
  if (row.kind === 'tightening' || row.kind === 'breakout') {
    return <Link href={`/events/${row.eventId}`}>{row.kind}</Link>;
  }
  if (row.kind === 'setting issued' && row.settingId !== null) {
    return <Link href={`/settings/${row.settingId}`}>{row.kind}</Link>;
  }
  if (row.kind === 'signed' && row.signedId !== null) {
    return <Link href={`/records/${row.signedId}`}>{row.kind}</Link>;
  }
  if (row.kind === 'case decided' && row.caseId !== null) {
    return <Link href={`/cases/${row.caseId}`}>{row.kind}</Link>;
  }
  if (row.kind === 'deviation decided') return <Link href="/deviations">{row.kind}</Link>;
  return <>{row.kind}</>;
}
