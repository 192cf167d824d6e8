import { Link } from 'wouter';
import type { RequestInput } from '../../../core/contract/requests.ts';
import type { ToolClass, ToolSummary } from '../../../core/contract/tool.ts';
import { allRows } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { type Column, FoundTable } from '../../components/found-table.tsx';
import { useSlash, walkEntries } from '../../components/list-keys.ts';
import { TOOL_CLASSES } from '../../components/tool-classes.ts';
import { Validity } from '../../components/validity.tsx';
import { useToolSearch } from './tool-search.ts';

type Sort = RequestInput<'tool.list'>['sort'];

const COLUMNS: readonly Column<Sort>[] = [
  { sort: 'number', words: 'Number' },
  { sort: 'class', words: 'Class' },
  { sort: null, words: 'Ratings' },
  { sort: 'status', words: 'Status' },
  { sort: 'validUntil', words: 'Certificate' },
];

export function ToolList() {
  const { search, found, change } = useToolSearch();
  const slash = useSlash();
  return (
    <Desk
      indexLabel="Classes of tool"
      index={<ClassFilter chosen={search.class} onChoose={(chosen) => change({ class: chosen })} />}
    >
      {/* biome-ignore lint/a11y/noStaticElementInteractions: arrow keys only carry the focus between the links inside */}
      <div onKeyDown={walkEntries}>
        <Title
          name="Tool room"
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
        <input
          type="search"
          aria-label="Find a tool"
          aria-keyshortcuts="/"
          placeholder="Find by number, serial or place ( / )"
          ref={slash}
          value={search.text}
          onChange={(event) => change({ text: event.target.value })}
        />
        <Asked asking={found} what="the tools">
          {(rows) => (
            <FoundTable
              found={rows}
              columns={COLUMNS}
              search={search}
              onChange={change}
              row={(row) => <Row key={row.id} row={row} />}
              noun="tool"
              empty={
                search.text === '' && search.class === null
                  ? 'There is no tool on the register yet. Import a tool list or enter the first one.'
                  : 'No tool matches. Change the words or the class.'
              }
              exported={{
                name: 'tools',
                headings: [
                  'Number',
                  'Serial',
                  'Class',
                  'Ratings (units in the cell)',
                  'Status',
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

function Row({ row }: { readonly row: ToolSummary }) {
  return (
    <tr>
      <th scope="row">
        <Link href={`/tools/${row.id}`} data-entry>
          {row.number}
        </Link>
        {row.serial && <div className="small">serial {row.serial}</div>}
      </th>
      <td>{row.class}</td>
      <td>{row.ratings}</td>
      <td>
        <span className={row.status === 'quarantined' || row.status === 'scrapped' ? 'flag' : undefined}>
          {row.status}
        </span>
        {row.place && <div className="small">{row.place}</div>}
      </td>
      <td className="date">
        <Validity tool={row} />
      </td>
    </tr>
  );
}

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
        {TOOL_CLASSES.map((each) => entry(each, `${each[0]?.toUpperCase()}${each.slice(1)}s`))}
      </ol>
    </>
  );
}
