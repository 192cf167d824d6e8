import { useState } from 'react';
import { Link } from 'wouter';
import { useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { count } from '../../app/text/number.ts';
import { moment } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { walkEntries } from '../../components/list-keys.ts';
import { Pager } from '../../components/pager.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { PlanIndex } from './plan-index.tsx';

const ROWS = 30;

/** Shutdowns and other pieces of planned work, the latest first. */
export function CampaignList() {
  const { timeZone } = useRegister();
  const [closed, setClosed] = useState(false);
  const [page, setPage] = useState(1);
  const campaigns = useAsk('campaign.list', { closed, page, pageSize: ROWS }, { keep: true });
  return (
    <Desk indexLabel="Plan" index={<PlanIndex />}>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: arrow keys only carry the focus between the links inside */}
      <div onKeyDown={walkEntries}>
        <Title
          name="Campaigns"
          under="A shutdown or another piece of planned work: its joints, its crews and its tools."
          kind={
            <Link className="act no-print" href="/plan/campaigns/new">
              New campaign
            </Link>
          }
        />
        <label className="check no-print">
          <input
            type="checkbox"
            checked={closed}
            onChange={(event) => {
              setClosed(event.target.checked);
              setPage(1);
            }}
          />
          With campaigns that are over
        </label>
        <Asked asking={campaigns} what="the campaigns">
          {({ rows, total }) =>
            rows.length === 0 ? (
              <p className="empty">No campaign is open. Enter one, then import its list of jobs.</p>
            ) : (
              <>
                <SideScroll>
                  <table className="tab links">
                    <thead>
                      <tr>
                        <th scope="col">Campaign</th>
                        <th scope="col">From</th>
                        <th scope="col">To</th>
                        <th scope="col" className="num">
                          Jobs
                        </th>
                        <th scope="col" className="num">
                          Crews
                        </th>
                        <th scope="col" className="num">
                          Tool sets
                        </th>
                        <th scope="col">State</th>
                      </tr>
                    </thead>
                    <tbody>
                      {rows.map(({ id, data, jobs }) => (
                        <tr key={id}>
                          <th scope="row">
                            <Link href={`/plan/campaigns/${id}`} data-entry>
                              {data.name}
                            </Link>
                          </th>
                          <td className="date">{moment(data.startsAt, timeZone)}</td>
                          <td className="date">{moment(data.endsAt, timeZone)}</td>
                          <td className="num">{count(jobs)}</td>
                          <td className="num">{data.crews.length}</td>
                          <td className="num">{data.sets.length}</td>
                          <td>{data.closed ? 'over' : 'open'}</td>
                        </tr>
                      ))}
                    </tbody>
                  </table>
                </SideScroll>
                <Pager page={page} pageSize={ROWS} total={total} noun="campaign" onPage={setPage} />
              </>
            )
          }
        </Asked>
      </div>
    </Desk>
  );
}
