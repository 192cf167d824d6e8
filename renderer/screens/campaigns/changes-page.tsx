import { useState } from 'react';
import { allRows, useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { ExportList } from '../../components/export-list.tsx';
import { Pager } from '../../components/pager.tsx';
import { instantOf } from './campaign-form-values.ts';
import { ChangeTable } from './change-table.tsx';
import { PlanIndex } from './plan-index.tsx';

const ROWS = 50;

/** What changed in the scope since a moment, by whom and why. */
export function ChangesPage({ id }: { readonly id: string }) {
  const { timeZone } = useRegister();
  const [since, setSince] = useState('');
  const [page, setPage] = useState(1);
  const campaign = useAsk('campaign.get', { id });
  const search = {
    campaignId: id,
    since: since === '' ? null : instantOf(since, timeZone),
    page,
    pageSize: ROWS,
  };
  const changes = useAsk('job.changes', search, { keep: true });
  return (
    <Desk indexLabel="Plan" index={<PlanIndex campaignId={id} />}>
      <Title name="What changed" under={campaign.data?.data.name} />
      <div className="filters no-print">
        <div className="field">
          <label htmlFor="since">Since</label>
          <input
            id="since"
            type="datetime-local"
            value={since}
            onChange={(event) => {
              setSince(event.target.value);
              setPage(1);
            }}
          />
        </div>
      </div>
      <Asked asking={changes} what="the changes">
        {({ rows, total }) =>
          rows.length === 0 ? (
            <p className="empty">
              {since === '' ? 'No job is on the list yet.' : 'Nothing changed since then.'}
            </p>
          ) : (
            <>
              <ChangeTable rows={rows} />
              <Pager page={page} pageSize={ROWS} total={total} noun="change" onPage={setPage} />
              <ExportList
                name="changes of the scope"
                headings={['When (ISO 8601)', 'Job', 'Joint', 'Version', 'By', 'What changed', 'Reason']}
                rows={() => allRows('job.changes', search)}
                cells={(row) => [
                  row.at,
                  row.number,
                  row.tag,
                  row.version,
                  row.by,
                  row.changes.map(({ field, from, to }) => `${field}: ${from} → ${to}`).join('; '),
                  row.reason,
                ]}
              />
            </>
          )
        }
      </Asked>
    </Desk>
  );
}
