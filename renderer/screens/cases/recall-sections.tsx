import { Link } from 'wouter';
import type { RecallView } from '../../../core/contract/recall.ts';
import { useRegister } from '../../app/register.ts';
import { count, counted } from '../../app/text/number.ts';
import { dayOf, moment } from '../../app/text/time.ts';

/** The days in which it may have been wrong, and what bounds them on either side. */
export function WindowSection({ recall }: { readonly recall: RecallView }) {
  const { timeZone } = useRegister();
  const { from, fromBasis, to, toBasis } = recall.window;
  return (
    <section aria-label="Suspect window">
      <h2>Suspect window</h2>
      <dl className="lines words">
        <div>
          <dt>From</dt>
          <dd>
            {from === null ? 'the first use on record' : moment(from, timeZone)}
            <div className="small">{fromBasis}</div>
          </dd>
        </div>
        <div>
          <dt>To</dt>
          <dd>
            {moment(to, timeZone)}
            <div className="small">{toBasis}</div>
          </dd>
        </div>
      </dl>
    </section>
  );
}

/** One sentence on what the list holds; what is not known or not sure is counted by its own name. */
export function affectedWords({ affected }: RecallView): string {
  const of = (worst: RecallView['affected'][number]['worst']) =>
    affected.filter((event) => event.worst === worst).length;
  const parts = [
    [of('broken'), 'with a limit broken'],
    [of('not sure'), 'not sure'],
    [of('not known'), 'not known'],
    [of('kept'), 'kept'],
  ] as const;
  const told = parts.filter(([number]) => number > 0).map(([number, words]) => `${count(number)} ${words}`);
  return `${counted(affected.length, 'tightening')} in the window${told.length > 0 ? `: ${told.join(', ')}` : ''}.`;
}

export function OtherUses({ recall }: { readonly recall: RecallView }) {
  const { timeZone } = useRegister();
  if (recall.otherUses.length === 0) return null;
  return (
    <section aria-label="Other uses">
      <h2>Other uses in the window</h2>
      <p className="small">Told, not judged: no load was set with them.</p>
      <ul className="plain-list">
        {recall.otherUses.map((use) => (
          <li key={use.eventId}>
            <Link href={`/events/${use.eventId}`}>{use.tag}</Link>{' '}
            <span className="small">
              {dayOf(use.happenedAt, timeZone)}, {use.what}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
