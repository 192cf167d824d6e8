import type { StintView } from '../../../core/contract/pass.ts';
import { showEntered } from '../../../core/text/number.ts';
import { useRegister } from '../../app/register.ts';
import { moment } from '../../app/text/time.ts';
import { SideScroll } from '../../components/side-scroll.tsx';

/** Passes a tightening consists of, as each crew recorded them at the joint. */
export function EventPasses({ passes }: { readonly passes: readonly StintView[] }) {
  const { timeZone } = useRegister();
  if (passes.length === 0) return null;
  return (
    <section aria-labelledby="passes">
      <h2 id="passes">Passes</h2>
      <SideScroll>
        <table className="tab">
          <thead>
            <tr>
              <th scope="col">Pass</th>
              <th scope="col" className="num">
                Set
              </th>
              <th scope="col">Bolts in their order</th>
              <th scope="col">By</th>
              <th scope="col">Read by</th>
              <th scope="col">Ended</th>
            </tr>
          </thead>
          <tbody>
            {passes.map((pass) => (
              <Row key={pass.eventId} pass={pass} ended={moment(pass.endedAt, timeZone)} />
            ))}
          </tbody>
        </table>
      </SideScroll>
    </section>
  );
}

function Row({ pass, ended }: { readonly pass: StintView; readonly ended: string }) {
  const reached = pass.dialled ?? pass.torque;
  const stop = pass.stoppedBecause;
  return (
    <tr>
      <th scope="row">
        {pass.name}
        {pass.round > 1 && `, time round ${pass.round}`}
      </th>
      <td className="num">{reached === null ? 'by hand' : showEntered(reached)}</td>
      <td>
        {pass.boltsDone.join('-')}
        {pass.leftOut.length > 0 && <div className="flag">left out {pass.leftOut.join(', ')}</div>}
        {pass.readings.map(({ bolt, outcome, dialled, torque }) => {
          const read = dialled ?? torque;
          if (read === null && outcome !== 'turned') return null;
          return (
            <div className="small" key={bolt}>
              bolt {bolt}:{' '}
              {[outcome === 'done' ? '' : outcome, read && `read ${showEntered(read)}`]
                .filter(Boolean)
                .join(', ')}
            </div>
          );
        })}
        {stop && <div className="small">stopped: {[stop.reason, stop.words].filter(Boolean).join(', ')}</div>}
        {pass.flags.map((flag) => (
          <div className="flag" key={flag}>
            {flag}
          </div>
        ))}
      </td>
      <td>{pass.people.join(', ')}</td>
      <td>{pass.confirmedBy ?? (reached === null ? '' : 'nobody')}</td>
      <td className="date">{ended}</td>
    </tr>
  );
}
