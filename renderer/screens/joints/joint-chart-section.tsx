import { lazy, Suspense, useState } from 'react';
import { Link } from 'wouter';
import type { ChartPoint } from '../../../core/contract/joint.ts';
import { useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { count, withUnit } from '../../app/text/number.ts';
import { moment } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Busy } from '../../components/busy.tsx';
import { ExportList } from '../../components/export-list.tsx';
import { Measure } from '../../components/number.tsx';
import { PointReader } from '../../components/point-reader.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';

const TorqueChart = lazy(() => import('../../charts/torque-chart.tsx'));

/** Installed and breakout torque over time: one sentence, the chart, and on request the same rows as a table. */
export function JointChartSection({ id }: { readonly id: string }) {
  const chart = useAsk('joint.chart', { id });
  const [asTable, setAsTable] = useState(false);
  return (
    <section aria-labelledby="torques">
      <div className="spread">
        <h2 id="torques">Installed and breakout torque</h2>
        {chart.data && chart.data.points.length > 0 && (
          <button type="button" className="link small no-print" onClick={() => setAsTable(!asTable)}>
            {asTable ? 'Show as chart' : 'Show as table'}
          </button>
        )}
      </div>
      <Asked asking={chart} what="the torques">
        {({ finding, points, shown, total }) => (
          <>
            <p>{finding}</p>
            {shown < total && (
              <p className="small">
                {count(shown)} of {count(total)} records shown; the highest and lowest, studs that would not
                turn and what was recorded against a refusal are among them
              </p>
            )}
            {points.length > 0 &&
              (asTable ? (
                <TorqueTable points={points} />
              ) : (
                <>
                  <Suspense fallback={<Busy what="Drawing the chart" />}>
                    <TorqueChart points={points} finding={finding} />
                  </Suspense>
                  <PointReading points={points} key={points.at(-1)?.eventId} />
                </>
              ))}
            {points.length > 0 && (
              <ExportList
                name="torques of the joint"
                headings={[
                  'When (ISO 8601)',
                  'What',
                  'Torque, N·m',
                  'Highest, N·m',
                  'Readings',
                  'Not turned',
                  'Against a refusal',
                ]}
                rows={async () => points}
                cells={(point) => [
                  point.happenedAt,
                  whatOf(point),
                  point.torque,
                  point.highest,
                  point.readings,
                  point.notTurned,
                  point.refused ? 'yes' : 'no',
                ]}
              />
            )}
          </>
        )}
      </Asked>
    </section>
  );
}

const whatOf = ({ kind }: ChartPoint) => (kind === 'tightening' ? 'installed' : 'breakout, median');

/** Each point of the chart in words, by the arrow keys. */
function PointReading({ points }: { readonly points: readonly ChartPoint[] }) {
  const { timeZone } = useRegister();
  const [place, setPlace] = useState(points.length - 1);
  const point = points[place];
  if (point === undefined) return null;
  const highest = point.kind === 'tightening' ? '' : `, highest ${withUnit(point.highest, 'N.m')}`;
  const words = `${moment(point.happenedAt, timeZone)}: ${whatOf(point)} ${withUnit(point.torque, 'N.m')}${highest}${point.refused ? '; recorded against a refusal' : ''}`;
  return (
    <>
      <PointReader
        label="Record read out below"
        count={points.length}
        place={place}
        words={words}
        onPlace={setPlace}
      />
      <p className="no-print" aria-live="polite">
        <Link href={`/events/${point.eventId}`}>{words}</Link>
      </p>
    </>
  );
}

function TorqueTable({ points }: { readonly points: readonly ChartPoint[] }) {
  const { timeZone } = useRegister();
  return (
    <SideScroll>
      <table className="tab">
        <thead>
          <tr>
            <th scope="col">When</th>
            <th scope="col">What</th>
            <th scope="col" className="num">
              Torque <span className="unit">N·m</span>
            </th>
            <th scope="col" className="num">
              Highest <span className="unit">N·m</span>
            </th>
            <th scope="col" className="num">
              Readings
            </th>
            <th scope="col" className="num">
              Not turned
            </th>
            <th scope="col">Against a refusal</th>
          </tr>
        </thead>
        <tbody>
          {points.map((point) => (
            <tr key={point.eventId}>
              <td className="date">{moment(point.happenedAt, timeZone)}</td>
              <th scope="row">{whatOf(point)}</th>
              <td className="num">
                <Measure si={point.torque} unit="N.m" />
              </td>
              <td className="num">
                {point.kind === 'tightening' ? '' : <Measure si={point.highest} unit="N.m" />}
              </td>
              <td className="num">{point.readings}</td>
              <td className="num">{point.notTurned}</td>
              <td>{point.refused ? 'yes' : 'no'}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </SideScroll>
  );
}
