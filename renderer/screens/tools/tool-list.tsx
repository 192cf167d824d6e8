import { Link } from 'wouter';
import type { DueState } from '../../../core/contract/check.ts';
import type { RequestInput } from '../../../core/contract/requests.ts';
import type { ToolClass, ToolSummary } from '../../../core/contract/tool.ts';
import { allRows, useAskAll } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { DueMark, worstDue } from '../../components/due-mark.tsx';
import { type Column, FoundTable } from '../../components/found-table.tsx';
import { useSlash, walkEntries } from '../../components/list-keys.ts';
import { TOOL_CLASSES } from '../../components/tool-classes.ts';
import { Validity } from '../../components/validity.tsx';
import { RoomIndex } from './room-index.tsx';
import { useToolSearch } from './tool-search.ts';

type Sort = RequestInput<'tool.list'>['sort'];

/** Days ahead that the mark in the list speaks of, as on the start page. */
const SOON_DAYS = 31;

const COLUMNS: readonly Column<Sort>[] = [
  { sort: 'number', words: 'Number' },
  { sort: 'class', words: 'Class' },
  { sort: null, words: 'Ratings' },
  { sort: 'status', words: 'Status' },
  { sort: 'validUntil', words: 'Certificate' },
  { sort: null, words: 'Due' },
];

const STATUSES = ['available', 'issued', 'at the laboratory', 'quarantined', 'scrapped'] as const;
const OWNERS = [
  { value: 'own', words: 'the site’s own' },
  { value: 'hired', words: 'hired' },
] as const;

export function ToolList() {
  const { search, found, change } = useToolSearch();
  const slash = useSlash();
  const dues = useWorstDues();
  return (
    <Desk
      indexLabel="Tool room"
      index={
        <>
          <RoomIndex />
          <ClassFilter chosen={search.class} onChoose={(chosen) => change({ class: chosen })} />
        </>
      }
    >
      {/* biome-ignore lint/a11y/noStaticElementInteractions: arrow keys only carry the focus between the links inside */}
      <div onKeyDown={walkEntries}>
        <Title
          name="Tools"
          kind={
            <span className="row">
              <Link className="quiet" href="/import/tools">
                Import tools
              </Link>
              <Link className="quiet" href="/import/certificate">
                Import a certificate
              </Link>
              <Link className="act" href="/tools/new">
                New tool
              </Link>
            </span>
          }
        />
        <div className="filters no-print">
          <input
            type="search"
            aria-label="Find a tool"
            aria-keyshortcuts="/"
            placeholder="Find by number, serial or place ( / )"
            ref={slash}
            value={search.text}
            onChange={(event) => change({ text: event.target.value })}
          />
          <select
            aria-label="Status"
            value={search.status ?? ''}
            onChange={(event) =>
              change({ status: STATUSES.find((each) => each === event.target.value) ?? null })
            }
          >
            <option value="">Every status</option>
            {STATUSES.map((each) => (
              <option key={each}>{each}</option>
            ))}
          </select>
          <select
            aria-label="Owner"
            value={search.owner ?? ''}
            onChange={(event) =>
              change({ owner: OWNERS.find(({ value }) => value === event.target.value)?.value ?? null })
            }
          >
            <option value="">Every owner</option>
            {OWNERS.map(({ value, words }) => (
              <option key={value} value={value}>
                {words}
              </option>
            ))}
          </select>
        </div>
        <Asked asking={found} what="the tools">
          {(rows) => (
            <FoundTable
              found={rows}
              columns={COLUMNS}
              search={search}
              onChange={change}
              row={(row) => <Row key={row.id} row={row} due={dues(row.id)} />}
              noun="tool"
              empty={
                search.text === '' && search.class === null && !search.status && !search.owner
                  ? 'There is no tool on the register yet. Import a tool list or enter the first one.'
                  : 'No tool matches. Change the words, the class, the status or the owner.'
              }
              exported={{
                name: 'tools',
                headings: [
                  'Number',
                  'Serial',
                  'Class',
                  'Ratings (units in the cell)',
                  'Status',
                  'Holder',
                  'Owner',
                  'Place',
                  'Certificate valid until (YYYY-MM-DD)',
                ],
                rows: () => allRows('tool.list', search),
                cells: (row) => [
                  row.number,
                  row.serial,
                  row.class,
                  row.ratings,
                  row.status,
                  row.holder ?? '',
                  row.owner,
                  row.place,
                  row.validUntil ?? (row.needsCertificate ? 'no certificate' : 'needs none'),
                ],
              }}
            />
          )}
        </Asked>
      </div>
    </Desk>
  );
}

/** The worst of each tool's dues; null while they are read. */
function useWorstDues(): (toolId: string) => DueState | null {
  const dues = useAskAll('tool.due', {
    on: null,
    withinDays: SOON_DAYS,
    text: '',
    class: null,
    all: false,
    page: 1,
    pageSize: 200,
  });
  const states = Map.groupBy(dues.data ?? [], ({ toolId }) => toolId);
  return (toolId) => worstDue(states.get(toolId)?.map(({ state }) => state) ?? []);
}

function Row({ row, due }: { readonly row: ToolSummary; readonly due: DueState | null }) {
  return (
    <tr>
      <th scope="row">
        <Link href={`/tools/${row.id}`} data-entry>
          {row.number}
        </Link>
        {row.serial && <div className="small">serial {row.serial}</div>}
      </th>
      <td>
        {row.class}
        {row.owner === 'hired' && <div className="small">hired</div>}
      </td>
      <td>{row.ratings}</td>
      <td>
        <span className={row.status === 'quarantined' || row.status === 'scrapped' ? 'flag' : undefined}>
          {row.status}
        </span>
        {row.holder && <div className="small">with {row.holder}</div>}
        {row.place && <div className="small">{row.place}</div>}
      </td>
      <td className="date">
        <Validity tool={row} />
      </td>
      <td className="date">{due && <DueMark state={due} />}</td>
    </tr>
  );
}

/** Several tools of a class. */
const CLASS_WORDS: Readonly<Record<ToolClass, string>> = {
  'drive unit': 'Drive units',
  cassette: 'Cassettes',
  'square-drive head': 'Square-drive heads',
  reducer: 'Reducers',
  pump: 'Pumps',
  gauge: 'Gauges',
  hose: 'Hoses',
  coupler: 'Couplers',
  'counterhold wrench': 'Counterhold wrenches',
  'hand torque wrench': 'Hand torque wrenches',
};

interface ClassFilterProps {
  readonly chosen: ToolClass | null;
  readonly onChoose: (chosen: ToolClass | null) => void;
}

function ClassFilter({ chosen, onChoose }: ClassFilterProps) {
  const entry = (value: ToolClass | null, words: string) => (
    <li key={words}>
      <button
        type="button"
        className="entry as-entry"
        aria-current={chosen === value ? 'true' : undefined}
        onClick={() => onChoose(value)}
      >
        <b>{words}</b>
      </button>
    </li>
  );
  return (
    <>
      <h2>Classes</h2>
      <ol>
        {entry(null, 'All tools')}
        {TOOL_CLASSES.map((each) => entry(each, CLASS_WORDS[each]))}
      </ol>
    </>
  );
}
