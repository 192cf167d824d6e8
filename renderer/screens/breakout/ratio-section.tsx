import { lazy, Suspense, useState } from 'react';
import { Link } from 'wouter';
import type { BreakoutHistory, Opening } from '../../../core/contract/forecast.ts';
import type { RequestInput } from '../../../core/contract/requests.ts';
import { useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { count, sensible } from '../../app/text/number.ts';
import { moment } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Busy } from '../../components/busy.tsx';
import { ExportList } from '../../components/export-list.tsx';
import { Measure, Unknown } from '../../components/number.tsx';
import { PointReader } from '../../components/point-reader.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';

type Scope = RequestInput<'breakout.history'>['of'];

const RatioChart = lazy(() => import('../../charts/ratio-chart.tsx'));

/** Breakout over installed torque, opening by opening: sentence, chart, each point read out, and the same rows as a table. */
export function RatioSection({ of }: { readonly of: Scope }) {
  const asked = useAsk('breakout.history', { of }, { keep: true });
  const [asTable, setAsTable] = useState(false);
  return (
    <section aria-labelledby="ratios">
      <div className="spread">
        <h2 id="ratios">Breakout over installed torque</h2>
        {asked.data && asked.data.openings.length > 0 && (
          <button type="button" className="link small no-print" onClick={() => setAsTable(!asTable)}>
            {asTable ? 'Show as chart' : 'Show as table'}
          </button>
        )}
      </div>
      <Asked asking={asked} what="the openings">
        {(history) => (
          <div className="told">
            <p>{history.finding}</p>
            {history.capacity !== null && (
              <p className="small">
                The least of the wrenches used in these openings could give up to{' '}
                <Measure si={history.capacity} unit="N.m" /> by its certificate on that day.
              </p>
            )}
            {history.shown < history.total && (
              <p className="small">
                {count(history.shown)} of {count(history.total)} openings shown; highest, lowest and every one
                that stands apart are among them
              </p>
            )}
            {history.openings.length > 0 &&
              (asTable ? (
                <OpeningTable openings={history.openings} named={of.kind === 'class'} />
              ) : (
                <Openings
                  history={history}
                  named={of.kind === 'class'}
                  key={history.openings.at(-1)?.eventId}
                />
              ))}
            {history.openings.length > 0 && (
              <ExportList
                name="breakout over installed torque"
                headings={OPENING_HEADINGS}
                rows={async () => history.openings}
                cells={openingCells}
              />
            )}
          </div>
        )}
      </Asked>
    </section>
  );
}

const OPENING_HEADINGS = [
  'Joint',
  'Opened (ISO 8601)',
  'Installed, N·m',
  'Middle, ratio',
  'Lowest, ratio',
  'Highest, ratio',
  'Clean, ratio',
  'Turned',
  'Not turned',
  'Years on',
  'Why no ratio',
  'Against the clean value',
];

const openingCells = (opening: Opening) => [
  opening.tag,
  opening.happenedAt,
  opening.installed?.torque ?? null,
  opening.median,
  opening.lowest,
  opening.highest,
  opening.cleanRatio,
  opening.turned,
  opening.notTurned,
  opening.years,
  opening.whyNoRatio ?? '',
  opening.standing,
];

function Openings({ history, named }: { readonly history: BreakoutHistory; readonly named: boolean }) {
  const { timeZone } = useRegister();
  const { openings, commonRatio, capacity, finding } = history;
  const [place, setPlace] = useState(openings.length - 1);
  const chosen = openings[Math.min(place, openings.length - 1)];
  const drawn = openings.some(({ median }) => median !== null);
  return (
    <>
      {drawn && (
        <Suspense fallback={<Busy what="Drawing the chart" />}>
          <RatioChart
            openings={openings}
            finding={finding}
            common={commonRatio}
            capacity={capacity}
            chosen={chosen?.eventId ?? null}
          />
        </Suspense>
      )}
      {chosen && (
        <PointReader
          label="Opening read out below"
          count={openings.length}
          place={Math.min(place, openings.length - 1)}
          words={`${named ? `${chosen.tag}, ` : ''}${moment(chosen.happenedAt, timeZone)}, ${ratioWords(chosen)}`}
          onPlace={setPlace}
        />
      )}
      {chosen && <Told opening={chosen} named={named} />}
    </>
  );
}

const ratioWords = ({ median, lowest, highest, whyNoRatio }: Opening): string =>
  median === null
    ? `no ratio: ${whyNoRatio ?? 'no stud turned'}`
    : `middle ${sensible(median, 3)}, lowest ${lowest === null ? 'not known' : sensible(lowest, 3)}, highest ${highest === null ? 'not known' : sensible(highest, 3)}`;

function Told({ opening, named }: { readonly opening: Opening; readonly named: boolean }) {
  const { timeZone } = useRegister();
  const { residual } = opening;
  const apart = opening.readings.filter(({ outlier }) => outlier !== null);
  return (
    <div className="told" aria-live="polite">
      <h3>
        {named && (
          <>
            <Link href={`/joints/${opening.jointId}/breakout`}>{opening.tag}</Link>,{' '}
          </>
        )}
        <Link href={`/events/${opening.eventId}`}>{moment(opening.happenedAt, timeZone)}</Link>:{' '}
        {ratioWords(opening)}
      </h3>
      <p>{opening.meaning}</p>
      {residual && (
        <p>
          Load left in a bolt before it was turned: {sensible(residual.low / 1000, 3)} to{' '}
          {sensible(residual.high / 1000, 3)} <span className="unit">kN</span>, of{' '}
          {sensible(residual.installed / 1000, 3)} <span className="unit">kN</span> installed.{' '}
          <span className="small">{residual.basis}</span>
        </p>
      )}
      <p>
        Under the least load the joint’s data ask for: <strong>{opening.belowLeast}</strong>.{' '}
        <span className="small">{opening.belowLeastBasis}</span>
      </p>
      {opening.outlier && <p>It stands apart: {opening.outlier}</p>}
      {apart.map(({ bolt, outlier }) => (
        <p key={bolt}>
          Bolt {bolt} stands apart: {outlier}
        </p>
      ))}
    </div>
  );
}

function OpeningTable({
  openings,
  named,
}: {
  readonly openings: readonly Opening[];
  readonly named: boolean;
}) {
  const { timeZone } = useRegister();
  return (
    <SideScroll>
      <table className="tab">
        <caption className="small">Ratios are breakout over installed torque, without a unit.</caption>
        <thead>
          <tr>
            {named && <th scope="col">Joint</th>}
            <th scope="col">Opened</th>
            {['Middle', 'Lowest', 'Highest', 'Clean', 'Turned', 'Not turned', 'Years on'].map((name) => (
              <th key={name} scope="col" className="num">
                {name}
              </th>
            ))}
            <th scope="col">Against the clean value</th>
          </tr>
        </thead>
        <tbody>
          {openings.map((opening) => (
            <tr key={opening.eventId}>
              {named && (
                <td>
                  <Link href={`/joints/${opening.jointId}/breakout`}>{opening.tag}</Link>
                </td>
              )}
              <th scope="row" className="date">
                {moment(opening.happenedAt, timeZone)}
              </th>
              {[opening.median, opening.lowest, opening.highest, opening.cleanRatio].map((ratio, index) => (
                <td key={['middle', 'lowest', 'highest', 'clean'][index]} className="num">
                  {ratio === null ? <Unknown /> : sensible(ratio, 3)}
                </td>
              ))}
              <td className="num">{opening.turned}</td>
              <td className="num">{opening.notTurned}</td>
              <td className="num">{opening.years === null ? <Unknown /> : sensible(opening.years, 2)}</td>
              <td>{opening.whyNoRatio ?? opening.standing}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </SideScroll>
  );
}
