import { Link } from 'wouter';
import type { JointSummary } from '../../../core/contract/joint.ts';
import { jointState } from '../../../core/contract/life.ts';
import type { RequestInput } from '../../../core/contract/requests.ts';
import { allRows, useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { counted } from '../../app/text/number.ts';
import { dayOf } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { type Column, FoundTable } from '../../components/found-table.tsx';
import { useSlash, walkEntries } from '../../components/list-keys.ts';
import { Unknown } from '../../components/number.tsx';
import { useJointSearch } from './joint-search.ts';

type Sort = RequestInput<'joint.list'>['sort'];

const COLUMNS: readonly Column<Sort>[] = [
  { sort: 'tag', words: 'Tag' },
  { sort: 'unit', words: 'Plant unit' },
  { sort: null, words: 'Flange and bolting' },
  { sort: 'service', words: 'Service' },
  { sort: null, words: 'State' },
  { sort: 'lastEvent', words: 'Last done' },
];

const LAST = ['Last done', 'Last done at (ISO 8601)'];

export function JointList() {
  const { search, found, change } = useJointSearch();
  const slash = useSlash();
  return (
    <Desk
      indexLabel="Plant units"
      index={<UnitFilter chosen={search.unitId} onChoose={(unitId) => change({ unitId })} />}
    >
      {/* biome-ignore lint/a11y/noStaticElementInteractions: arrow keys only carry the focus between the links inside */}
      <div onKeyDown={walkEntries}>
        <Title
          name="Joints"
          kind={
            <span className="row">
              <Link className="quiet" href="/leaks">
                Leaks
              </Link>
              <Link className="quiet" href="/import/joints">
                Import joints
              </Link>
              <Link className="act" href="/joints/new">
                New joint
              </Link>
            </span>
          }
        />
        <div className="filters no-print">
          <input
            type="search"
            aria-label="Find a joint"
            aria-keyshortcuts="/"
            placeholder="Find by tag, place or service ( / )"
            ref={slash}
            value={search.text}
            onChange={(event) => change({ text: event.target.value })}
          />
          <div className="field">
            <label htmlFor="state">State</label>
            <select
              id="state"
              value={search.state ?? ''}
              onChange={({ target }) =>
                change({ state: target.value === '' ? null : jointState.parse(target.value) })
              }
            >
              <option value="">any</option>
              {jointState.options.map((state) => (
                <option key={state} value={state}>
                  {state}
                </option>
              ))}
            </select>
          </div>
        </div>
        <Asked asking={found} what="the joints">
          {(rows) => (
            <FoundTable
              found={rows}
              columns={COLUMNS}
              search={search}
              onChange={change}
              row={(row) => <Row key={row.id} row={row} />}
              noun="joint"
              empty={
                search.text === '' && search.unitId === null && !search.state
                  ? 'There is no joint on the register yet. Import a joint list or enter the first one.'
                  : 'No joint matches. Change the words, the state or the plant unit.'
              }
              exported={{
                name: 'joints',
                headings: [
                  'Tag',
                  'Plant unit',
                  'Location',
                  'Service',
                  'Flange',
                  'Bolting',
                  'Stud grade',
                  'State',
                  ...LAST,
                ],
                rows: () => allRows('joint.list', search),
                cells: (row) => [
                  row.tag,
                  row.unitName,
                  row.location,
                  row.service || null,
                  row.flange,
                  row.bolting,
                  row.grade,
                  row.state,
                  row.lastEvent?.kind ?? 'nothing recorded',
                  row.lastEvent?.happenedAt ?? '',
                ],
              }}
            />
          )}
        </Asked>
      </div>
    </Desk>
  );
}

function Row({ row }: { readonly row: JointSummary }) {
  const { timeZone } = useRegister();
  return (
    <tr>
      <th scope="row">
        <Link href={`/joints/${row.id}`} data-entry>
          {row.tag}
        </Link>
        {row.location && <div className="small">{row.location}</div>}
      </th>
      <td>{row.unitName}</td>
      <td>
        {row.flange}
        <div className="small">
          {row.bolting}
          {row.grade && ` · ${row.grade}`}
        </div>
      </td>
      <td>{row.service || <Unknown />}</td>
      <td>
        {row.state}
        {row.deviation && <div className="flag">deviation</div>}
      </td>
      <td className="date">
        {row.lastEvent ? (
          <>
            {row.lastEvent.kind}
            <div className="small">{dayOf(row.lastEvent.happenedAt, timeZone)}</div>
          </>
        ) : (
          <span className="small">nothing recorded</span>
        )}
      </td>
    </tr>
  );
}

interface UnitFilterProps {
  readonly chosen: string | null;
  readonly onChoose: (id: string | null) => void;
}

function UnitFilter({ chosen, onChoose }: UnitFilterProps) {
  const units = useAsk('unit.list', {});
  const contained = useAsk('joint.containment', {});
  const register = useRegister();
  const counts = contained.data?.rows ?? [];
  const openIn = (id: string | null) =>
    counts.reduce((sum, row) => sum + (id === null || row.unitId === id ? row.open : 0), 0);
  const deviations = counts.reduce((sum, row) => sum + row.deviations, 0);
  const entry = (id: string | null, name: string, joints: number) => (
    <li key={id ?? 'all'}>
      <button
        type="button"
        className="entry as-entry"
        aria-current={chosen === id ? 'true' : undefined}
        onClick={() => onChoose(id)}
      >
        <b>{name}</b>
        <span className="small">
          {counted(joints, 'joint')}
          {openIn(id) > 0 && `, ${openIn(id)} open`}
        </span>
      </button>
    </li>
  );
  return (
    <>
      <h2>Plant units</h2>
      <ol>
        {entry(null, 'All plant units', register.joints)}
        {units.data?.rows.map((unit) => entry(unit.id, unit.name, unit.joints))}
      </ol>
      <p className="pager">
        <Link href="/units">Name plant units</Link>
      </p>
      <p className="pager">
        <Link href="/deviations">Deviations{deviations > 0 && ` (${deviations} to decide)`}</Link>
      </p>
    </>
  );
}
