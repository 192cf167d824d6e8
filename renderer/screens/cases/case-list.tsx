import { useState } from 'react';
import { Link } from 'wouter';
import type { CaseSummary } from '../../../core/contract/recall.ts';
import { allRows, useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { dayOf } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { ExportList } from '../../components/export-list.tsx';
import { Pager } from '../../components/pager.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { RoomIndex } from '../tools/room-index.tsx';

const PAGE = 50;
type State = CaseSummary['state'];

/** Tools and batches that turned out wrong: what is open comes first. */
export function CaseList() {
  const [state, setState] = useState<State | null>('open');
  const [page, setPage] = useState(1);
  const search = { state, page, pageSize: PAGE };
  const found = useAsk('case.list', search, { keep: true });
  const { timeZone } = useRegister();
  return (
    <Desk
      indexLabel="Tool room"
      index={<RoomIndex />}
      doings={
        <Link className="act" href="/cases/new">
          Open a case
        </Link>
      }
    >
      <Title
        name="Out of tolerance"
        under="A tool or a batch that turned out wrong, the joints it reached, and what was decided on each."
      />
      <div className="filters no-print">
        <div className="field">
          <label htmlFor="state">State</label>
          <select
            id="state"
            value={state ?? ''}
            onChange={({ target }) => {
              setState(target.value === '' ? null : (target.value as State));
              setPage(1);
            }}
          >
            <option value="open">open</option>
            <option value="closed">closed</option>
            <option value="">open and closed</option>
          </select>
        </div>
      </div>
      <Asked asking={found} what="the cases">
        {({ rows, total }) => (
          <>
            {rows.length === 0 ? (
              <p className="empty">No {state ?? ''} case is on the register.</p>
            ) : (
              <SideScroll>
                <table className="tab links">
                  <thead>
                    <tr>
                      <th scope="col">Case</th>
                      <th scope="col">Subject</th>
                      <th scope="col">What says so</th>
                      <th scope="col">Opened</th>
                      <th scope="col" className="num">
                        Decided
                      </th>
                      <th scope="col">State</th>
                    </tr>
                  </thead>
                  <tbody>
                    {rows.map((row) => (
                      <tr key={row.id}>
                        <th scope="row">
                          <Link href={`/cases/${row.id}`}>{row.number}</Link>
                        </th>
                        <td>{row.subject}</td>
                        <td>{row.basis}</td>
                        <td className="date">
                          {dayOf(row.openedAt, timeZone)}
                          <div className="small">{row.openedBy}</div>
                        </td>
                        <td className="num">
                          {row.decided} of {row.affected}
                        </td>
                        <td className={row.state === 'open' ? 'due-overdue' : undefined}>{row.state}</td>
                      </tr>
                    ))}
                  </tbody>
                </table>
              </SideScroll>
            )}
            <Pager page={page} pageSize={PAGE} total={total} noun="case" onPage={setPage} />
            <ExportList
              name="cases"
              headings={['case', 'subject', 'what says so', 'opened', 'by', 'affected', 'decided', 'state']}
              rows={() => allRows('case.list', search)}
              cells={(row) => [
                row.number,
                row.subject,
                row.basis,
                row.openedAt,
                row.openedBy,
                row.affected,
                row.decided,
                row.state,
              ]}
            />
          </>
        )}
      </Asked>
    </Desk>
  );
}
