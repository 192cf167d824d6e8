import { useState } from 'react';
import { Link } from 'wouter';
import { type CampaignRow, type JobRow, jobScope } from '../../../core/contract/campaign.ts';
import type { RequestInput } from '../../../core/contract/requests.ts';
import { allRows, useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { counted } from '../../app/text/number.ts';
import { moment, span } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { ExportList } from '../../components/export-list.tsx';
import { useSlash, walkEntries } from '../../components/list-keys.ts';
import { Pager } from '../../components/pager.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { PlanIndex } from './plan-index.tsx';

export function CampaignPage({ id }: { readonly id: string }) {
  const campaign = useAsk('campaign.get', { id });
  return (
    <Desk
      indexLabel="Plan"
      index={<PlanIndex campaignId={id} />}
      doings={campaign.data && <CampaignDoings campaign={campaign.data} />}
      margin={campaign.data && <CampaignMargin campaign={campaign.data} />}
    >
      <Asked asking={campaign} what="the campaign">
        {(row) => <CampaignBody campaign={row} />}
      </Asked>
    </Desk>
  );
}

function CampaignBody({ campaign }: { readonly campaign: CampaignRow }) {
  const { timeZone } = useRegister();
  const { data } = campaign;
  return (
    <>
      <Title
        name={data.name}
        beside="campaign"
        under={`${moment(data.startsAt, timeZone)} to ${moment(data.endsAt, timeZone)}`}
        kind={
          <>
            {counted(campaign.jobs, 'job')}
            <span className="small">
              {data.closed ? 'over' : 'open'}, version {campaign.version}
            </span>
          </>
        }
      />
      <Jobs campaign={campaign} />
      {data.remarks && (
        <section>
          <h2>Remarks</h2>
          <p>{data.remarks}</p>
        </section>
      )}
    </>
  );
}

const ROWS = 50;

type Search = RequestInput<'job.list'>;

function Jobs({ campaign }: { readonly campaign: CampaignRow }) {
  const slash = useSlash();
  const [search, setSearch] = useState<Search>({
    campaignId: campaign.id,
    text: '',
    scope: null,
    testPack: null,
    dropped: false,
    page: 1,
    pageSize: ROWS,
  });
  const change = (part: Partial<Search>) => setSearch({ ...search, page: 1, ...part });
  const jobs = useAsk('job.list', search, { keep: true });
  const filtered = search.text !== '' || search.scope !== null || search.testPack !== null;
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: arrow keys only carry the focus between the links inside
    <div onKeyDown={walkEntries}>
      <h2>Jobs</h2>
      <div className="filters no-print">
        <input
          type="search"
          aria-label="Find a job"
          aria-keyshortcuts="/"
          placeholder="Find by number, tag, order or pack ( / )"
          ref={slash}
          value={search.text}
          onChange={(event) => change({ text: event.target.value })}
        />
        <div className="field">
          <label htmlFor="scope">Scope</label>
          <select
            id="scope"
            value={search.scope ?? ''}
            onChange={({ target }) =>
              change({ scope: target.value === '' ? null : jobScope.parse(target.value) })
            }
          >
            <option value="">any</option>
            {jobScope.options.map((scope) => (
              <option key={scope} value={scope}>
                {scope}
              </option>
            ))}
          </select>
        </div>
        {campaign.data.testPacks.length > 0 && (
          <div className="field">
            <label htmlFor="pack">Test pack</label>
            <select
              id="pack"
              value={search.testPack ?? ''}
              onChange={({ target }) => change({ testPack: target.value === '' ? null : target.value })}
            >
              <option value="">any</option>
              {campaign.data.testPacks.map((pack) => (
                <option key={pack} value={pack}>
                  {pack}
                </option>
              ))}
            </select>
          </div>
        )}
        <label className="check">
          <input
            type="checkbox"
            checked={search.dropped ?? false}
            onChange={(event) => change({ dropped: event.target.checked })}
          />
          With {counted(campaign.dropped, 'dropped job')}
        </label>
      </div>
      <Asked asking={jobs} what="the jobs">
        {({ rows, total }) =>
          rows.length === 0 ? (
            <p className="empty">
              {filtered
                ? 'No job matches. Change the words, the scope or the test pack.'
                : 'There is no job yet. Import a list of jobs or enter the first one.'}
            </p>
          ) : (
            <>
              <JobTable rows={rows} />
              <Pager
                page={search.page}
                pageSize={ROWS}
                total={total}
                noun="job"
                onPage={(page) => setSearch({ ...search, page })}
              />
              <ExportList
                name={`jobs ${campaign.data.name}`}
                headings={HEADINGS}
                rows={() => allRows('job.list', search)}
                cells={cellsOf}
              />
            </>
          )
        }
      </Asked>
    </div>
  );
}

const HEADINGS = [
  'Number',
  'Joint',
  'Plant unit',
  'Scope',
  'System',
  'Test pack',
  'State of the joint',
  'Class',
  'Not before (ISO 8601)',
  'Finished by (ISO 8601)',
  'After jobs',
  'Isolation',
  'Permit',
  'Dropped',
];

const cellsOf = ({ data, tag, unit, state, criticality }: JobRow) => [
  data.number,
  tag,
  unit,
  data.scope,
  data.system,
  data.testPack,
  state,
  criticality ?? 'not known',
  data.earliest,
  data.latest,
  data.after.join('; '),
  data.isolationRef,
  data.permitRef,
  data.dropped ? 'yes' : 'no',
];

function JobTable({ rows }: { readonly rows: readonly JobRow[] }) {
  return (
    <SideScroll>
      <table className="tab links">
        <thead>
          <tr>
            <th scope="col">Job</th>
            <th scope="col">Joint</th>
            <th scope="col">Scope</th>
            <th scope="col">System, test pack</th>
            <th scope="col">State of the joint</th>
            <th scope="col">Waits for</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ id, data, tag, location, state, criticality }) => (
            <tr key={id}>
              <th scope="row" className="tool-number">
                <Link href={`/plan/jobs/${id}`} data-entry>
                  {data.number}
                </Link>
                {data.dropped && <div className="flag">dropped</div>}
              </th>
              <td>
                {tag}
                <div className="small">{location}</div>
              </td>
              <td>
                {data.scope}
                {data.temporary && <div className="small">temporary</div>}
              </td>
              <td>
                {data.system || <span className="small">no system</span>}
                <div className="small">{data.testPack || 'no test pack'}</div>
              </td>
              <td>
                {state}
                <div className="small">{criticality ?? 'class not known'}</div>
              </td>
              <td>{data.after.join(', ')}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </SideScroll>
  );
}

function CampaignDoings({ campaign }: { readonly campaign: CampaignRow }) {
  const { id, data } = campaign;
  return (
    <>
      {!data.closed && (
        <>
          <Link className="act" href={`/import/jobs?campaign=${id}`}>
            Import jobs
          </Link>
          <Link className="quiet" href={`/plan/campaigns/${id}/jobs/new`}>
            New job
          </Link>
        </>
      )}
      <Link className="quiet" href={`/plan/campaigns/${id}/board`}>
        Board
      </Link>
      <Link className="quiet" href={`/plan/campaigns/${id}/edit`}>
        Edit the campaign
      </Link>
    </>
  );
}

function CampaignMargin({ campaign: { data } }: { readonly campaign: CampaignRow }) {
  return (
    <>
      <section>
        <h2>Crews</h2>
        {data.crews.length === 0 ? (
          <p className="small">None named yet. A plan needs one for every hour of work.</p>
        ) : (
          <dl className="columns">
            {data.crews.map(({ name, from, to, shifts, personIds }) => (
              <div key={name}>
                <dt>
                  <b>{name}</b>
                </dt>
                <dd>
                  {span(from, to)}, {shifts.map((shift) => `${shift.from} to ${shift.to}`).join(', ')};{' '}
                  {personIds.length === 0 ? 'people not named' : `${personIds.length} people`}
                </dd>
              </div>
            ))}
          </dl>
        )}
      </section>
      <section>
        <h2>Tool sets</h2>
        {data.sets.length === 0 ? (
          <p className="small">None put together yet.</p>
        ) : (
          <ul className="plain-list">
            {data.sets.map(({ name }) => (
              <li key={name}>{name}</li>
            ))}
          </ul>
        )}
      </section>
      {data.testPacks.length > 0 && (
        <section>
          <h2>Test packs, in order</h2>
          <p>{data.testPacks.join(', ')}</p>
        </section>
      )}
    </>
  );
}
