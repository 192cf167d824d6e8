import { lazy, Suspense, useState } from 'react';
import type { ChartPoint } from '../../../core/contract/joint.ts';
import { useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { count } from '../../app/text/number.ts';
import { moment } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Busy } from '../../components/busy.tsx';
import { Measure } from '../../components/number.tsx';

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
                {count(shown)} of {count(total)} records shown
              </p>
            )}
            {points.length > 0 &&
              (asTable ? (
                <TorqueTable points={points} />
              ) : (
                <Suspense fallback={<Busy what="Drawing the chart" />}>
                  <TorqueChart points={points} finding={finding} />
                </Suspense>
              ))}
          </>
        )}
      </Asked>
    </section>
  );
}

function TorqueTable({ points }: { readonly points: readonly ChartPoint[] }) {
  const { timeZone } = useRegister();
  return (
    <div className="scroll">
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
          </tr>
        </thead>
        <tbody>
          {points.map((point) => (
            <tr key={point.eventId}>
              <td className="date">{moment(point.happenedAt, timeZone)}</td>
              <th scope="row">{point.kind === 'tightening' ? 'installed' : 'breakout, median'}</th>
              <td className="num">
                <Measure si={point.torque} unit="N.m" />
              </td>
              <td className="num">
                {point.kind === 'tightening' ? '' : <Measure si={point.highest} unit="N.m" />}
              </td>
              <td className="num">{point.readings}</td>
              <td className="num">{point.notTurned}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
