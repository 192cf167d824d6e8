import type { CalibrationHistory } from '../../../core/contract/tool-record.ts';
import { inUnit } from '../../app/text/number.ts';
import { Plain } from '../../components/number.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { signed } from './record-checks.tsx';

interface RecordHistoryProps {
  readonly history: CalibrationHistory;
  readonly certified: boolean;
}

/** What the certificates say together: drift, when the limit is reached, and how often to calibrate. */
export function RecordHistory({ history, certified }: RecordHistoryProps) {
  if (!certified) return null;
  const { drift, forecast, interval } = history;
  return (
    <section aria-label="Calibration history">
      <h2>Calibration history</h2>
      <dl className="lines words">
        <div>
          <dt>Drift</dt>
          <dd>{drift?.text ?? 'One certificate says nothing of drift.'}</dd>
        </div>
        <div>
          <dt>Forecast</dt>
          <dd>{forecast.text}</dd>
        </div>
        <div>
          <dt>Suggested interval</dt>
          <dd>{interval.text}</dd>
        </div>
      </dl>
      {drift && drift.points.length > 0 && <DriftTable drift={drift} />}
    </section>
  );
}

function DriftTable({ drift }: { readonly drift: NonNullable<CalibrationHistory['drift']> }) {
  return (
    <SideScroll>
      <table className="tab narrow">
        <thead>
          <tr>
            <th scope="col" className="num">
              Pressure <span className="unit">bar</span>
            </th>
            <th scope="col" className="num">
              {drift.from} <span className="unit">N·m</span>
            </th>
            <th scope="col" className="num">
              {drift.to} <span className="unit">N·m</span>
            </th>
            <th scope="col" className="num">
              Change
            </th>
            <th scope="col" className="num">
              Its uncertainty
            </th>
          </tr>
        </thead>
        <tbody>
          {drift.points.map((point) => (
            <tr key={point.pressure}>
              <td className="num">{inUnit(point.pressure, 'bar')}</td>
              <td className="num">{inUnit(point.before, 'N.m')}</td>
              <td className="num">{inUnit(point.after, 'N.m')}</td>
              <td className="num">{signed(point.change)}</td>
              <td className="num">
                <Plain si={point.uncertainty} unit="percent" />
                {point.uncertainty !== null && <span className="unit"> %</span>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </SideScroll>
  );
}
