import { Link } from 'wouter';
import type { AffectedEvent } from '../../../core/contract/recall.ts';
import { useRegister } from '../../app/register.ts';
import { inUnit, withUnit } from '../../app/text/number.ts';
import { dayOf } from '../../app/text/time.ts';
import { Measure, Unknown } from '../../components/number.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { StandingMark } from './standing-mark.tsx';

interface Choosing {
  readonly chosen: readonly string[];
  readonly onChange: (ids: string[]) => void;
}

interface AffectedTableProps {
  readonly affected: readonly AffectedEvent[];
  /** Rows can be ticked for a decision; null on a preview and on a closed case. */
  readonly choosing: Choosing | null;
}

/** Tightenings in the window, worst first, with the load that was really there. */
export function AffectedTable({ affected, choosing }: AffectedTableProps) {
  if (affected.length === 0) return <p className="empty">No tightening lies in the window.</p>;
  return (
    <SideScroll>
      <table className="tab affected">
        <thead>
          <tr>
            {choosing && (
              <th scope="col" className="no-print">
                <span className="unseen">Choose</span>
              </th>
            )}
            <th scope="col">Joint</th>
            <th scope="col" className="num">
              Dialled
            </th>
            <th scope="col" className="num">
              Torque
              <div className="small">intended, delivered</div>
            </th>
            <th scope="col" className="num">
              Error
            </th>
            <th scope="col" className="num">
              Load per bolt
              <div className="small">intended, real</div>
            </th>
            <th scope="col">Against its limits</th>
            <th scope="col">Decision</th>
          </tr>
        </thead>
        {affected.map((event) => (
          <Affected key={event.eventId} event={event} choosing={choosing} />
        ))}
      </table>
    </SideScroll>
  );
}

function Affected({
  event,
  choosing,
}: {
  readonly event: AffectedEvent;
  readonly choosing: Choosing | null;
}) {
  const { timeZone } = useRegister();
  const { eventId, tag, interval } = event;
  const done = dayOf(event.happenedAt, timeZone);
  return (
    <tbody>
      <tr>
        {choosing && (
          <td className="no-print">
            <input
              type="checkbox"
              aria-label={`Choose ${tag}, ${done}`}
              checked={choosing.chosen.includes(eventId)}
              onChange={({ target }) =>
                choosing.onChange(
                  target.checked
                    ? [...choosing.chosen, eventId]
                    : choosing.chosen.filter((each) => each !== eventId),
                )
              }
            />
          </td>
        )}
        <th scope="row">
          <Link href={`/joints/${event.jointId}`}>{tag}</Link>
          <div className="small">
            <Link href={`/events/${eventId}`}>
              {done}
              <span className="unseen">, record of {tag}</span>
            </Link>
            {event.role && `, ${event.role}`}
          </div>
        </th>
        <td className="num">
          <Measure si={event.pressure} unit="bar" />
        </td>
        <td className="num">
          <Measure si={event.intendedTorque} unit="N.m" />
          <div>
            <Measure si={event.deliveredTorque} unit="N.m" />
          </div>
        </td>
        <td className="num">
          <Share share={event.error} />
          {event.errorUncertainty !== null && (
            <div className="small">± {withUnit(2 * event.errorUncertainty, 'percent')}, k = 2</div>
          )}
        </td>
        <td className="num">
          <Measure si={event.intendedLoad} unit="kN" />
          <div>
            <Measure si={event.realLoad} unit="kN" />
          </div>
          {interval && (
            <div className="small">
              {inUnit(interval.low, 'kN')} to {withUnit(interval.high, 'kN')}, 95 %
            </div>
          )}
        </td>
        <td>
          <StandingMark standing={event.worst} />
        </td>
        <td>
          <Decided event={event} />
        </td>
      </tr>
      <tr className="reasons">
        {choosing && <td className="no-print" />}
        <td colSpan={7} className="small">
          <Limits event={event} />
          {event.basis}
        </td>
      </tr>
    </tbody>
  );
}

function Limits({ event: { limits } }: { readonly event: AffectedEvent }) {
  if (limits.length === 0) return null;
  return (
    <ul className="plain-list">
      {limits.map(({ name, side, limit, standing }) => (
        <li key={`${name} ${side}`}>
          <StandingMark
            standing={standing}
            words={`${standing}: ${name}, ${side === 'least' ? 'at least' : 'at most'} ${withUnit(limit, 'kN')}`}
          />
        </li>
      ))}
    </ul>
  );
}

function Decided({ event: { redoneAt, decision } }: { readonly event: AffectedEvent }) {
  const { timeZone } = useRegister();
  return (
    <>
      {decision && (
        <>
          <b>{decision.decision}</b>
          <div className="small">
            {decision.reason}. {decision.person}, {dayOf(decision.happenedAt, timeZone)}
          </div>
        </>
      )}
      {redoneAt && <div className="small">redone {dayOf(redoneAt, timeZone)}: this load is gone</div>}
      {!decision && !redoneAt && <span className="small">none yet</span>}
    </>
  );
}

/** A share with its sign: an error without one can't be read. */
function Share({ share }: { readonly share: number | null }) {
  if (share === null) return <Unknown />;
  return (
    <>
      {share > 0 && '+'}
      {withUnit(share, 'percent')}
    </>
  );
}
