import { useState } from 'react';
import { Link } from 'wouter';
import { allRows, useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { dayOf } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { ExportList } from '../../components/export-list.tsx';
import { Pager } from '../../components/pager.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';

const PAGE = 50;

/** Work out of order over the whole plant: what waits for a decision comes first. */
export function DeviationList() {
  const [state, setState] = useState<'open' | 'decided' | null>('open');
  const [page, setPage] = useState(1);
  const search = { state, page, pageSize: PAGE };
  const found = useAsk('deviation.list', search, { keep: true });
  const { timeZone } = useRegister();
  return (
    <Desk indexLabel="Joints" index={<Link href="/joints">Joints</Link>}>
      <Title
        name="Deviations"
        under="Work that was really done, and not in order. Each joint keeps its state until an engineer has decided."
      />
      <div className="filters no-print">
        <div className="field">
          <label htmlFor="state">State</label>
          <select
            id="state"
            value={state ?? ''}
            onChange={({ target }) => {
              setState(target.value === '' ? null : (target.value as 'open'));
              setPage(1);
            }}
          >
            <option value="open">open</option>
            <option value="decided">decided</option>
            <option value="">open and decided</option>
          </select>
        </div>
      </div>
      <Asked asking={found} what="the deviations">
        {({ rows, total }) => (
          <>
            {rows.length === 0 ? (
              <p className="empty">No {state ?? ''} deviation is on the register.</p>
            ) : (
              <SideScroll>
                <table className="tab links">
                  <thead>
                    <tr>
                      <th scope="col">Joint</th>
                      <th scope="col">Opened</th>
                      <th scope="col">Work</th>
                      <th scope="col">State</th>
                      <th scope="col">Decision</th>
                    </tr>
                  </thead>
                  <tbody>
                    {rows.map((row) => (
                      <tr key={row.id}>
                        <th scope="row">
                          <Link href={`/joints/${row.jointId}`}>{row.tag}</Link>
                          <div className="small">{row.unitName}</div>
                        </th>
                        <td className="date">{dayOf(row.openedAt, timeZone)}</td>
                        <td>
                          {row.works.map((work) => (
                            <div key={work.eventId}>
                              {work.what}: <span className="small">{work.reasons.join('; ')}</span>
                            </div>
                          ))}
                        </td>
                        <td>
                          {row.state}
                          <div className="small">if accepted: {row.ifAccepted}</div>
                        </td>
                        <td>
                          {row.decided === null ? (
                            <span className="due-overdue">open</span>
                          ) : (
                            <>
                              {row.decided.decision}
                              <div className="small">
                                {row.decided.reason} ({row.decided.person},{' '}
                                {dayOf(row.decided.happenedAt, timeZone)})
                              </div>
                            </>
                          )}
                        </td>
                      </tr>
                    ))}
                  </tbody>
                </table>
              </SideScroll>
            )}
            <Pager page={page} pageSize={PAGE} total={total} noun="deviation" onPage={setPage} />
            <ExportList
              name="deviations"
              headings={[
                'joint',
                'plant unit',
                'opened',
                'work',
                'reasons',
                'state',
                'if accepted',
                'decision',
                'why',
              ]}
              rows={() => allRows('deviation.list', search)}
              cells={(row) => [
                row.tag,
                row.unitName,
                row.openedAt,
                row.works.map(({ what }) => what).join('; '),
                row.works.flatMap(({ reasons }) => reasons).join('; '),
                row.state,
                row.ifAccepted,
                row.decided?.decision ?? 'open',
                row.decided?.reason ?? '',
              ]}
            />
          </>
        )}
      </Asked>
    </Desk>
  );
}
