import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Link } from 'wouter';
import type { ForecastRow, ForecastRun, ForecastSort } from '../../../core/contract/forecast-list.ts';
import type { RequestInput } from '../../../core/contract/requests.ts';
import { allRows, useAsk, usePreview } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { count, roundly, sensible } from '../../app/text/number.ts';
import { moment } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { Failure } from '../../components/failure.tsx';
import { type Column, FoundTable } from '../../components/found-table.tsx';
import { Unknown } from '../../components/number.tsx';
import { ToolPicker } from '../../components/tool-picker.tsx';
import { LeakIndex } from '../leaks/leak-index.tsx';

const ASK_AGAIN_MS = 250;
const ROWS = 50;

/** The next opening of every joint, worked out in the background. */
export function ForecastsPage() {
  const client = useQueryClient();
  const run = useAsk(
    'forecasts.run',
    { id: null },
    {
      fresh: true,
      again: (told) => ((told as ForecastRun | null)?.state === 'running' ? ASK_AGAIN_MS : null),
    },
  );
  const start = usePreview('forecasts.start');
  const cancel = usePreview('forecasts.cancel');
  const then = { onSuccess: () => client.invalidateQueries({ queryKey: ['forecasts.run'] }) };
  const newest = run.data ?? null;
  const running = newest?.state === 'running';
  const failure = start.error ?? cancel.error ?? run.error;
  return (
    <Desk indexLabel="Leaks and joints" index={<LeakIndex />}>
      <Title
        name="Forecasts of all joints"
        under="Breakout of each joint’s next opening, from the plant’s own openings. Nothing of it is recorded."
      />
      <StartForm busy={running || start.isPending} onStart={(input) => start.mutate(input, then)} />
      {failure && <Failure error={failure.error} what="It was not started." />}
      {newest !== null && (
        <section aria-label="Forecasts">
          {running ? (
            <Running run={newest} onCancel={() => cancel.mutate({ id: newest.id }, then)} />
          ) : (
            <Ended run={newest} />
          )}
        </section>
      )}
    </Desk>
  );
}

interface StartFormProps {
  readonly busy: boolean;
  readonly onStart: (input: RequestInput<'forecasts.start'>) => void;
}

function StartForm({ busy, onStart }: StartFormProps) {
  const [unitId, setUnitId] = useState('');
  const [driveId, setDriveId] = useState<string | null>(null);
  const units = useAsk('unit.list', {});
  return (
    <form
      className="no-print"
      onSubmit={(event) => {
        event.preventDefault();
        onStart({ unitId: unitId === '' ? null : unitId, driveId });
      }}
    >
      <div className="fields">
        <div className="field">
          <label htmlFor="unit">Plant unit</label>
          <select id="unit" value={unitId} onChange={({ target }) => setUnitId(target.value)}>
            <option value="">all</option>
            {units.data?.rows.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </div>
        <ToolPicker
          label="Drive unit to hold against them"
          toolClass="drive unit"
          chosen={driveId}
          onChoose={setDriveId}
        />
      </div>
      <button type="submit" className="act" disabled={busy}>
        Work out the forecasts
      </button>
    </form>
  );
}

function Running({ run, onCancel }: { readonly run: ForecastRun; readonly onCancel: () => void }) {
  const share = run.total === 0 ? 0 : Math.min(1, run.done / run.total);
  return (
    <div className="busy">
      <p role="status">Working out the forecasts</p>
      <progress aria-label="Working out the forecasts" value={share} max={1} />
      <p className="small">
        {count(run.done)} of {count(run.total)} joints after {count(Math.floor(run.seconds))} s. Work goes on
        meanwhile.
      </p>
      <button type="button" className="quiet" onClick={onCancel}>
        Cancel
      </button>
    </div>
  );
}

function Ended({ run }: { readonly run: ForecastRun }) {
  const { timeZone } = useRegister();
  const when = `${moment(run.startedAt, timeZone)}, ${run.seconds.toFixed(1)} s`;
  if (run.state === 'failed') {
    return (
      <div className="failure" role="alert">
        <p>
          <b>The forecasts did not come to an end.</b> {run.problem}
        </p>
      </div>
    );
  }
  if (run.state === 'cancelled') {
    return <p role="status">The run of {when} was cancelled. Nothing is shown of it.</p>;
  }
  return (
    <>
      <p role="status">{run.finding}</p>
      <p className="small">
        Worked out {when}.{' '}
        {run.drive !== null &&
          (run.drive.capacity === null
            ? `What ${run.drive.number} gives today is not known: it has no certificate in force.`
            : `${run.drive.number} gives up to ${roundly(run.drive.capacity, 'N.m')} by its certificate and ratings; hose, pump and cassette of a set may hold it lower.`)}
      </p>
      <Rows run={run} />
    </>
  );
}

const COLUMNS: readonly Column<ForecastSort>[] = [
  { sort: 'tag', words: 'Joint' },
  { sort: null, words: 'Bolts' },
  { sort: null, words: 'Installed, N·m' },
  { sort: null, words: 'Middle, × installed' },
  { sort: 'worst', words: 'Worst bolt, 95 %, × installed' },
  { sort: 'worstTorque', words: 'Worst bolt, 95 %, N·m' },
  { sort: 'tooSmall', words: 'Drive unit too small' },
  { sort: 'seized', words: 'Studs expected seized' },
  { sort: null, words: 'Rests on' },
];

function Rows({ run }: { readonly run: ForecastRun }) {
  const [search, setSearch] = useState<RequestInput<'forecasts.rows'> & { text: string }>({
    id: run.id,
    text: '',
    sort: 'worstTorque',
    direction: 'desc',
    page: 1,
    pageSize: ROWS,
  });
  const asked = { ...search, id: run.id };
  const rows = useAsk('forecasts.rows', asked, { keep: true });
  return (
    <>
      <div className="filters no-print">
        <input
          type="search"
          aria-label="Find a joint in the forecasts"
          placeholder="Find by tag, unit or class"
          value={search.text}
          onChange={({ target }) => setSearch({ ...search, page: 1, text: target.value })}
        />
      </div>
      <Asked asking={rows} what="the forecasts">
        {(found) => (
          <FoundTable
            found={found}
            columns={COLUMNS}
            search={asked}
            onChange={(part) => setSearch({ ...search, page: 1, ...part })}
            row={(row) => <Row key={`${row.jointId} ${row.boltSet}`} row={row} drive={run.drive !== null} />}
            noun="bolt set"
            empty="No joint matches."
            exported={{
              name: 'forecasts',
              headings: [
                'Joint',
                'Bolt set',
                'Plant unit',
                'Bolts',
                'Installed, N·m',
                'Installed torque from',
                'Middle, ratio to installed',
                'Worst bolt 95 %, ratio to installed',
                'Worst bolt 95 %, N·m',
                'Chance the drive unit is too small',
                'Studs expected seized',
                'Evidence',
                'Own openings',
                'Class',
                'Not known',
              ],
              rows: () => allRows('forecasts.rows', asked),
              cells: (row) => [
                row.tag,
                row.setName,
                row.unit,
                row.bolts,
                row.installed,
                row.installedSource,
                row.median,
                row.worst,
                row.worstTorque,
                row.tooSmall,
                row.seized,
                row.sufficiency,
                row.ownOpenings,
                row.className,
                row.missing.join('; '),
              ],
            }}
          />
        )}
      </Asked>
    </>
  );
}

function Row({ row, drive }: { readonly row: ForecastRow; readonly drive: boolean }) {
  const shown = (value: number | null, digits = 3) =>
    value === null ? <Unknown /> : sensible(value, digits);
  return (
    <tr>
      <th scope="row">
        <Link href={`/joints/${row.jointId}/breakout`}>{row.tag}</Link>
        <div className="small">{row.setName ?? row.unit}</div>
      </th>
      <td className="num">{row.bolts ?? <Unknown />}</td>
      <td className="num">
        {shown(row.installed)}
        {row.installedSource.startsWith('assumed') && <div className="small">assumed</div>}
      </td>
      <td className="num">{shown(row.median)}</td>
      <td className="num">{shown(row.worst)}</td>
      <td className="num">{shown(row.worstTorque)}</td>
      <td className="num">
        {drive ? row.tooSmall === null ? <Unknown /> : `${sensible(row.tooSmall * 100, 2)} %` : 'none chosen'}
      </td>
      <td className="num">{shown(row.seized, 2)}</td>
      <td>
        {row.sufficiency === 'too few to say' ? 'too few to say: common practice' : row.sufficiency}
        <div className="small">
          {row.className}; own openings {row.ownOpenings}
        </div>
      </td>
    </tr>
  );
}
