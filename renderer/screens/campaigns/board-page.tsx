import { useState } from 'react';
import { Link, useSearchParams } from 'wouter';
import type { Board, BoardGroup, BoardJob } from '../../../core/contract/board.ts';
import { useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { counted } from '../../app/text/number.ts';
import { moment } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { ExportList } from '../../components/export-list.tsx';
import { walkEntries } from '../../components/list-keys.ts';
import { SeverityMark } from '../../components/marks.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { PlanIndex } from './plan-index.tsx';

/** How a campaign stands: its systems and test packs counted, and what stands in the way of each job. */
export function BoardPage({ id }: { readonly id: string }) {
  const { timeZone } = useRegister();
  const campaign = useAsk('campaign.get', { id });
  const board = useAsk('board.get', { campaignId: id });
  return (
    <Desk indexLabel="Plan" index={<PlanIndex campaignId={id} />}>
      <Title
        name="Board"
        under={campaign.data?.data.name}
        kind={board.data && <span className="small">as of {moment(board.data.at, timeZone)}</span>}
      />
      <Asked asking={board} what="the board">
        {(told) => <BoardBody board={told} />}
      </Asked>
    </Desk>
  );
}

const ALL = { system: '', testPack: '', show: 'open' };
type Filter = typeof ALL;

function BoardBody({ board }: { readonly board: Board }) {
  const [asked] = useSearchParams();
  const [filter, setFilter] = useState<Filter>({
    ...ALL,
    system: asked.get('system') ?? '',
    testPack: asked.get('pack') ?? '',
  });
  return (
    <>
      <p role="status">{board.finding}</p>
      {board.jobs.length > 0 && (
        <>
          <Groups
            title="Systems"
            noun="System"
            groups={board.systems}
            chosen={filter.system}
            onChoose={(system) => setFilter({ ...filter, system, testPack: '' })}
          />
          <Groups
            title="Test packs"
            noun="Test pack"
            groups={board.testPacks}
            chosen={filter.testPack}
            onChoose={(testPack) => setFilter({ ...filter, testPack, system: '' })}
            tested
          />
          <Jobs jobs={board.jobs} filter={filter} onFilter={setFilter} />
        </>
      )}
    </>
  );
}

interface GroupsProps {
  readonly title: string;
  readonly noun: string;
  readonly groups: readonly BoardGroup[];
  readonly chosen: string;
  readonly onChoose: (name: string) => void;
  /** With whether the leak test can begin. */
  readonly tested?: boolean;
}

function Groups({ title, noun, groups, chosen, onChoose, tested = false }: GroupsProps) {
  const id = title.toLowerCase().replace(' ', '-');
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      <SideScroll>
        <table className="tab">
          <thead>
            <tr>
              <th scope="col">{noun}</th>
              {['Closed', 'Open', 'Held', 'Not safe', 'Late', 'Temporary'].map((name) => (
                <th key={name} scope="col" className="num">
                  {name}
                </th>
              ))}
              {tested && <th scope="col">Leak test can begin</th>}
            </tr>
          </thead>
          <tbody>
            {groups.map((group) => (
              <tr key={group.name}>
                <th scope="row">
                  <button
                    type="button"
                    className="link"
                    aria-pressed={group.name === chosen && chosen !== ''}
                    onClick={() => onChoose(group.name === chosen ? '' : group.name)}
                  >
                    {group.name || 'none named'}
                  </button>
                </th>
                <td className="num">
                  {group.closed} of {group.jobs}
                </td>
                <td className="num">{group.jobs - group.closed}</td>
                <td className="num">{group.held}</td>
                <td className="num">{group.unsafe}</td>
                <td className="num">{group.late}</td>
                <td className="num">{group.temporary}</td>
                {tested && (
                  <td>
                    {group.ready === 'yes' ? 'as far as the records tell' : group.ready}
                    {group.against.length > 0 && <div className="small">{group.against.join('; ')}</div>}
                  </td>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </SideScroll>
      {tested && (
        <p className="small">
          Whether a test may begin is for the site’s procedure and the competent person; this is not a permit.
        </p>
      )}
    </section>
  );
}

interface JobsProps {
  readonly jobs: readonly BoardJob[];
  readonly filter: Filter;
  readonly onFilter: (filter: Filter) => void;
}

const SHOWS = [
  ['open', 'open'],
  ['all', 'all'],
  ['blocked', 'with something in the way'],
  ['temporary', 'temporary'],
] as const;

function wanted({ system, testPack, show }: Filter): (job: BoardJob) => boolean {
  const same = (asked: string, own: string) => asked === '' || asked.toLowerCase() === own.toLowerCase();
  return (job) =>
    same(system, job.system) &&
    same(testPack, job.testPack) &&
    (show === 'all' ||
      (show === 'open' && !job.closed) ||
      (show === 'blocked' && job.blockers.length > 0) ||
      (show === 'temporary' && job.temporary));
}

function Jobs({ jobs, filter, onFilter }: JobsProps) {
  const shown = jobs.filter(wanted(filter));
  const of = [filter.system, filter.testPack].filter((name) => name !== '');
  return (
    <section aria-labelledby="board-jobs">
      <h2 id="board-jobs">Jobs{of.length > 0 && ` of ${of.join(', ')}`}</h2>
      <div className="filters no-print">
        <div className="field">
          <label htmlFor="show">Shown</label>
          <select
            id="show"
            value={filter.show}
            onChange={({ target }) => onFilter({ ...filter, show: target.value })}
          >
            {SHOWS.map(([value, words]) => (
              <option key={value} value={value}>
                {words}
              </option>
            ))}
          </select>
        </div>
        {of.length > 0 && (
          <button
            type="button"
            className="quiet"
            onClick={() => onFilter({ ...filter, system: '', testPack: '' })}
          >
            All systems and packs
          </button>
        )}
      </div>
      <p className="small">{counted(shown.length, 'job')} shown.</p>
      {shown.length === 0 ? (
        <p className="empty">No job is in this state.</p>
      ) : (
        // biome-ignore lint/a11y/noStaticElementInteractions: arrow keys only carry the focus between the links inside
        <div onKeyDown={walkEntries}>
          <JobTable jobs={shown} />
          <ExportList
            name="board"
            headings={[
              'Job',
              'Joint',
              'Scope',
              'System',
              'Test pack',
              'Stage',
              'State of the joint',
              'Closed',
              'Temporary',
              'In the way',
            ]}
            rows={async () => shown}
            cells={(job) => [
              job.number,
              job.tag,
              job.scope,
              job.system,
              job.testPack,
              job.stage,
              job.state,
              job.closed ? 'yes' : 'no',
              job.temporary ? 'yes' : 'no',
              job.blockers.map(({ words }) => words).join('; '),
            ]}
          />
        </div>
      )}
    </section>
  );
}

function JobTable({ jobs }: { readonly jobs: readonly BoardJob[] }) {
  return (
    <SideScroll>
      <table className="tab links">
        <thead>
          <tr>
            <th scope="col">Job</th>
            <th scope="col">Joint</th>
            <th scope="col">Scope</th>
            <th scope="col">How far</th>
            <th scope="col">In the way</th>
          </tr>
        </thead>
        <tbody>
          {jobs.map((job) => (
            <tr key={job.jobId}>
              <th scope="row" className="tool-number">
                <Link href={`/plan/jobs/${job.jobId}`} data-entry>
                  {job.number}
                </Link>
              </th>
              <td>
                <Link href={`/joints/${job.jointId}`}>{job.tag}</Link>
                <div className="small">{job.location}</div>
              </td>
              <td>
                {job.scope}
                {job.temporary && <div className="small">temporary</div>}
              </td>
              <td>
                {job.stage}
                <div className="small">{job.state}</div>
              </td>
              <td>
                {job.blockers.length === 0 ? (
                  <span className="small">nothing known</span>
                ) : (
                  <ul className="plain-list against">
                    {job.blockers.map(({ kind, words }) => (
                      <li key={words}>
                        <SeverityMark
                          severity={kind === 'unsafe' ? 'refusal' : kind === 'not known' ? 'note' : 'warning'}
                        />
                        <span>{words}</span>
                      </li>
                    ))}
                  </ul>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </SideScroll>
  );
}
