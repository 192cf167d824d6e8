import type { ServiceTrend } from '../../../core/contract/own-record.ts';
import { useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { sensible } from '../../app/text/number.ts';
import { dayOf } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Unknown } from '../../components/number.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';

/** How forecasts come out on the plant's own record, and which services have begun to move. */
export function OwnRecordSection() {
  const asked = useAsk('breakout.ownRecord', {});
  return (
    <section aria-labelledby="own-record">
      <h2 id="own-record">Forecasts against what then happened</h2>
      <Asked asking={asked} what="how forecasts came out">
        {({ coverage, trends }) => (
          <>
            <p>{coverage.finding}</p>
            {coverage.width !== null && (
              <p className="small">
                In the middle the upper end of an interval is {sensible(coverage.width, 3)} times its lower
                end. Each opening was forecast from those before it alone; the hardest stud that turned is
                what is held against it.
              </p>
            )}
            <h3>Services over time</h3>
            {trends.length === 0 ? (
              <p className="empty">No opening has a ratio yet.</p>
            ) : (
              <Trends trends={trends} />
            )}
          </>
        )}
      </Asked>
    </section>
  );
}

function Trends({ trends }: { readonly trends: readonly ServiceTrend[] }) {
  const { timeZone } = useRegister();
  return (
    <SideScroll>
      <table className="tab">
        <thead>
          <tr>
            <th scope="col">Service</th>
            <th scope="col" className="num">
              Openings
            </th>
            <th scope="col" className="num">
              Joints
            </th>
            <th scope="col">Move</th>
            <th scope="col">Since</th>
            <th scope="col" className="num">
              Middle <span className="unit">× installed</span>
            </th>
            <th scope="col">What it says</th>
          </tr>
        </thead>
        <tbody>
          {trends.map((trend) => (
            <tr key={trend.service}>
              <th scope="row">{trend.service || 'service not named'}</th>
              <td className="num">{trend.openings}</td>
              <td className="num">{trend.joints}</td>
              <td>{trend.state}</td>
              <td className="date">{trend.since === null ? '' : dayOf(trend.since, timeZone)}</td>
              <td className="num">
                {trend.before === null ? <Unknown /> : sensible(trend.before, 3)}
                {trend.after !== null && ` → ${sensible(trend.after, 3)}`}
              </td>
              <td>{trend.words}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </SideScroll>
  );
}
